-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Project" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "nameKey" TEXT NOT NULL,
    "description" TEXT NOT NULL,
    "createdById" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "profilesJson" TEXT NOT NULL DEFAULT '[]',
    "profilesVersion" INTEGER NOT NULL DEFAULT 0
);
INSERT INTO "new_Project" ("createdAt", "createdById", "description", "id", "name", "nameKey") SELECT "createdAt", "createdById", "description", "id", "name", "nameKey" FROM "Project";
DROP TABLE "Project";
ALTER TABLE "new_Project" RENAME TO "Project";
CREATE UNIQUE INDEX "Project_nameKey_key" ON "Project"("nameKey");
CREATE TABLE "new_Revision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "labelKey" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "designJson" TEXT NOT NULL,
    "designHash" TEXT NOT NULL,
    "designVersion" INTEGER NOT NULL DEFAULT 1,
    "version" INTEGER NOT NULL DEFAULT 1,
    "basedOnId" TEXT,
    "supersededById" TEXT,
    "createdById" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "stageSince" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "templateVersion" INTEGER NOT NULL DEFAULT 0,
    "profilesJson" TEXT NOT NULL DEFAULT '[]',
    CONSTRAINT "Revision_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Revision_basedOnId_fkey" FOREIGN KEY ("basedOnId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Revision_supersededById_fkey" FOREIGN KEY ("supersededById") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Revision" ("basedOnId", "createdAt", "createdById", "designHash", "designJson", "designVersion", "id", "label", "labelKey", "projectId", "stage", "stageSince", "supersededById", "templateVersion", "version") SELECT "basedOnId", "createdAt", "createdById", "designHash", "designJson", "designVersion", "id", "label", "labelKey", "projectId", "stage", "stageSince", "supersededById", "templateVersion", "version" FROM "Revision";
DROP TABLE "Revision";
ALTER TABLE "new_Revision" RENAME TO "Revision";
CREATE INDEX "Revision_projectId_stage_idx" ON "Revision"("projectId", "stage");
CREATE UNIQUE INDEX "Revision_projectId_labelKey_key" ON "Revision"("projectId", "labelKey");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
