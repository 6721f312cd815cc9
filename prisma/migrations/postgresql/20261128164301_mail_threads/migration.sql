-- AlterTable
ALTER TABLE "MailMessage" ADD COLUMN     "referenceIds" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "replyToAddress" TEXT,
ADD COLUMN     "replyToName" TEXT,
ADD COLUMN     "subjectKey" TEXT;

-- CreateIndex
CREATE INDEX "MailMessage_recipientId_subjectKey_idx" ON "MailMessage"("recipientId", "subjectKey");
