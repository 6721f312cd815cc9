import { type Design, NOT_STATED } from '@/lib/engine'
import { asEntered } from '@/lib/engine/units'
import { measureDimension, type Plan } from '@/lib/plan'
import { nameHoleSymbol } from '../../plan/hole-symbol'
import { makePlanReferences, type PlanReferences } from '../../plan/references'
import type { SheetColumn, SheetTable } from './model'
import { nameDimensions, writeTolerance } from './plan-dimensions'
import type { SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

type Point = readonly [number, number]

/** Where everything on the plan lies, from its origin: tables that the view refers to. Each stands only where there is something. */
export function makePlacedTables(design: Design, words: SheetWords): SheetTable[] {
  const { plan } = design
  if (plan === null || plan.outline === null) return []
  const names = makePlanReferences(design)
  return [
    makeBendLineTable(design, plan, names, words),
    makeHolePlaceTable(design, plan, names, words),
    makeShapeTable(plan, names, words),
    makeDimensionTable(plan, words),
    makeFlagTable(plan, words),
    makeArrayTable(plan, words),
  ].filter(({ rows }) => rows.length > 0)
}

const writePoint = ([x, y]: Point, words: SheetWords) => `${words.plan(x)}, ${words.plan(y)}`

/** Where a contact end must lie in the folded part; nothing where nobody has said. */
function writeTarget({ target }: Plan['connectorEnds'][number], words: SheetWords): string[] {
  if (target === null) return []
  const within = [
    ...(target.withinMm === null ? [] : [`${words.plan(target.withinMm)} ${words.planUnit}`]),
    ...(target.withinDeg === null ? [] : [`${asEntered(target.withinDeg)}°`]),
  ]
  return [
    `folded at (${target.atMm.map((mm) => words.plan(mm)).join(', ')}), z from the top face of the area that stays`,
    `pointing to (${target.pointsTo.map((part) => asEntered(part)).join(', ')})`,
    ...(target.topFaces === null ? [] : [`top face to (${target.topFaces.map((part) => asEntered(part)).join(', ')})`]),
    ...(within.length === 0 ? [] : [`within ${within.join(' and ')}`]),
  ]
}

function makeBendLineTable(design: Design, plan: Plan, names: PlanReferences, words: SheetWords): SheetTable {
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'bend-lines',
    title: 'Axes of the bends in the flat',
    keyColumnCount: 1,
    columns: [
      column('Bend', 11),
      column(`From x, y, ${mm}`, 30),
      column(`To x, y, ${mm}`, 30),
      column('Line', 21),
      column('Inside face', 15),
      column(`Inside radius, ${mm}`, 24, 0, true),
      column('Angle', 13, 0, true),
      column('Sense', 34, 1),
    ],
    rows: plan.bendLines.map(({ id, bendId, fromMm, toMm }) => {
      const bend = design.bends.find((each) => each.id === bendId)
      return {
        id,
        cells: [
          names.bends.get(bendId) ?? bendId,
          writePoint(fromMm, words),
          writePoint(toMm, words),
          bend?.insideFace === 'top' ? 'dashed' : 'dash-dotted',
          bend?.insideFace ?? NOT_STATED,
          bend === undefined ? NOT_STATED : `${words.plan(bend.insideRadiusMm)} ±${words.plan(bend.radiusToleranceMm)}`,
          bend === undefined ? NOT_STATED : asEntered(bend.angleDeg, 'deg'),
          bend?.insideFace === 'top' ? 'both sides towards the reader' : 'both sides away from the reader',
        ],
      }
    }),
  }
}

