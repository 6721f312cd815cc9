/**
 * The layers of a design as one sheet of text cells: a row for each layer, a column for each zone. It is read from what people paste or
 * import, and written for spreadsheets. Pure.
 */
export { applyLayerSheet } from './apply-sheet'
export { type LayerTable, makeLayerTable } from './layer-table'
export { readLayerBlock } from './read-block'
export type { LayerRow, SheetZone } from './rows'
export { writeLayerSheet, writeLayerTexts } from './write-sheet'
