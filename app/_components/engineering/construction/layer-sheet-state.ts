import { type GridState, makeGrid, moveTo } from '@/app/_components/fabrication/grid/grid-state'
import type { Design, Material } from '@/lib/engine'
import type { LengthUnit } from '@/lib/engine/units'
import { type LayerTable, makeLayerTable, readLayerBlock, type SheetZone, writeLayerTexts } from '@/lib/layer-sheet'

/** The layers of the draft as a grid that is being edited. */
export interface OpenSheet {
  readonly unit: LengthUnit
  readonly zones: readonly SheetZone[]
  readonly table: LayerTable
  readonly grid: GridState
  /** Layer that each row of the grid belongs to, by the row's id; rows that are new are missing. */
  readonly layerIds: ReadonlyMap<number, string>
  /** What the sheet and the draft agree on: another construction in the draft came from elsewhere. */
  readonly construction: Design['construction']
}

interface SheetSource {
  readonly design: Design
  /** What is saved, which marks what is not. */
  readonly stored: Design
  /** Materials of the workspace, which a layer may be made of. */
  readonly offered: readonly Material[]
}

export function openSheet({ design, stored, offered }: SheetSource, unit: LengthUnit, before?: GridState): OpenSheet {
  const zones = design.construction.zones.map(({ id, name }) => ({ id, name, facts: null }))
  const table = makeLayerTable(design, zones, unit, offered)
  const savedTexts = new Map(
    writeLayerTexts(stored, table, zones).map((texts, index) => [stored.construction.layers[index]?.id, texts]),
  )
  const texts = writeLayerTexts(design, table, zones)
  // A sheet without a row would have no cell to paste into.
  const made = makeGrid(table.columns.length, texts.length === 0 ? [table.columns.map(() => '')] : texts)
  const rows = made.rows.map((row, index) => ({
    ...row,
    saved: savedTexts.get(design.construction.layers[index]?.id) ?? null,
  }))
  const grid = { ...made, rows }
  return {
    unit,
    zones,
    table,
    grid: before === undefined ? grid : moveTo(grid, before.cursor),
    layerIds: new Map(design.construction.layers.map(({ id }, index) => [index, id])),
    construction: design.construction,
  }
}

export type TakenTable =
  | { readonly ok: true; readonly sheet: OpenSheet; readonly notes: readonly string[] }
  | { readonly ok: false; readonly reasons: readonly string[] }

/** A table with headings in place of the whole sheet; null where it has no headings. */
export function takeTable(
  { design, offered }: Pick<SheetSource, 'design' | 'offered'>,
  block: readonly (readonly string[])[],
  sheet: OpenSheet,
): TakenTable | null {
  const reading = readLayerBlock(design, block, sheet.unit)
  if (reading === null || !reading.ok) return reading
  const table = makeLayerTable(design, reading.zones, sheet.unit, offered)
  const made = makeGrid(table.columns.length, reading.rows)
  const grid = { ...made, rows: made.rows.map((row) => ({ ...row, saved: null })) }
  const { rows, zones, unknownHeadings, assumedUnit } = reading
  const notes = [
    `${rows.length === 1 ? '1 layer' : `${rows.length} layers`} and ${zones.length === 1 ? '1 zone' : `${zones.length} zones`} were read.`,
    ...(unknownHeadings.length === 0
      ? []
      : [`These columns are not known here and were left out: ${unknownHeadings.join(', ')}.`]),
    ...(assumedUnit === null ? [] : [`Lengths that name no unit were taken as ${assumedUnit}.`]),
  ]
  return { ok: true, sheet: { ...sheet, zones, table, grid, layerIds: new Map() }, notes }
}

/** The rows that say anything, in order. */
export const listFilledRows = ({ rows }: GridState) =>
  rows.filter(({ texts }) => texts.some((text) => text.trim() !== ''))
