-- AlterTable
ALTER TABLE "Answer" ADD COLUMN "viewedFileName" TEXT;
ALTER TABLE "Answer" ADD COLUMN "viewedLayer" TEXT;
ALTER TABLE "Answer" ADD COLUMN "viewedSha256" TEXT;
ALTER TABLE "Answer" ADD COLUMN "viewedSheet" TEXT;
