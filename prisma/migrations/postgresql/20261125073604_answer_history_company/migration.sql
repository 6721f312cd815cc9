-- AlterTable
ALTER TABLE "AnswerHistory" ADD COLUMN     "companyId" TEXT;
