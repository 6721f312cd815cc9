-- AlterTable
ALTER TABLE "Thread" ADD COLUMN "dueOn" TEXT;
ALTER TABLE "Thread" ADD COLUMN "ownerId" TEXT;
