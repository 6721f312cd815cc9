import type { PackageContent, PackageFile } from '../content'
import type { DocumentOrder } from '../document-order'
import { drawFileSheets, makeDrawingPdfIdentity } from '../drawing'
import { DRAWING_PDF_PATH, makeDrawingFiles, writeSheetsPdf } from './drawing'
import { writePdf } from './pdf-writer'
import { makeQuotationDocument } from './quotation'
import { makeReport } from './report'
import { makeTrailDocument } from './trail'

export type { PdfIdentity } from './pdf-writer'

/** Makes what a thread was asked for. */
export async function carryOut(order: DocumentOrder): Promise<PackageFile[]> {
  if (order.kind === 'package') return makeDocuments(order.content)
  if (order.kind === 'trail') {
    return [{ path: 'trail.pdf', bytes: await writePdf(makeTrailDocument(order.page), order.identity) }]
  }
  if (order.kind === 'quotation') {
    const definition = makeQuotationDocument(order.request, order.outline)
    return [{ path: 'request-for-quotation.pdf', bytes: await writePdf(definition, order.identity) }]
  }
  return [{ path: DRAWING_PDF_PATH, bytes: await writeSheetsPdf(order.sheets, order.identity) }]
}

/** The readable documents of a package: report, and drawing sheets as SVG and PDF. */
export async function makeDocuments(content: PackageContent): Promise<PackageFile[]> {
  const { snapshot, release, drawing } = content
  const subject = `${snapshot.projectName}, revision ${snapshot.label}`
  const identity = { subject, author: release.byName, at: release.at }
  const report = await writePdf(makeReport(content), { ...identity, title: `Manufacturability review, ${subject}` })
  return [
    { path: 'report.pdf', bytes: report },
    ...(await makeDrawingFiles(drawFileSheets(drawing), makeDrawingPdfIdentity(drawing, release.at))),
  ]
}
