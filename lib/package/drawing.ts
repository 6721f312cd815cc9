import {
  type DrawnSheet,
  drawSheets,
  FILE_UNITS,
  PRINT_PALETTE,
  type RevisionEntry,
  type SheetIdentity,
  toSvg,
} from '@/lib/drawing'
import { describeAuthor, listLoosenedUses, listReviews, type ReviewSnapshot, STAGE_LABELS } from '@/lib/review'
import type { DrawingSource } from './drawing-source'
import type { PdfIdentity } from './report/pdf-writer'

export type { RevisionEntry, SheetIdentity }

/**
 * @param snapshot  the team's: a fabricator's results may have been recomputed
 * @param issuedAt  when it was released, ISO 8601; null before that
 * @param releasedById  by whom
 * @param issued  what was issued before, oldest first, and this revision last where it is released
 */
export function makeDrawingSource(
  snapshot: ReviewSnapshot,
  workspaceName: string,
  issuedAt: string | null,
  releasedById: string | null = null,
  issued: readonly RevisionEntry[] = [],
): DrawingSource {
  const { design, evaluation } = snapshot
  return {
    design,
    results:
      evaluation === null
        ? null
        : { zones: evaluation.results.zones, bends: evaluation.results.bends, items: evaluation.results.items },
    identity: {
      ...makeSheetIdentity(snapshot, workspaceName, issuedAt),
      loosenedBy: listLoosenedUses(snapshot, releasedById),
      revisions: [
        ...issued,
        ...(issuedAt === null ? [{ label: snapshot.label, change: '', releasedBy: '', issuedOn: null }] : []),
      ],
    },
  }
}

/** Title and dates inside the PDF file; the owner of the drawing is its author. */
export function makeDrawingPdfIdentity({ identity }: DrawingSource, at: string): PdfIdentity {
  const subject = `${identity.projectName}, revision ${identity.revisionLabel}`
  return { title: `Drawing, ${subject}`, subject, author: identity.ownerName, at }
}

/**
 * What the title block says of a revision.
 * @param issuedAt  when it was released, ISO 8601; null before that
 */
function makeSheetIdentity(
  snapshot: ReviewSnapshot,
  workspaceName: string,
  issuedAt: string | null,
): Omit<SheetIdentity, 'loosenedBy' | 'revisions'> {
  const { design, stage } = snapshot
  const isReleasing = issuedAt !== null && stage === 'awaiting-signature'
  return {
    ownerName: workspaceName,
    projectName: snapshot.projectName,
    title: design.name,
    partNumber: design.brief.partNumber,
    revisionLabel: snapshot.label,
    issuedOn: issuedAt?.slice(0, 10) ?? null,
    status: STAGE_LABELS[isReleasing ? 'released' : stage],
    createdBy: snapshot.authors.map(describeAuthor).join(', '),
    reviewedBy: listReviews(snapshot).map(({ name }) => name),
    approvedBy: snapshot.signatures
      .filter(({ voided }) => voided === null)
      .map(({ name, capacity }) => `${name} (${capacity})`),
  }
}

/** The sheets as they go into files: um and mm, colours for paper. */
export function drawFileSheets({ design, results, identity }: DrawingSource): DrawnSheet[] {
  return drawSheets(design, results, {
    identity,
    units: FILE_UNITS,
    palette: PRINT_PALETTE,
    size: null,
  })
}

export function writeSheetSvg(sheet: DrawnSheet): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${toSvg(sheet, 'mm')}\n`)
}
