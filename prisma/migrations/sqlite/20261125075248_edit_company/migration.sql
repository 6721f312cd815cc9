-- AlterTable
ALTER TABLE "Edit" ADD COLUMN "companyId" TEXT;
