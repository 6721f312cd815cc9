-- AlterTable
ALTER TABLE "Project" ADD COLUMN     "signOffPolicyJson" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "signOffPolicyVersion" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "Revision" ADD COLUMN     "signOffPolicyJson" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN     "decidedAsRole" TEXT;

-- AlterTable
ALTER TABLE "Signature" ADD COLUMN     "grantJson" TEXT;

-- CreateTable
CREATE TABLE "CapacityGrant" (
    "id" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "capacity" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "grantedById" TEXT NOT NULL,
    "grantedAt" TIMESTAMP(3) NOT NULL,
    "withdrawnById" TEXT,
    "withdrawnAt" TIMESTAMP(3),
    "withdrawReason" TEXT,

    CONSTRAINT "CapacityGrant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReviewStatement" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "userName" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "withdrawnAt" TIMESTAMP(3),
    "withdrawReason" TEXT,

    CONSTRAINT "ReviewStatement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RefusedSignIn" (
    "id" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "userId" TEXT,
    "subjectKey" TEXT NOT NULL,
    "sourceKey" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "device" TEXT NOT NULL,

    CONSTRAINT "RefusedSignIn_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "CapacityGrant_projectId_userId_idx" ON "CapacityGrant"("projectId", "userId");

-- CreateIndex
CREATE INDEX "ReviewStatement_revisionId_idx" ON "ReviewStatement"("revisionId");

-- CreateIndex
CREATE INDEX "RefusedSignIn_at_idx" ON "RefusedSignIn"("at");

-- CreateIndex
CREATE INDEX "RefusedSignIn_userId_at_idx" ON "RefusedSignIn"("userId", "at");

-- AddForeignKey
ALTER TABLE "CapacityGrant" ADD CONSTRAINT "CapacityGrant_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReviewStatement" ADD CONSTRAINT "ReviewStatement_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
