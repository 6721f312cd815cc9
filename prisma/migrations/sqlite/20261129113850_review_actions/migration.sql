-- CreateTable
CREATE TABLE "ReviewAction" (
    "id" TEXT NOT NULL PRIMARY KEY,
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
    "takenOnAt" DATETIME NOT NULL,
    "evidence" TEXT NOT NULL DEFAULT '',
    "reportedById" TEXT,
    "reportedAt" DATETIME,
    "closedById" TEXT,
    "closedAt" DATETIME,
    "closeNote" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ReviewAction_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
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
    CONSTRAINT "Attachment_actionId_fkey" FOREIGN KEY ("actionId") REFERENCES "ReviewAction" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Attachment" ("commentId", "companyId", "createdAt", "id", "itemId", "mediaType", "originalName", "removedAt", "revisionId", "sha256", "sizeBytes", "uploadedById") SELECT "commentId", "companyId", "createdAt", "id", "itemId", "mediaType", "originalName", "removedAt", "revisionId", "sha256", "sizeBytes", "uploadedById" FROM "Attachment";
DROP TABLE "Attachment";
ALTER TABLE "new_Attachment" RENAME TO "Attachment";
CREATE INDEX "Attachment_revisionId_idx" ON "Attachment"("revisionId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "ReviewAction_state_idx" ON "ReviewAction"("state");

-- CreateIndex
CREATE UNIQUE INDEX "ReviewAction_revisionId_number_key" ON "ReviewAction"("revisionId", "number");
