-- AlterTable
ALTER TABLE "AnswerHistory" ADD COLUMN     "viewedFileName" TEXT,
ADD COLUMN     "viewedLayer" TEXT,
ADD COLUMN     "viewedSha256" TEXT,
ADD COLUMN     "viewedSheet" TEXT;
