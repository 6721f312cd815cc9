-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN "consequence" TEXT;
ALTER TABLE "Waiver" ADD COLUMN "customerConsent" TEXT;
ALTER TABLE "Waiver" ADD COLUMN "needsCustomerConsent" BOOLEAN;
ALTER TABLE "Waiver" ADD COLUMN "quantityLimit" INTEGER;
ALTER TABLE "Waiver" ADD COLUMN "validUntil" TEXT;

-- CreateTable
CREATE TABLE "Release" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "partNumber" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "isConditional" BOOLEAN NOT NULL,
    "purpose" TEXT,
    "quantityLimit" INTEGER,
    "validUntil" TEXT,
    "conditions" TEXT NOT NULL,
    "changeNumber" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "effectivity" TEXT NOT NULL,
    "replacesId" TEXT,
    "contentHash" TEXT NOT NULL,
    "releasedById" TEXT NOT NULL,
    "releasedAt" DATETIME NOT NULL,
    CONSTRAINT "Release_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Release_replacesId_fkey" FOREIGN KEY ("replacesId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PackageReceipt" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "packageId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "stage" TEXT NOT NULL,
    CONSTRAINT "PackageReceipt_packageId_fkey" FOREIGN KEY ("packageId") REFERENCES "Package" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Release_revisionId_key" ON "Release"("revisionId");

-- CreateIndex
CREATE INDEX "Release_partNumber_idx" ON "Release"("partNumber");

-- CreateIndex
CREATE INDEX "PackageReceipt_packageId_idx" ON "PackageReceipt"("packageId");
