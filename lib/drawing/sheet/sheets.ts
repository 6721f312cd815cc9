import type { Design } from '@/lib/engine'
import type { Palette } from '../palette'
import { FILE_FONTS } from '../palette'
import { makeNode, type Picture } from '../picture'
import {
  arrange,
  chooseSpan,
  getRoom,
  getSpanWidth,
  type PlacedPart,
  type SheetGrid,
  type SpannedBlock,
} from './arrange'
import { layArray } from './array-view'
import {
  makeRevisionTable,
  makeSheetContents,
  makeSheetWords,
  type SheetBlock,
  type SheetResults,
  type SheetUnits,
} from './contents'
import { layDrawnPlan } from './drawn-plan'
import { layFolded } from './folded-view'
import { drawFrame } from './frame'
import { laySection, type SectionOptions } from './pictures'
import { layPlan } from './plan-view'
import {
  getDrawingSpace,
  getFrame,
  listReferenceFields,
  SHEET_FORMATS,
  type SheetFormat,
  type SheetSize,
} from './sheet-format'
import { getLeastWidth, getWantedWidth, layNotes, layTable, splitColumns } from './strips'
import {
  drawTitleBlock,
  getTitleBlockHeight,
  type SheetIdentity,
  TITLE_BLOCK_WIDTH_MM,
  type TitleBlockTexts,
} from './title-block'

export interface SheetOptions {
  readonly identity: SheetIdentity
  readonly units: SheetUnits
  readonly palette: Palette
  /** Null takes A3, or A2 where the layer table asks for it. */
  readonly size: SheetSize | null
}

/** One sheet. Its picture is drawn in millimetres: `widthPx` and `heightPx` are those of the trimmed sheet in mm. */
export interface DrawnSheet extends Picture {
  readonly number: number
  readonly size: SheetSize
  readonly parts: readonly PlacedPart[]
}

/** Wide enough for any number of sheets: the block's height must be known before they are counted. */
const MOST_SHEETS = 999

/**
 * The drawing sheets of a design: layer table, zones, sections, bend call-outs, stiffeners, features, notes and title
 * block, on as many sheets as they need. Nothing is cut; the same input gives the same sheets.
 *
 * @param results  as recorded or as computed live; null leaves out what rests on them
 */
export function drawSheets(design: Design, results: SheetResults | null, options: SheetOptions): DrawnSheet[] {
  const [layers, ...others] = makeSheetContents(design, results, options.units)
  const revisions = makeRevisionTable(options.identity.revisions)
  // On the first sheet, where a reader looks which revision this is.
  const blocks = [layers, revisions, ...others].filter((block) => block !== undefined && block !== null)
  const format = SHEET_FORMATS[options.size ?? chooseSize(blocks)]
  const unitsNote = makeUnitsNote(blocks, options.units, design)
  const hasPlan = blocks.some(({ kind }) => kind === 'plan' || kind === 'drawn-plan')
  const common = { identity: options.identity, unitsNote, hasPlan }
  const texts = { ...common, sheetNumber: MOST_SHEETS, sheetCount: MOST_SHEETS }
  const space = getDrawingSpace(format)
  const frame = getFrame(format)
  const grid: SheetGrid = {
    space,
    titleBlock: {
      widthMm: space.x + space.width - (frame.x + frame.width - TITLE_BLOCK_WIDTH_MM),
      heightMm: getTitleBlockHeight(texts, format.size) - (frame.y + frame.height - space.y - space.height),
    },
  }
  const arranged = arrange(
    blocks.flatMap((block) => layBlock(block, grid, design, options)),
    grid,
  )
  return arranged.map((parts, index) =>
    drawOne(format, parts, { ...common, sheetNumber: index + 1, sheetCount: arranged.length }, design, options.palette),
  )
}

/** A2 where the layer table with its zones is too wide for A3: side by side they are easier to read than in parts. */
function chooseSize(blocks: readonly SheetBlock[]): SheetSize {
  const [layers] = blocks
  if (layers?.kind !== 'table') return 'A3'
  return getLeastWidth(layers.columns) <= getDrawingSpace(SHEET_FORMATS.A3).width ? 'A3' : 'A2'
}

/** Values of their own fields, and what the team wrote besides. */
const TOLERANCE_NOTES: readonly string[] = ['tolerance-values', 'tolerances']

