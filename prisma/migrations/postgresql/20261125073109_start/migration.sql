-- AlterTable
ALTER TABLE "Comment" ADD COLUMN     "companyId" TEXT NOT NULL;
