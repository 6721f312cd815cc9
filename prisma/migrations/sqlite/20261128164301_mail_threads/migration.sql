-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_MailMessage" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "dedupeKey" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "recipientId" TEXT,
    "recipientName" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "bodyText" TEXT NOT NULL,
    "bodyHtml" TEXT NOT NULL,
    "messageId" TEXT NOT NULL,
    "subjectKey" TEXT,
    "referenceIds" TEXT NOT NULL DEFAULT '',
    "replyToName" TEXT,
    "replyToAddress" TEXT,
    "tokenSeed" TEXT,
    "state" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "nextAttemptAt" DATETIME NOT NULL,
    "claimToken" TEXT,
    "claimedUntil" DATETIME,
    "via" TEXT,
    "lastError" TEXT,
    "createdAt" DATETIME NOT NULL,
    "sentAt" DATETIME
);
INSERT INTO "new_MailMessage" ("address", "attempts", "bodyHtml", "bodyText", "claimToken", "claimedUntil", "createdAt", "dedupeKey", "id", "kind", "lastError", "messageId", "nextAttemptAt", "recipientId", "recipientName", "sentAt", "state", "subject", "tokenSeed", "via") SELECT "address", "attempts", "bodyHtml", "bodyText", "claimToken", "claimedUntil", "createdAt", "dedupeKey", "id", "kind", "lastError", "messageId", "nextAttemptAt", "recipientId", "recipientName", "sentAt", "state", "subject", "tokenSeed", "via" FROM "MailMessage";
DROP TABLE "MailMessage";
ALTER TABLE "new_MailMessage" RENAME TO "MailMessage";
CREATE UNIQUE INDEX "MailMessage_dedupeKey_key" ON "MailMessage"("dedupeKey");
CREATE UNIQUE INDEX "MailMessage_messageId_key" ON "MailMessage"("messageId");
CREATE INDEX "MailMessage_state_nextAttemptAt_idx" ON "MailMessage"("state", "nextAttemptAt");
CREATE INDEX "MailMessage_createdAt_idx" ON "MailMessage"("createdAt");
CREATE INDEX "MailMessage_recipientId_subjectKey_idx" ON "MailMessage"("recipientId", "subjectKey");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
