-- AlterTable
ALTER TABLE "Project" ADD COLUMN     "profilesJson" TEXT NOT NULL DEFAULT '[]',
ADD COLUMN     "profilesVersion" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Revision" ADD COLUMN     "profilesJson" TEXT NOT NULL DEFAULT '[]';
