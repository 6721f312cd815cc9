-- CreateTable
CREATE TABLE "CompanyPerson" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "companyId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "admittedById" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "CompanyPerson_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "CompanyPerson_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Participation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "companyId" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "askedById" TEXT,
    "askedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "askedFor" TEXT NOT NULL DEFAULT '',
    "decidedById" TEXT,
    "decidedAt" DATETIME,
    "matrixSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "shelfSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "ratesSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "sharingSetById" TEXT,
    "sharingSetAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Participation_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Participation_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "VerdictFlip" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "companyId" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "designVersion" INTEGER NOT NULL,
    "userId" TEXT NOT NULL,
    "flips" INTEGER NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "VerdictFlip_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Company" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nameKey" TEXT NOT NULL,
    "scopeKey" TEXT NOT NULL DEFAULT 'workspace',
    "projectId" TEXT,
    "mergedIntoId" TEXT,
    "matrixSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "shelfSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "ratesSharing" TEXT NOT NULL DEFAULT 'not-shared',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);
INSERT INTO "new_Company" ("createdAt", "id", "kind", "name", "nameKey") SELECT "createdAt", "id", "kind", "name", "nameKey" FROM "Company";
DROP TABLE "Company";
ALTER TABLE "new_Company" RENAME TO "Company";
CREATE UNIQUE INDEX "Company_scopeKey_nameKey_key" ON "Company"("scopeKey", "nameKey");
CREATE TABLE "new_Invitation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "email" TEXT,
    "role" TEXT NOT NULL,
    "projectId" TEXT,
    "companyId" TEXT NOT NULL,
    "companyRole" TEXT,
    "createdById" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    "usedById" TEXT,
    "revokedAt" DATETIME,
    CONSTRAINT "Invitation_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Invitation_companyId_fkey" FOREIGN KEY ("companyId") REFERENCES "Company" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Invitation" ("companyId", "createdAt", "createdById", "email", "expiresAt", "id", "projectId", "revokedAt", "role", "tokenHash", "usedAt", "usedById") SELECT "companyId", "createdAt", "createdById", "email", "expiresAt", "id", "projectId", "revokedAt", "role", "tokenHash", "usedAt", "usedById" FROM "Invitation";
DROP TABLE "Invitation";
ALTER TABLE "new_Invitation" RENAME TO "Invitation";
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");
CREATE INDEX "Invitation_projectId_idx" ON "Invitation"("projectId");
CREATE INDEX "Invitation_companyId_idx" ON "Invitation"("companyId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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
