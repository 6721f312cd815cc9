-- AlterTable
ALTER TABLE "Revision" ADD COLUMN     "templateVersion" INTEGER NOT NULL DEFAULT 0;

-- CreateTable
CREATE TABLE "CatalogueTemplate" (
    "version" INTEGER NOT NULL,
    "contentJson" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "changedById" TEXT NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "CatalogueTemplate_pkey" PRIMARY KEY ("version")
);

-- CreateTable
CREATE TABLE "TrailCheckpoint" (
    "sequence" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "trailId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "previousHash" TEXT NOT NULL,
    "signature" TEXT NOT NULL,

    CONSTRAINT "TrailCheckpoint_pkey" PRIMARY KEY ("sequence")
);

-- Limits that the workspace had set become version 1 of its catalogue, by which the reviews that are there go on.
INSERT INTO "CatalogueTemplate" ("version", "contentJson", "summary", "reason", "changedById", "changedAt")
SELECT
  1,
  json_build_object('ownItems', '[]'::json, 'itemChanges', '[]'::json, 'limits', json_agg(json_build_object('key', "key", 'value', "value", 'note', "note") ORDER BY "key"))::text,
  'limits as the workspace had set them',
  '',
  (SELECT "setById" FROM "Limit" WHERE "ownerKey" = 'workspace' ORDER BY "setAt" DESC LIMIT 1),
  MAX("setAt")
FROM "Limit" WHERE "ownerKey" = 'workspace'
HAVING COUNT(*) > 0;

UPDATE "Revision" SET "templateVersion" = 1 WHERE EXISTS (SELECT 1 FROM "CatalogueTemplate");

-- A version of the catalogue and a checkpoint of the trail are written once.
-- The driver splits a script at every semicolon, so the ones inside the function are written as \073.
CREATE FUNCTION "refuse_template_change"() RETURNS trigger LANGUAGE plpgsql
AS E'BEGIN RAISE EXCEPTION ''a version of the catalogue cannot be changed or deleted''\073 END\073';

CREATE TRIGGER "CatalogueTemplate_refuse_change" BEFORE UPDATE OR DELETE ON "CatalogueTemplate"
FOR EACH ROW EXECUTE FUNCTION "refuse_template_change"();

CREATE TRIGGER "CatalogueTemplate_refuse_truncate" BEFORE TRUNCATE ON "CatalogueTemplate"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse_template_change"();

CREATE TRIGGER "TrailCheckpoint_refuse_change" BEFORE UPDATE OR DELETE ON "TrailCheckpoint"
FOR EACH ROW EXECUTE FUNCTION "refuse_trail_change"();

CREATE TRIGGER "TrailCheckpoint_refuse_truncate" BEFORE TRUNCATE ON "TrailCheckpoint"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse_trail_change"();
