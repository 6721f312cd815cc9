-- CreateTable
CREATE TABLE "DifferenceAcknowledgement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "differenceKey" TEXT NOT NULL,
    "fact" TEXT NOT NULL,
    "said" TEXT NOT NULL,
    "against" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "acknowledgedById" TEXT NOT NULL,
    "acknowledgedAt" DATETIME NOT NULL,
    "withdrawnById" TEXT,
    "withdrawnAt" DATETIME,
    CONSTRAINT "DifferenceAcknowledgement_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Meeting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "heldOn" TEXT NOT NULL,
    "agenda" TEXT NOT NULL,
    "recordedById" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "Meeting_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MeetingPerson" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "meetingId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "userName" TEXT NOT NULL,
    "attendance" TEXT NOT NULL,
    CONSTRAINT "MeetingPerson_meetingId_fkey" FOREIGN KEY ("meetingId") REFERENCES "Meeting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MeetingDecision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "meetingId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "pointsKind" TEXT NOT NULL,
    "pointsId" TEXT NOT NULL,
    "pointsLabel" TEXT NOT NULL,
    CONSTRAINT "MeetingDecision_meetingId_fkey" FOREIGN KEY ("meetingId") REFERENCES "Meeting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Need" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "itemIdsJson" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "plannedOn" TEXT,
    "result" TEXT NOT NULL DEFAULT '',
    "reportedById" TEXT,
    "reportedAt" DATETIME,
    "acceptedById" TEXT,
    "acceptedAt" DATETIME,
    "acceptNote" TEXT NOT NULL DEFAULT '',
    "droppedReason" TEXT,
    "statedById" TEXT NOT NULL,
    "statedAt" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Need_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Attachment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "itemId" TEXT,
    "commentId" TEXT,
    "actionId" TEXT,
    "needId" TEXT,
    "sha256" TEXT NOT NULL,
    "originalName" TEXT NOT NULL,
    "sizeBytes" INTEGER NOT NULL,
    "mediaType" TEXT NOT NULL,
    "uploadedById" TEXT NOT NULL,
    "companyId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removedAt" DATETIME,
    CONSTRAINT "Attachment_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Attachment_commentId_fkey" FOREIGN KEY ("commentId") REFERENCES "Comment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Attachment_actionId_fkey" FOREIGN KEY ("actionId") REFERENCES "ReviewAction" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Attachment_needId_fkey" FOREIGN KEY ("needId") REFERENCES "Need" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Attachment" ("actionId", "commentId", "companyId", "createdAt", "id", "itemId", "mediaType", "originalName", "removedAt", "revisionId", "sha256", "sizeBytes", "uploadedById") SELECT "actionId", "commentId", "companyId", "createdAt", "id", "itemId", "mediaType", "originalName", "removedAt", "revisionId", "sha256", "sizeBytes", "uploadedById" FROM "Attachment";
DROP TABLE "Attachment";
ALTER TABLE "new_Attachment" RENAME TO "Attachment";
CREATE INDEX "Attachment_revisionId_idx" ON "Attachment"("revisionId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "DifferenceAcknowledgement_revisionId_idx" ON "DifferenceAcknowledgement"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Meeting_revisionId_number_key" ON "Meeting"("revisionId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "MeetingPerson_meetingId_userId_key" ON "MeetingPerson"("meetingId", "userId");

-- CreateIndex
CREATE UNIQUE INDEX "MeetingDecision_meetingId_ordinal_key" ON "MeetingDecision"("meetingId", "ordinal");

-- CreateIndex
CREATE UNIQUE INDEX "Need_revisionId_number_key" ON "Need"("revisionId", "number");