function makeHolePlaceTable(design: Design, plan: Plan, names: PlanReferences, words: SheetWords): SheetTable {
  const mm = words.planUnit
  const step = (count: number, stepMm: Point | null) =>
    count === 1 || stepMm === null ? '1' : `${count}, each ${writePoint(stepMm, words)} on`
  return {
    kind: 'table',
    id: 'hole-places',
    title: 'Places of the holes',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column('Symbol', 34, 1),
      column(`Finished or drilled, ${mm}`, 22, 0, true),
      column(`First at x, y, ${mm}`, 30),
      column('Columns', 32),
      column('Rows', 32),
      column('Count', 13, 0, true),
    ],
    rows: plan.holes.map(({ id, holeId, atMm, columns, rows, columnStepMm, rowStepMm }) => {
      const index = design.features.holes.findIndex((hole) => hole.id === holeId)
      return {
        id,
        cells: [
          names.holes.get(holeId) ?? holeId,
          nameHoleSymbol(index),
          words.plan(design.features.holes[index]?.drillMm ?? null),
          writePoint(atMm, words),
          step(columns, columnStepMm),
          step(rows, rowStepMm),
          String(columns * rows),
        ],
      }
    }),
  }
}

/** Points beyond these are left to the exchange formats. */
const MOST_POINTS = 24

function writeShape(nodes: NonNullable<Plan['outline']>, words: SheetWords): string {
  if (nodes.length > MOST_POINTS) return `${nodes.length} points, in the plan’s exchange format`
  return nodes
    .map(
      ({ atMm, viaMm }) =>
        `(${writePoint(atMm, words)})${viaMm === null ? '' : ` arc through (${writePoint(viaMm, words)})`}`,
    )
    .join(' ')
}

function makeShapeTable(plan: Plan, names: PlanReferences, words: SheetWords): SheetTable {
  const mm = words.planUnit
  const rectangle = ([width, height]: Point) => `${words.plan(width)} × ${words.plan(height)}`
  return {
    kind: 'table',
    id: 'plan-shapes',
    title: 'Places of stiffeners, openings, components, lands and contact ends',
    keyColumnCount: 2,
    columns: [column('Ref.', 11), column('What', 28), column(`Points x, y, ${mm}`, 70, 3)],
    rows: [
      ...plan.stiffeners.map(({ id, stiffenerId, nodes }) => ({
        id: `stiffener-${id}`,
        cells: [names.stiffeners.get(stiffenerId) ?? stiffenerId, 'stiffener', writeShape(nodes, words)],
      })),
      ...plan.coverlayOpenings.map(({ id, openingId, layerId, nodes }) => ({
        id: `opening-${id}`,
        cells: [
          names.openings.get(openingId) ?? openingId,
          layerId === null ? 'coverlay opening' : `coverlay opening in layer ${words.layer(layerId)}`,
          writeShape(nodes, words),
        ],
      })),
      ...plan.components.map(({ id, componentId, face, heightMm, nodes }) => ({
        id: `component-${id}`,
        cells: [
          names.components.get(componentId) ?? componentId,
          `component, ${face === null ? 'face not stated' : `${face} face`}, height ${words.plan(heightMm)}`,
          writeShape(nodes, words),
        ],
      })),
      ...plan.connectorEnds.map((end) => ({
        id: `connector-${end.id}`,
        cells: [
          names.connectors.get(end.connectorId) ?? end.connectorId,
          'contact end',
          [
            `edge from (${writePoint(end.fromMm, words)}) to (${writePoint(end.toMm, words)})`,
            `contacts ${end.contactCount ?? NOT_STATED}`,
            `first at ${end.firstContactMm === null ? NOT_STATED : `(${writePoint(end.firstContactMm, words)})`}`,
            `step ${end.contactStepMm === null ? NOT_STATED : writePoint(end.contactStepMm, words)}`,
            `contact length ${words.plan(end.contactLengthMm)}`,
            `plated ${words.plan(end.platedLengthMm)}`,
            `insertion ${words.plan(end.insertionDepthMm)}`,
            ...writeTarget(end, words),
          ].join('; '),
        ],
      })),
      ...plan.pads.map(({ id, atMm, sizeMm, isRound, anchorsMm }) => ({
        id: `pad-${id}`,
        cells: [
          '–',
          isRound === true ? 'round land' : 'land',
          [
            `middle (${writePoint(atMm, words)})`,
            `size ${sizeMm === null ? NOT_STATED : rectangle(sizeMm)}`,
            ...(anchorsMm.length === 0
              ? []
              : [`anchors to ${anchorsMm.map((point) => `(${writePoint(point, words)})`).join(' ')}`]),
          ].join('; '),
        ],
      })),
    ],
  }
}

