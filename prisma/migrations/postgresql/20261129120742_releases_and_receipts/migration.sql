-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN     "consequence" TEXT,
ADD COLUMN     "customerConsent" TEXT,
ADD COLUMN     "needsCustomerConsent" BOOLEAN,
ADD COLUMN     "quantityLimit" INTEGER,
ADD COLUMN     "validUntil" TEXT;

-- CreateTable
CREATE TABLE "Release" (
    "id" TEXT NOT NULL,
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
    "releasedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Release_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PackageReceipt" (
    "id" TEXT NOT NULL,
    "packageId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "companyId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "stage" TEXT NOT NULL,

    CONSTRAINT "PackageReceipt_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Release_revisionId_key" ON "Release"("revisionId");

-- CreateIndex
CREATE INDEX "Release_partNumber_idx" ON "Release"("partNumber");

-- CreateIndex
CREATE INDEX "PackageReceipt_packageId_idx" ON "PackageReceipt"("packageId");

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_replacesId_fkey" FOREIGN KEY ("replacesId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PackageReceipt" ADD CONSTRAINT "PackageReceipt_packageId_fkey" FOREIGN KEY ("packageId") REFERENCES "Package"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
