import type { Picture } from '@/lib/drawing'
import { type DocumentMaker, makeDocumentsHere } from './documents'
import type { PdfIdentity } from './report'

/** Pictures in millimetres in one PDF, each a page of its true size: drawing sheets, or a paper model; outside a package too. The same sheets and identity give the same bytes. */
export async function writeDrawingPdf(
  sheets: readonly Picture[],
  identity: PdfIdentity,
  makeDocuments: DocumentMaker = makeDocumentsHere,
): Promise<Uint8Array> {
  const [file] = await makeDocuments({ kind: 'sheets', sheets, identity })
  if (file === undefined) throw new Error('no drawing was made')
  return file.bytes
}
