/** The drawing sheet: what stands on it (`contents`), how it is arranged, frame and title block. */

export { measureText } from '../text-metrics'
export {
  FILE_UNITS,
  makeSheetContents,
  type SheetBlock,
  type SheetResults,
  type SheetTable,
  type SheetUnits,
} from './contents'
export {
  FIELD_LENGTH_MM,
  getFrame,
  listReferenceFields,
  type RectMm,
  SHEET_FORMATS,
  SHEET_SIZES,
  type SheetFormat,
  type SheetSize,
} from './sheet-format'
export { type DrawnSheet, drawSheets, type SheetOptions } from './sheets'
export { type SheetIdentity, TITLE_BLOCK_WIDTH_MM } from './title-block'
