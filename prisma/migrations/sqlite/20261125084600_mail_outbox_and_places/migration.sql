-- AlterTable
ALTER TABLE "Thread" ADD COLUMN "anchorXMm" REAL;
ALTER TABLE "Thread" ADD COLUMN "anchorYMm" REAL;

-- CreateTable
CREATE TABLE "MailMessage" (
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

-- CreateTable
CREATE TABLE "DigestDay" (
    "userId" TEXT NOT NULL,
    "day" TEXT NOT NULL,

    PRIMARY KEY ("userId", "day")
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "isAdmin" BOOLEAN NOT NULL DEFAULT false,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "sessionVersion" INTEGER NOT NULL DEFAULT 1,
    "disabledAt" DATETIME,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "mailOffJson" TEXT NOT NULL DEFAULT '[]'
);
INSERT INTO "new_User" ("createdAt", "disabledAt", "email", "id", "isAdmin", "isDemo", "name", "passwordHash", "sessionVersion") SELECT "createdAt", "disabledAt", "email", "id", "isAdmin", "isDemo", "name", "passwordHash", "sessionVersion" FROM "User";
DROP TABLE "User";
ALTER TABLE "new_User" RENAME TO "User";
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "MailMessage_dedupeKey_key" ON "MailMessage"("dedupeKey");

-- CreateIndex
CREATE UNIQUE INDEX "MailMessage_messageId_key" ON "MailMessage"("messageId");

-- CreateIndex
CREATE INDEX "MailMessage_state_nextAttemptAt_idx" ON "MailMessage"("state", "nextAttemptAt");

-- CreateIndex
CREATE INDEX "MailMessage_createdAt_idx" ON "MailMessage"("createdAt");
