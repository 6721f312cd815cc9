-- AlterTable
ALTER TABLE "Answer" ADD COLUMN     "basisArtworkHash" TEXT,
ADD COLUMN     "basisDesignHash" TEXT,
ADD COLUMN     "carriedFromId" TEXT;

-- CreateTable
CREATE TABLE "DesignState" (
    "hash" TEXT NOT NULL,
    "designJson" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "DesignState_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "Proposal" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "companyId" TEXT,
    "title" TEXT NOT NULL,
    "patchJson" TEXT NOT NULL,
    "baseVersion" INTEGER NOT NULL,
    "baseHash" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "threadId" TEXT NOT NULL,
    "proposedById" TEXT NOT NULL,
    "proposedByCompanyId" TEXT NOT NULL,
    "proposedAt" TIMESTAMP(3) NOT NULL,
    "decidedById" TEXT,
    "decidedAt" TIMESTAMP(3),
    "decisionNote" TEXT NOT NULL DEFAULT '',
    "madeVersion" INTEGER,

    CONSTRAINT "Proposal_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Proposal_threadId_key" ON "Proposal"("threadId");

-- CreateIndex
CREATE INDEX "Proposal_revisionId_state_idx" ON "Proposal"("revisionId", "state");

-- AddForeignKey
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Proposal" ADD CONSTRAINT "Proposal_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
