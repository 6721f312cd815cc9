import { type Design, isPlaceholder, NOT_STATED, type ReviewFacts } from '@/lib/engine'
import { FILE_UNITS, IN_NO_ZONE, makeSheetContents, NO_ZONES, NOT_ASKED, type SheetTable } from './contents'

type SheetLacks = NonNullable<ReviewFacts['sheetLacks']>

/** What a bend table has to state before anybody can form and test the bend, by the words at the head of its columns. */
const BEND_HEADS = /^name|^inside radius|angle|face|use|cycles|temperature/i
const STIFFENER_HEADS = /^name|^for$|zones|call-out|held by|overlap/i
const LAYER_HEADS = /^name|kind|runs through/i
const COVERLAY_HEADS = /call-out|as bought/i

/**
 * What the drawing sheet of a design does not state, read from the contents that are drawn: so it cannot say that the sheet shows what it does not.
 * Each entry names the row and the columns that say nothing.
 */
export function findSheetLacks(design: Design): SheetLacks {
  const blocks = makeSheetContents(design, null, FILE_UNITS)
  const findTable = (id: string) =>
    blocks.find((block): block is SheetTable => block.kind === 'table' && block.id === id) ?? null
  const layers = findTable('layers')
  const covers = new Set(
    design.construction.layers.flatMap(({ id, kind }) => (kind === 'coverlay-film' || kind === 'adhesive' ? [id] : [])),
  )
  return {
    layers: listLacks(layers, design.construction.layers, LAYER_HEADS),
    coverlay: listLacks(
      layers,
      design.construction.layers.filter(({ id }) => covers.has(id)),
      COVERLAY_HEADS,
    ),
    bends: listLacks(findTable('bends'), design.bends, BEND_HEADS),
    stiffeners: listLacks(
      findTable('stiffeners'),
      design.construction.layers
        .filter(({ kind }) => kind === 'stiffener')
        .map((layer) => design.features.stiffeners.find(({ layerId }) => layerId === layer.id) ?? layer),
      STIFFENER_HEADS,
    ),
  }
}

/** `Hinge (required cycles)` for each that has no row, or a cell that says nothing. */
function listLacks(
  table: SheetTable | null,
  expected: readonly { readonly id: string; readonly name: string }[],
  heads: RegExp,
): string[] {
  return expected.flatMap(({ id, name }) => {
    const row = table?.rows.find((each) => each.id === id)
    if (table === null || row === undefined) return [`${name} (not on the sheet)`]
    const silent = table.columns.filter(({ label }, index) => heads.test(label) && isSilent(row.cells[index] ?? ''))
    return silent.length === 0 ? [] : [`${name} (${silent.map(({ label }) => label.toLowerCase()).join(', ')})`]
  })
}

/** What a cell says of a layer or a stiffener that is in no zone: where it lies is then open. */
const NOWHERE: ReadonlySet<string> = new Set([IN_NO_ZONE, NO_ZONES])

/** A dash stands where nothing is asked for: cycles of a bend that stands still. */
const isSilent = (cell: string): boolean =>
  cell.includes(NOT_STATED) || NOWHERE.has(cell) || (cell !== NOT_ASKED && isPlaceholder(cell))
