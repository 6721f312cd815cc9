-- CreateTable
CREATE TABLE "CatalogueTemplate" (
    "version" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "contentJson" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "changedById" TEXT NOT NULL,
    "changedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "TrailCheckpoint" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "hash" TEXT NOT NULL,
    "trailId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "previousHash" TEXT NOT NULL,
    "signature" TEXT NOT NULL
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
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
    CONSTRAINT "Revision_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Revision_basedOnId_fkey" FOREIGN KEY ("basedOnId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Revision_supersededById_fkey" FOREIGN KEY ("supersededById") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Revision" ("basedOnId", "createdAt", "createdById", "designHash", "designJson", "designVersion", "id", "label", "labelKey", "projectId", "stage", "stageSince", "supersededById", "version") SELECT "basedOnId", "createdAt", "createdById", "designHash", "designJson", "designVersion", "id", "label", "labelKey", "projectId", "stage", "stageSince", "supersededById", "version" FROM "Revision";
DROP TABLE "Revision";
ALTER TABLE "new_Revision" RENAME TO "Revision";
CREATE INDEX "Revision_projectId_stage_idx" ON "Revision"("projectId", "stage");
CREATE UNIQUE INDEX "Revision_projectId_labelKey_key" ON "Revision"("projectId", "labelKey");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- Limits that the workspace had set become version 1 of its catalogue, by which the reviews that are there go on.
INSERT INTO "CatalogueTemplate" ("version", "contentJson", "summary", "reason", "changedById", "changedAt")
SELECT
  1,
  json_object('ownItems', json('[]'), 'itemChanges', json('[]'), 'limits', json(json_group_array(json_object('key', "key", 'value', "value", 'note', "note")))),
  'limits as the workspace had set them',
  '',
  (SELECT "setById" FROM "Limit" WHERE "ownerKey" = 'workspace' ORDER BY "setAt" DESC LIMIT 1),
  MAX("setAt")
FROM (SELECT * FROM "Limit" WHERE "ownerKey" = 'workspace' ORDER BY "key")
HAVING COUNT(*) > 0;

UPDATE "Revision" SET "templateVersion" = 1 WHERE EXISTS (SELECT 1 FROM "CatalogueTemplate");

-- A version of the catalogue and a checkpoint of the trail are written once.
CREATE TRIGGER "CatalogueTemplate_refuse_update" BEFORE UPDATE ON "CatalogueTemplate"
BEGIN
  SELECT RAISE(ABORT, 'a version of the catalogue cannot be changed');
END;

CREATE TRIGGER "CatalogueTemplate_refuse_delete" BEFORE DELETE ON "CatalogueTemplate"
BEGIN
  SELECT RAISE(ABORT, 'a version of the catalogue cannot be deleted');
END;

CREATE TRIGGER "CatalogueTemplate_refuse_replace" BEFORE INSERT ON "CatalogueTemplate"
WHEN EXISTS (SELECT 1 FROM "CatalogueTemplate" WHERE "version" = NEW."version")
BEGIN
  SELECT RAISE(ABORT, 'a version of the catalogue cannot be replaced');
END;

CREATE TRIGGER "TrailCheckpoint_refuse_update" BEFORE UPDATE ON "TrailCheckpoint"
BEGIN
  SELECT RAISE(ABORT, 'the trail is append-only: a checkpoint cannot be changed');
END;

CREATE TRIGGER "TrailCheckpoint_refuse_delete" BEFORE DELETE ON "TrailCheckpoint"
BEGIN
  SELECT RAISE(ABORT, 'the trail is append-only: a checkpoint cannot be deleted');
END;

CREATE TRIGGER "TrailCheckpoint_refuse_replace" BEFORE INSERT ON "TrailCheckpoint"
WHEN EXISTS (SELECT 1 FROM "TrailCheckpoint" WHERE "sequence" = NEW."sequence")
BEGIN
  SELECT RAISE(ABORT, 'the trail is append-only: a checkpoint cannot be replaced');
END;
