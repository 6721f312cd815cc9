-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN "decidedAsRole" TEXT;

-- AlterTable
ALTER TABLE "Signature" ADD COLUMN "grantJson" TEXT;

-- CreateTable
CREATE TABLE "CapacityGrant" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "capacity" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "grantedById" TEXT NOT NULL,
    "grantedAt" DATETIME NOT NULL,
    "withdrawnById" TEXT,
    "withdrawnAt" DATETIME,
    "withdrawReason" TEXT,
    CONSTRAINT "CapacityGrant_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReviewStatement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "userName" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "withdrawnAt" DATETIME,
    "withdrawReason" TEXT,
    CONSTRAINT "ReviewStatement_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RefusedSignIn" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL,
    "userId" TEXT,
    "subjectKey" TEXT NOT NULL,
    "sourceKey" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "device" TEXT NOT NULL
);

-- AlterTable: added in place, so that a column which another migration adds to the same table is not lost
ALTER TABLE "Project" ADD COLUMN "signOffPolicyJson" TEXT NOT NULL DEFAULT '';
ALTER TABLE "Project" ADD COLUMN "signOffPolicyVersion" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "Revision" ADD COLUMN "signOffPolicyJson" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE INDEX "CapacityGrant_projectId_userId_idx" ON "CapacityGrant"("projectId", "userId");

-- CreateIndex
CREATE INDEX "ReviewStatement_revisionId_idx" ON "ReviewStatement"("revisionId");

-- CreateIndex
CREATE INDEX "RefusedSignIn_at_idx" ON "RefusedSignIn"("at");

-- CreateIndex
CREATE INDEX "RefusedSignIn_userId_at_idx" ON "RefusedSignIn"("userId", "at");
