-- CreateTable
CREATE TABLE "ArtworkReading" (
    "key" TEXT NOT NULL,
    "part" TEXT NOT NULL,
    "contentJson" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ArtworkReading_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "ArtworkRole" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "side" TEXT,
    "layerNumber" INTEGER,
    "setById" TEXT NOT NULL,
    "setAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "ArtworkRole_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "ArtworkRole_revisionId_idx" ON "ArtworkRole"("revisionId");

-- AddForeignKey
ALTER TABLE "ArtworkRole" ADD CONSTRAINT "ArtworkRole_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
