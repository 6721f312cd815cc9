import { type DrawnSheet, drawSheets, FILE_UNITS, PRINT_PALETTE, type SheetIdentity, toSvg } from '@/lib/drawing'
import { type ReviewSnapshot, STAGE_LABELS } from '@/lib/review'
import type { PackageFile } from '../content'
import { type PdfIdentity, writePdf } from './pdf-writer'

const POINTS_PER_MM = 72 / 25.4

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

/** All sheets in one PDF, each a page of its true size. */
export async function writeSheetsPdf(sheets: readonly DrawnSheet[], identity: PdfIdentity): Promise<Uint8Array> {
  const [first] = sheets
  if (first === undefined) throw new RangeError('a drawing has at least one sheet')
  const width = first.widthPx * POINTS_PER_MM
  const height = first.heightPx * POINTS_PER_MM
  return writePdf(
    {
      pageSize: { width, height },
      pageMargins: 0,
      defaultStyle: { font: 'DejaVu' },
      content: sheets.map((sheet, index) => ({
        svg: toSvg(sheet),
        fit: [width, height],
        ...(index === 0 ? {} : { pageBreak: 'before' as const }),
      })),
    },
    identity,
  )
}

/** Drawing files of a package: the PDF, and an SVG of each sheet. */
export async function makeDrawingFiles(sheets: readonly DrawnSheet[], identity: PdfIdentity): Promise<PackageFile[]> {
  return [
    { path: 'drawing/sheets.pdf', bytes: await writeSheetsPdf(sheets, identity) },
    ...sheets.map((sheet) => ({ path: `drawing/sheet-${sheet.number}.svg`, bytes: writeSheetSvg(sheet) })),
  ]
}
