import { type DrawnSheet, drawSheets, FILE_UNITS, PRINT_PALETTE, type SheetIdentity, toSvg } from '@/lib/drawing'
import { type ReviewSnapshot, STAGE_LABELS } from '@/lib/review'

export type { SheetIdentity }

/**
 * What the title block says of a revision.
 * @param issuedAt  when it was released, ISO 8601; null before that
 */
export function makeSheetIdentity(
  snapshot: ReviewSnapshot,
  workspaceName: string,
  issuedAt: string | null,
): SheetIdentity {
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
    createdBy: snapshot.editors.map(({ name }) => name).join(', '),
    approvedBy: snapshot.signatures
      .filter(({ voided }) => voided === null)
      .map(({ name, capacity }) => `${name} (${capacity})`),
  }
}

/** The sheets as they go into files: um and mm, colours for paper. */
export function drawFileSheets(snapshot: ReviewSnapshot, identity: SheetIdentity): DrawnSheet[] {
  return drawSheets(snapshot.design, snapshot.evaluation?.results ?? null, {
    identity,
    units: FILE_UNITS,
    palette: PRINT_PALETTE,
    size: null,
  })
}

export function writeSheetSvg(sheet: DrawnSheet): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${toSvg(sheet, 'mm')}\n`)
}
