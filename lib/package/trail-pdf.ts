import type { TrailPage } from './document-order'
import { type DocumentMaker, makeDocumentsHere } from './documents'
import type { PdfIdentity } from './report'

/** The trail of a revision as a PDF. */
export async function writeTrailPdf(
  page: TrailPage,
  identity: PdfIdentity,
  makeDocuments: DocumentMaker = makeDocumentsHere,
): Promise<Uint8Array> {
  const [file] = await makeDocuments({ kind: 'trail', page, identity })
  if (file === undefined) throw new Error('no trail was laid out')
  return file.bytes
}
