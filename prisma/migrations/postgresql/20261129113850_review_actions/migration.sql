-- AlterTable
ALTER TABLE "Attachment" ADD COLUMN     "actionId" TEXT;

-- CreateTable
CREATE TABLE "ReviewAction" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "originKind" TEXT NOT NULL,
    "originId" TEXT NOT NULL,
    "originLabel" TEXT NOT NULL,
    "companyId" TEXT,
    "text" TEXT NOT NULL,
    "ownerId" TEXT NOT NULL,
    "ownerCompanyId" TEXT NOT NULL,
    "due" TEXT NOT NULL,
    "dueOn" TEXT,
    "isAfterRelease" BOOLEAN NOT NULL DEFAULT false,
    "state" TEXT NOT NULL,
    "takenOnById" TEXT NOT NULL,
    "takenOnAt" TIMESTAMP(3) NOT NULL,
    "evidence" TEXT NOT NULL DEFAULT '',
    "reportedById" TEXT,
    "reportedAt" TIMESTAMP(3),
    "closedById" TEXT,
    "closedAt" TIMESTAMP(3),
    "closeNote" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "ReviewAction_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "ReviewAction_state_idx" ON "ReviewAction"("state");

-- CreateIndex
CREATE UNIQUE INDEX "ReviewAction_revisionId_number_key" ON "ReviewAction"("revisionId", "number");

-- AddForeignKey
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_actionId_fkey" FOREIGN KEY ("actionId") REFERENCES "ReviewAction"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReviewAction" ADD CONSTRAINT "ReviewAction_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
