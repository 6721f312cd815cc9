import type { Design } from '../design'
import { compareWords, type Papers } from './against-words'
import { compareFields } from './in-fields'
import { compareLists } from './in-lists'
import type { WrittenTwice } from './statement'

export { type Papers, readPartNumbers } from './against-words'
export {
  type Cut,
  readCuts,
  readNamedThicknesses,
  readNoteNumbers,
  readPartsPerPanel,
  readSavingsPct,
} from './in-remarks'
export { readClasses, readLayerCounts, readRadii, readTypes } from './in-words'
export type { WrittenTwice } from './statement'

/** Every fact that the design and its papers write twice, whether both places agree or not. */
export function listWrittenTwice(design: Design, papers: Papers): WrittenTwice[] {
  return [...compareFields(design), ...compareLists(design), ...compareWords(design, papers)]
}
