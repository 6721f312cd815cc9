-- DropIndex
DROP INDEX "Company_nameKey_key";

-- AlterTable
ALTER TABLE "Company" ADD COLUMN     "matrixSharing" TEXT NOT NULL DEFAULT 'not-shared',
ADD COLUMN     "mergedIntoId" TEXT,
ADD COLUMN     "projectId" TEXT,
ADD COLUMN     "ratesSharing" TEXT NOT NULL DEFAULT 'not-shared',
ADD COLUMN     "scopeKey" TEXT NOT NULL DEFAULT 'workspace',
ADD COLUMN     "shelfSharing" TEXT NOT NULL DEFAULT 'not-shared';

-- AlterTable
ALTER TABLE "Invitation" ADD COLUMN     "companyRole" TEXT,
ALTER COLUMN "projectId" DROP NOT NULL;

-- CreateTable
CREATE TABLE "CompanyPerson" (
    "id" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "admittedById" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "CompanyPerson_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Participation" (
    "id" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "askedById" TEXT,
    "askedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "askedFor" TEXT NOT NULL DEFAULT '',
    "decidedById" TEXT,
    "decidedAt" TIMESTAMP(3),
    "matrixSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "shelfSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "ratesSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "sharingSetById" TEXT,
    "sharingSetAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Participation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "VerdictFlip" (
    "id" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "designVersion" INTEGER NOT NULL,
    "userId" TEXT NOT NULL,
    "flips" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "VerdictFlip_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "CompanyPerson_userId_idx" ON "CompanyPerson"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "CompanyPerson_companyId_userId_key" ON "CompanyPerson"("companyId", "userId");

-- CreateIndex
CREATE INDEX "Participation_projectId_idx" ON "Participation"("projectId");

-- CreateIndex
CREATE UNIQUE INDEX "Participation_companyId_projectId_key" ON "Participation"("companyId", "projectId");

-- CreateIndex
CREATE INDEX "VerdictFlip_companyId_at_idx" ON "VerdictFlip"("companyId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Company_scopeKey_nameKey_key" ON "Company"("scopeKey", "nameKey");

-- CreateIndex
CREATE INDEX "Invitation_companyId_idx" ON "Invitation"("companyId");

-- AddForeignKey
ALTER TABLE "CompanyPerson" ADD CONSTRAINT "CompanyPerson_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CompanyPerson" ADD CONSTRAINT "CompanyPerson_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Participation" ADD CONSTRAINT "Participation_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Participation" ADD CONSTRAINT "Participation_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "VerdictFlip" ADD CONSTRAINT "VerdictFlip_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
