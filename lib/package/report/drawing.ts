import { type DrawnSheet, describePicture, type Picture, toSvg } from '@/lib/drawing'
import type { PackageFile } from '../content'
import { writeSheetSvg } from '../drawing'
import { PDF_FONT, type PdfIdentity, writePdf } from './pdf-writer'

export const DRAWING_PDF_PATH = 'drawing/sheets.pdf'

const POINTS_PER_MM = 72 / 25.4

/** All sheets in one PDF, each a page of its true size. */
export async function writeSheetsPdf(sheets: readonly Picture[], identity: PdfIdentity): Promise<Uint8Array> {
  const [first] = sheets
  if (first === undefined) throw new RangeError('a drawing has at least one sheet')
  const width = first.widthPx * POINTS_PER_MM
  const height = first.heightPx * POINTS_PER_MM
  return writePdf(
    {
      pageSize: { width, height },
      pageMargins: 0,
      defaultStyle: { font: PDF_FONT },
      content: sheets.map((sheet, index) => ({
        svg: toSvg(sheet),
        alt: describePicture(sheet),
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
    { path: DRAWING_PDF_PATH, bytes: await writeSheetsPdf(sheets, identity) },
    ...sheets.map((sheet) => ({ path: `drawing/sheet-${sheet.number}.svg`, bytes: writeSheetSvg(sheet) })),
  ]
}
