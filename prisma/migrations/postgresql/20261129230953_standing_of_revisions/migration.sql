-- CreateTable
CREATE TABLE "RevisionStanding" (
    "revisionId" TEXT NOT NULL,
    "changes" INTEGER NOT NULL DEFAULT 0,
    "workedOutAt" INTEGER,
    "madeBy" TEXT NOT NULL DEFAULT '',
    "holdsThrough" TEXT,
    "openItems" INTEGER NOT NULL DEFAULT 0,
    "concerns" INTEGER NOT NULL DEFAULT 0,
    "statedConcerns" INTEGER NOT NULL DEFAULT 0,
    "judgedConcerns" INTEGER NOT NULL DEFAULT 0,
    "openQueries" INTEGER NOT NULL DEFAULT 0,
    "openMustChanges" INTEGER NOT NULL DEFAULT 0,
    "proposedWaivers" INTEGER NOT NULL DEFAULT 0,
    "blockers" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "RevisionStanding_pkey" PRIMARY KEY ("revisionId")
);

-- CreateTable
CREATE TABLE "RevisionWait" (
    "revisionId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "waitsJson" TEXT NOT NULL,

    CONSTRAINT "RevisionWait_pkey" PRIMARY KEY ("revisionId","userId")
);

-- CreateIndex
CREATE INDEX "RevisionStanding_workedOutAt_idx" ON "RevisionStanding"("workedOutAt");

-- CreateIndex
CREATE INDEX "RevisionWait_userId_idx" ON "RevisionWait"("userId");

-- AddForeignKey
ALTER TABLE "RevisionStanding" ADD CONSTRAINT "RevisionStanding_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RevisionWait" ADD CONSTRAINT "RevisionWait_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "RevisionStanding"("revisionId") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Revisions that are there already: worked out when somebody asks first.
INSERT INTO "RevisionStanding" ("revisionId") SELECT "id" FROM "Revision";
