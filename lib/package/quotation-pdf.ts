import type { Picture } from '@/lib/drawing'
import { type DocumentMaker, makeDocumentsHere } from './documents'
import type { QuotationRequest } from './quotation'
import type { PdfIdentity } from './report'

/**
 * A request for quotation as a PDF.
 * @param outline  the part in the flat; null where it has no outline
 */
export async function writeQuotationPdf(
  request: QuotationRequest,
  outline: Picture | null,
  identity: PdfIdentity,
  makeDocuments: DocumentMaker = makeDocumentsHere,
): Promise<Uint8Array> {
  const [file] = await makeDocuments({ kind: 'quotation', request, outline, identity })
  if (file === undefined) throw new Error('no request for quotation was laid out')
  return file.bytes
}
