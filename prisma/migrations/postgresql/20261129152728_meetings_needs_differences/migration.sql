-- AlterTable
ALTER TABLE "Attachment" ADD COLUMN     "needId" TEXT;

-- CreateTable
CREATE TABLE "DifferenceAcknowledgement" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "differenceKey" TEXT NOT NULL,
    "fact" TEXT NOT NULL,
    "said" TEXT NOT NULL,
    "against" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "acknowledgedById" TEXT NOT NULL,
    "acknowledgedAt" TIMESTAMP(3) NOT NULL,
    "withdrawnById" TEXT,
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "DifferenceAcknowledgement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Meeting" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "heldOn" TEXT NOT NULL,
    "agenda" TEXT NOT NULL,
    "recordedById" TEXT NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Meeting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MeetingPerson" (
    "id" TEXT NOT NULL,
    "meetingId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "userName" TEXT NOT NULL,
    "attendance" TEXT NOT NULL,

    CONSTRAINT "MeetingPerson_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MeetingDecision" (
    "id" TEXT NOT NULL,
    "meetingId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "pointsKind" TEXT NOT NULL,
    "pointsId" TEXT NOT NULL,
    "pointsLabel" TEXT NOT NULL,

    CONSTRAINT "MeetingDecision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Need" (
    "id" TEXT NOT NULL,
    "revisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "itemIdsJson" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "plannedOn" TEXT,
    "result" TEXT NOT NULL DEFAULT '',
    "reportedById" TEXT,
    "reportedAt" TIMESTAMP(3),
    "acceptedById" TEXT,
    "acceptedAt" TIMESTAMP(3),
    "acceptNote" TEXT NOT NULL DEFAULT '',
    "droppedReason" TEXT,
    "statedById" TEXT NOT NULL,
    "statedAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Need_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "DifferenceAcknowledgement_revisionId_idx" ON "DifferenceAcknowledgement"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Meeting_revisionId_number_key" ON "Meeting"("revisionId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "MeetingPerson_meetingId_userId_key" ON "MeetingPerson"("meetingId", "userId");

-- CreateIndex
CREATE UNIQUE INDEX "MeetingDecision_meetingId_ordinal_key" ON "MeetingDecision"("meetingId", "ordinal");

-- CreateIndex
CREATE UNIQUE INDEX "Need_revisionId_number_key" ON "Need"("revisionId", "number");

-- AddForeignKey
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_needId_fkey" FOREIGN KEY ("needId") REFERENCES "Need"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DifferenceAcknowledgement" ADD CONSTRAINT "DifferenceAcknowledgement_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Meeting" ADD CONSTRAINT "Meeting_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MeetingPerson" ADD CONSTRAINT "MeetingPerson_meetingId_fkey" FOREIGN KEY ("meetingId") REFERENCES "Meeting"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MeetingDecision" ADD CONSTRAINT "MeetingDecision_meetingId_fkey" FOREIGN KEY ("meetingId") REFERENCES "Meeting"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Need" ADD CONSTRAINT "Need_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
