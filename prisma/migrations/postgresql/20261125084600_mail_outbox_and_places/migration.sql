-- AlterTable
ALTER TABLE "User" ADD COLUMN     "mailOffJson" TEXT NOT NULL DEFAULT '[]';

-- AlterTable
ALTER TABLE "Thread" ADD COLUMN     "anchorXMm" DOUBLE PRECISION,
ADD COLUMN     "anchorYMm" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "MailMessage" (
    "id" TEXT NOT NULL,
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
    "nextAttemptAt" TIMESTAMP(3) NOT NULL,
    "claimToken" TEXT,
    "claimedUntil" TIMESTAMP(3),
    "via" TEXT,
    "lastError" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "sentAt" TIMESTAMP(3),

    CONSTRAINT "MailMessage_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DigestDay" (
    "userId" TEXT NOT NULL,
    "day" TEXT NOT NULL,

    CONSTRAINT "DigestDay_pkey" PRIMARY KEY ("userId","day")
);

-- CreateIndex
CREATE UNIQUE INDEX "MailMessage_dedupeKey_key" ON "MailMessage"("dedupeKey");

-- CreateIndex
CREATE UNIQUE INDEX "MailMessage_messageId_key" ON "MailMessage"("messageId");

-- CreateIndex
CREATE INDEX "MailMessage_state_nextAttemptAt_idx" ON "MailMessage"("state", "nextAttemptAt");

-- CreateIndex
CREATE INDEX "MailMessage_createdAt_idx" ON "MailMessage"("createdAt");
