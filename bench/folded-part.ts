import { checkFolded, flatPartOfPlan, foldPart } from '@/lib/fold'
import { areasOf, type Plan, startingShape } from '@/lib/plan'

const AREAS = 200
const BENDS = 60
const PITCH_MM = 10
const WIDTH_MM = 20
const INSIDE_MM = 0.5
const HALF_THICKNESS_MM = 0.05
const CLEARANCE_MM = 0.5

/** A staircase: a strip with bends to either side in turn, cut into areas between them. */
function makeLargePlan(): Plan {
  const lengthMm = BENDS * PITCH_MM
  const shape = startingShape('strip', { lengthMm, widthMm: WIDTH_MM, armMm: 10, cornerRadiusMm: 1 })
  if (shape === null) throw new Error('no strip')
  const across = (x: number): [[number, number], [number, number]] => [
    [x, 0],
    [x, WIDTH_MM],
  ]
  // Lines stay off the bands, which are at the middle of each pitch.
  const lineXs = [1, 8, 9, 2]
    .flatMap((offset) => Array.from({ length: BENDS }, (_, at) => at * PITCH_MM + offset))
    .slice(0, AREAS - 1)
    .toSorted((a, b) => a - b)
  const borders = [0, ...lineXs, lengthMm]
  return {
    ...shape,
    dividingLines: lineXs.map((x, at) => ({
      id: `d${at}`,
      name: `line ${at}`,
      nodes: across(x).map((atMm) => ({ atMm, viaMm: null })),
    })),
    areas: borders.slice(1).map((x, at) => ({
      id: `a${at}`,
      name: `area ${at}`,
      zoneId: 'flex',
      markMm: [(x + (borders[at] ?? 0)) / 2, WIDTH_MM / 2],
    })),
    bendLines: Array.from({ length: BENDS }, (_, at) => {
      const [fromMm, toMm] = across(at * PITCH_MM + PITCH_MM / 2)
      return { id: `l${at}`, bendId: `b${at}`, fromMm, toMm }
    }),
  }
}

/** Each step of folding a large part, from its plan. A plan's areas are kept by its identity, so that each run has a plan of its own. */
export function prepareFolding() {
  const plan = makeLargePlan()
  const heights = new Map([['flex', { bottomMm: -HALF_THICKNESS_MM, topMm: HALF_THICKNESS_MM }]])
  const bends = new Map(
    plan.bendLines.map(({ bendId }, at) => [
      bendId,
      { angleDeg: at % 2 === 0 ? 90 : -90, lengthMm: (Math.PI / 2) * (INSIDE_MM + HALF_THICKNESS_MM), neutralMm: 0 },
    ]),
  )
  const cut = () => {
    const result = flatPartOfPlan({ ...plan }, heights, bends)
    if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('; '))
    return result.value
  }
  const { part, pieces } = cut()
  const [first] = pieces
  if (first === undefined) throw new Error('the part has no piece')
  const fold = () => foldPart(part, first.plateId)
  const folded = fold()
  return {
    what: `${areasOf(plan).areas.length} areas, ${part.bands.length} bends`,
    areas: () => areasOf({ ...plan }),
    cut,
    fold,
    check: () => checkFolded(part, [], folded, CLEARANCE_MM),
  }
}
