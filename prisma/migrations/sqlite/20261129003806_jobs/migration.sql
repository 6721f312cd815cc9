-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "askedById" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "inputJson" TEXT NOT NULL,
    "progress" REAL NOT NULL DEFAULT 0,
    "resultJson" TEXT,
    "failure" TEXT,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "claimToken" TEXT,
    "claimedUntil" DATETIME,
    "isStopAsked" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finishedAt" DATETIME
);

-- CreateIndex
CREATE UNIQUE INDEX "Job_key_key" ON "Job"("key");

-- CreateIndex
CREATE INDEX "Job_state_claimedUntil_idx" ON "Job"("state", "claimedUntil");

-- CreateIndex
CREATE INDEX "Job_askedById_revisionId_idx" ON "Job"("askedById", "revisionId");
