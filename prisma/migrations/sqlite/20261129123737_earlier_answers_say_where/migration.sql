-- AlterTable
ALTER TABLE "AnswerHistory" ADD COLUMN "viewedFileName" TEXT;
ALTER TABLE "AnswerHistory" ADD COLUMN "viewedLayer" TEXT;
ALTER TABLE "AnswerHistory" ADD COLUMN "viewedSha256" TEXT;
ALTER TABLE "AnswerHistory" ADD COLUMN "viewedSheet" TEXT;