function makeUnitsNote(blocks: readonly SheetBlock[], units: SheetUnits, design: Design): string {
  const words = makeSheetWords(design.construction, units)
  const notes = blocks.find((block) => block.kind === 'notes')
  const numbers =
    notes?.kind === 'notes' ? notes.notes.flatMap(({ id }, at) => (TOLERANCE_NOTES.includes(id) ? [at + 1] : [])) : []
  const where =
    numbers.length === 0
      ? 'as in the tables; general tolerances are not stated'
      : `as in the tables and ${numbers.length === 1 ? 'note' : 'notes'} ${numbers.join(' and ')}`
  return `Thickness in ${words.thicknessUnit}, plan in ${words.planUnit}. Tolerances ${where}.`
}

function layBlock(block: SheetBlock, grid: SheetGrid, design: Design, options: SheetOptions): SpannedBlock[] {
  const { palette } = options
  switch (block.kind) {
    case 'table':
      return splitColumns(block, grid.space.width).map((table) => {
        const span = chooseSpan(grid, getWantedWidth(table.columns))
        return { span, laid: layTable(table, getSpanWidth(grid, span), palette) }
      })
    case 'notes': {
      const span = chooseSpan(grid, block.leastMm)
      return [{ span, laid: layNotes(block, getSpanWidth(grid, span), palette) }]
    }
    case 'plan': {
      const span = chooseSpan(grid, block.leastMm)
      const words = makeSheetWords(design.construction, options.units)
      const formatPlan = (valueMm: number) => `${words.plan(valueMm)} ${words.planUnit}`
      return [{ span, laid: layPlan(block, getSpanWidth(grid, span), getRoom(grid, span), formatPlan, palette) }]
    }
    case 'drawn-plan': {
      const span = chooseSpan(grid, block.leastMm)
      const words = makeSheetWords(design.construction, options.units)
      return [
        { span, laid: layDrawnPlan(block, design, getSpanWidth(grid, span), getRoom(grid, span), words, palette) },
      ]
    }
    case 'folded': {
      const span = chooseSpan(grid, block.leastMm)
      const unit = options.units.plan
      return [{ span, laid: layFolded(block, getSpanWidth(grid, span), getRoom(grid, span), unit, palette) }]
    }
    case 'array': {
      const span = chooseSpan(grid, block.leastMm)
      const words = makeSheetWords(design.construction, options.units)
      return [{ span, laid: layArray(block, getSpanWidth(grid, span), getRoom(grid, span), words, palette) }]
    }
    case 'section': {
      const span = chooseSpan(grid, block.leastMm)
      const section = makeSectionOptions(design, options)
      return [{ span, laid: laySection(block, getSpanWidth(grid, span), getRoom(grid, span), section) }]
    }
  }
}

function makeSectionOptions({ construction }: Design, { units, palette }: SheetOptions): SectionOptions {
  const words = makeSheetWords(construction, units)
  return {
    construction,
    unit: units.thickness,
    palette,
    zoneNames: new Map(construction.zones.map(({ id }) => [id, words.zone(id)])),
    layerNumbers: new Map(construction.layers.map(({ id }) => [id, words.layer(id)])),
  }
}

function drawOne(
  format: SheetFormat,
  parts: readonly PlacedPart[],
  texts: TitleBlockTexts,
  design: Design,
  palette: Palette,
): DrawnSheet {
  const { identity, sheetNumber: number, sheetCount } = texts
  return {
    number,
    size: format.size,
    parts,
    title: `Drawing sheet ${number} of ${sheetCount}, ${identity.projectName} revision ${identity.revisionLabel}`,
    description: `${design.name}, ${format.size}: ${parts.map(({ title }) => title).join('; ')}.`,
    widthPx: format.widthMm,
    heightPx: format.heightMm,
    nodes: [
      makeNode('rect', { x: 0, y: 0, width: format.widthMm, height: format.heightMm, fill: palette.paper }),
      makeNode('g', { 'font-family': FILE_FONTS, fill: palette.ink }, [
        ...parts.flatMap(({ nodes }) => nodes),
        ...drawTitleBlock(format, texts, palette),
        ...drawFrame(format, palette),
      ]),
    ],
    table: {
      caption: `Contents of sheet ${number}, and the field in which each begins`,
      columns: [
        { key: 'part', label: 'Part', numeric: false },
        { key: 'field', label: 'Field', numeric: false },
      ],
      rows: parts.map(({ title, rect }) => ({ part: title, field: findField(format, rect.x, rect.y) })),
    },
  }
}

/** `B3`: the field of the grid reference system in which a point lies. */
function findField(format: SheetFormat, x: number, y: number): string {
  const letter = listReferenceFields(format, 'height').find(({ toMm }) => y <= toMm)?.label ?? ''
  const number = listReferenceFields(format, 'width').find(({ toMm }) => x <= toMm)?.label ?? ''
  return letter + number
}
