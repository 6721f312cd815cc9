-- CreateTable
CREATE TABLE "AccessEvent" (
    "id" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "userName" TEXT NOT NULL,
    "companyId" TEXT NOT NULL DEFAULT '',
    "companyName" TEXT NOT NULL DEFAULT '',
    "projectId" TEXT,
    "revisionId" TEXT,
    "ownerCompanyId" TEXT,
    "what" TEXT NOT NULL,
    "sourceKey" TEXT NOT NULL,
    "device" TEXT NOT NULL,

    CONSTRAINT "AccessEvent_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "AccessEvent_at_idx" ON "AccessEvent"("at");

-- CreateIndex
CREATE INDEX "AccessEvent_projectId_at_idx" ON "AccessEvent"("projectId", "at");

-- CreateIndex
CREATE INDEX "AccessEvent_companyId_at_idx" ON "AccessEvent"("companyId", "at");

-- CreateIndex
CREATE INDEX "AccessEvent_ownerCompanyId_at_idx" ON "AccessEvent"("ownerCompanyId", "at");

-- CreateIndex
CREATE INDEX "AccessEvent_userId_at_idx" ON "AccessEvent"("userId", "at");
