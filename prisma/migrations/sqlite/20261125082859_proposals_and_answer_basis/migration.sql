-- AlterTable
ALTER TABLE "Answer" ADD COLUMN "basisArtworkHash" TEXT;
ALTER TABLE "Answer" ADD COLUMN "basisDesignHash" TEXT;
ALTER TABLE "Answer" ADD COLUMN "carriedFromId" TEXT;

-- CreateTable
CREATE TABLE "DesignState" (
    "hash" TEXT NOT NULL PRIMARY KEY,
    "designJson" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Proposal" (
    "id" TEXT NOT NULL PRIMARY KEY,
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
    "proposedAt" DATETIME NOT NULL,
    "decidedById" TEXT,
    "decidedAt" DATETIME,
    "decisionNote" TEXT NOT NULL DEFAULT '',
    "madeVersion" INTEGER,
    CONSTRAINT "Proposal_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Proposal_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Proposal_threadId_key" ON "Proposal"("threadId");

-- CreateIndex
CREATE INDEX "Proposal_revisionId_state_idx" ON "Proposal"("revisionId", "state");
