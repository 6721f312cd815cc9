-- AlterTable
ALTER TABLE "Thread" ADD COLUMN "baseDesignHash" TEXT;
ALTER TABLE "Thread" ADD COLUMN "doneJson" TEXT;

-- AlterTable
ALTER TABLE "Declaration" ADD COLUMN "designHash" TEXT;
ALTER TABLE "Declaration" ADD COLUMN "verdict" TEXT;

-- CreateTable
CREATE TABLE "DeclarationCondition" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "declarationId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "field" TEXT NOT NULL DEFAULT '',
    "fieldLabel" TEXT NOT NULL DEFAULT '',
    "value" TEXT NOT NULL DEFAULT '',
    "state" TEXT NOT NULL DEFAULT 'open',
    "decidedById" TEXT,
    "decidedAt" DATETIME,
    "decisionNote" TEXT NOT NULL DEFAULT '',
    "doneJson" TEXT,
    "actionId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "DeclarationCondition_declarationId_fkey" FOREIGN KEY ("declarationId") REFERENCES "Declaration" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReleaseExclusion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "takenOffById" TEXT NOT NULL,
    "takenOffAt" DATETIME NOT NULL,
    "putBackById" TEXT,
    "putBackAt" DATETIME,
    CONSTRAINT "ReleaseExclusion_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ReleaseExclusion_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "IssuedRevision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "issueKey" TEXT NOT NULL,
    "partNumber" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "packageSha256" TEXT NOT NULL,
    "issuedById" TEXT NOT NULL,
    "issuedAt" DATETIME NOT NULL,
    CONSTRAINT "IssuedRevision_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "DeclarationCondition_declarationId_ordinal_key" ON "DeclarationCondition"("declarationId", "ordinal");

-- CreateIndex
CREATE INDEX "ReleaseExclusion_revisionId_idx" ON "ReleaseExclusion"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "IssuedRevision_issueKey_key" ON "IssuedRevision"("issueKey");

-- CreateIndex
CREATE UNIQUE INDEX "IssuedRevision_revisionId_key" ON "IssuedRevision"("revisionId");
