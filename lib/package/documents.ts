import type { PackageFile } from './content'
import type { DocumentOrder } from './document-order'

/** Lays out documents: here, or somewhere that holds up nobody. The bytes are the same. */
export type DocumentMaker = (order: DocumentOrder) => Promise<readonly PackageFile[]>

/** On the thread that asks, for seconds; the code comes when it is asked for. */
export const makeDocumentsHere: DocumentMaker = async (order) => (await import('./report')).carryOut(order)
