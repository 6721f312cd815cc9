-- AlterTable
ALTER TABLE "Thread" ADD COLUMN     "dueOn" TEXT,
ADD COLUMN     "ownerId" TEXT;