const DIRECTION_WORDS = { 'along-x': 'along x', 'along-y': 'along y', straight: 'straight' } as const

function makeDimensionTable(plan: Plan, words: SheetWords): SheetTable {
  const mm = words.planUnit
  const names = nameDimensions(plan)
  return {
    kind: 'table',
    id: 'plan-dimensions',
    title: 'Dimensions in the flat, from the plan; (in brackets) for reference',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column('Direction', 18),
      column(`From x, y, ${mm}`, 30),
      column(`To x, y, ${mm}`, 30),
      column(`Size, ${mm}`, 20, 0, true),
      column(`Tolerance, ${mm}`, 24, 0, true),
    ],
    rows: plan.dimensions.map((dimension) => {
      const size = words.plan(measureDimension(dimension))
      return {
        id: dimension.id,
        cells: [
          names.get(dimension.id) ?? '',
          DIRECTION_WORDS[dimension.direction],
          writePoint(dimension.fromMm, words),
          writePoint(dimension.toMm, words),
          dimension.isReference ? `(${size})` : size,
          dimension.isReference ? '–' : writeTolerance(dimension, words) || 'general',
        ],
      }
    }),
  }
}

function makeFlagTable(plan: Plan, words: SheetWords): SheetTable {
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'plan-flags',
    title: 'Datums, markings and notes on the view',
    keyColumnCount: 1,
    columns: [column('Ref.', 11), column('What', 20), column(`At x, y, ${mm}`, 44), column('Says', 50, 2)],
    rows: [
      ...plan.datums.map(({ id, letter, fromMm, toMm }) => ({
        id: `datum-${id}`,
        cells: [
          `[${letter}]`,
          'datum',
          toMm === null ? writePoint(fromMm, words) : `${writePoint(fromMm, words)} to ${writePoint(toMm, words)}`,
          toMm === null ? 'point' : 'edge or line',
        ],
      })),
      ...plan.markings.map(({ id, text, face, atMm, heightMm }, index) => ({
        id: `marking-${id}`,
        cells: [
          `M${index + 1}`,
          `marking, ${face} face`,
          writePoint(atMm, words),
          `${text}; letters ${heightMm === null ? `of a height ${NOT_STATED}` : `${words.plan(heightMm)} high`}`,
        ],
      })),
      // A note without a place is one of the sheet's notes.
      ...plan.notes.flatMap(({ id, text, atMm }, index) =>
        atMm === null
          ? []
          : [{ id: `note-${id}`, cells: [`N${index + 1}`, 'note', writePoint(atMm, words), text.trim()] }],
      ),
    ],
  }
}

function makeArrayTable({ array }: Plan, words: SheetWords): SheetTable {
  const mm = words.planUnit
  const rows =
    array === null
      ? []
      : [
          ['parts', `${array.columns} × ${array.rows}`],
          ['step along x', words.plan(array.columnStepMm)],
          ['step along y', words.plan(array.rowStepMm)],
          ['frame', words.plan(array.frameMm)],
          [
            'tabs of each part',
            array.tabs.length === 0
              ? NOT_STATED
              : array.tabs
                  .map(({ atMm, widthMm }) => `(${writePoint(atMm, words)}) ${words.plan(widthMm)} wide`)
                  .join('; '),
          ],
          [
            'fiducials',
            array.fiducials.length === 0
              ? NOT_STATED
              : array.fiducials.map(({ atMm }) => `(${writePoint(atMm, words)})`).join('; '),
          ],
        ]
  return {
    kind: 'table',
    id: 'plan-array',
    title: `Array, ${mm}; places from the origin of its first part`,
    keyColumnCount: 1,
    columns: [column('What', 32), column('Value', 40, 2)],
    rows: rows.map(([what = '', value = ''], index) => ({ id: String(index + 1), cells: [what, value] })),
  }
}
