import type { DrawnSheet } from '@/lib/drawing'
import type { PdfIdentity } from './report'

/** All sheets in one PDF, outside a package too. The same sheets and identity give the same bytes. */
export async function writeDrawingPdf(sheets: readonly DrawnSheet[], identity: PdfIdentity): Promise<Uint8Array> {
  // Loaded on demand: laying out a PDF is heavy, and most of what uses packages needs none.
  const { writeSheetsPdf } = await import('./report')
  return writeSheetsPdf(sheets, identity)
}
