/** The drawing sheet: what stands on it (`contents`), how it is arranged, frame and title block. */

export { measureText } from '../text-metrics'
export {
  FILE_UNITS,
  makeSheetContents,
  type RevisionEntry,
  type SheetResults,
} from './contents'
export { findSheetLacks } from './lacks'
export {
  FIELD_LENGTH_MM,
  getFrame,
  listReferenceFields,
  SHEET_FORMATS,
  SHEET_SIZES,
  type SheetSize,
} from './sheet-format'
export { type DrawnSheet, drawSheets } from './sheets'
export { type SheetIdentity, TITLE_BLOCK_WIDTH_MM } from './title-block'
