-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "askedById" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "inputJson" TEXT NOT NULL,
    "progress" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "resultJson" TEXT,
    "failure" TEXT,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "claimToken" TEXT,
    "claimedUntil" TIMESTAMP(3),
    "isStopAsked" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Job_key_key" ON "Job"("key");

-- CreateIndex
CREATE INDEX "Job_state_claimedUntil_idx" ON "Job"("state", "claimedUntil");

-- CreateIndex
CREATE INDEX "Job_askedById_revisionId_idx" ON "Job"("askedById", "revisionId");
