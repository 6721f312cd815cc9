import {
  boundsOf,
  edgesOfLoop,
  isInBox,
  type LineOrArc,
  locateInRegion,
  makeCheckedRegion,
  type Region,
  type Split,
  splitByLines,
} from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM, type PointMm } from '../document/primitives'
import { pathInNm, toMm, toNm } from '../document/to-geometry'

/** Where two areas lie side by side: the stretch of a dividing line between them, with this area to its left. */
export interface Border {
  /** Place of the other area in the list. */
  readonly area: number
  readonly lineId: string
  readonly edges: readonly LineOrArc[]
}

/** What the dividing lines leave of the part round a mark. Leaves that are not bonded share it. */
export interface PlanArea {
  /** Of its mark; null where it has none, or several. */
  readonly id: string | null
  readonly name: string | null
  readonly zoneId: string | null
  readonly region: Region
  readonly areaMm2: number
  readonly borders: readonly Border[]
  /** Somewhere inside, for a picture's words. */
  readonly innerMm: PointMm
}

/** What is unfinished about a plan, or contradicts itself, with the place. */
export interface PlanProblem {
  readonly code: 'no-outline' | 'idle-line' | 'mark-outside' | 'two-marks' | 'no-mark' | 'no-zone'
  /** Where to look: the list of the plan and the entry's place in it; empty where nothing is drawn yet. */
  readonly path: readonly (string | number)[]
  readonly atMm: PointMm | null
  readonly message: string
}

export interface PlanAreas {
  /** The outline without its cut-outs; null where there is none. */
  readonly part: Region | null
  readonly areas: readonly PlanArea[]
  readonly problems: readonly PlanProblem[]
}

const known = new WeakMap<Plan, PlanAreas>()

/** The areas of a checked plan, and which borders on which. Worked out once for each plan. */
export function areasOf(plan: Plan): PlanAreas {
  const found = known.get(plan) ?? computeAreas(plan)
  known.set(plan, found)
  return found
}

const NM2_PER_MM2 = NM_PER_MM ** 2

function computeAreas(plan: Plan): PlanAreas {
  if (plan.outline === null) {
    const problem: PlanProblem = {
      code: 'no-outline',
      path: ['outline'],
      atMm: null,
      message: 'the plan has no outline yet',
    }
    return { part: null, areas: [], problems: [problem] }
  }
  const part = makeCheckedRegion(
    edgesOfLoop(pathInNm(plan.outline)),
    plan.cutOuts.map(({ nodes }) => edgesOfLoop(pathInNm(nodes))),
  )
  const split = splitByLines(
    part,
    plan.dividingLines.map(({ nodes }) => pathInNm(nodes)),
  )
  const problems: PlanProblem[] = split.idle.map((line) => ({
    code: 'idle-line',
    path: ['dividingLines', line],
    atMm: plan.dividingLines[line]?.nodes[0]?.atMm ?? null,
    message: `dividing line "${plan.dividingLines[line]?.name}" parts nothing: it does not reach from border to border`,
  }))
  const marks = placeMarks(plan, split, problems)
  const areas = split.pieces.map(({ region, inner, neighbours }, piece): PlanArea => {
    const [mark, second] = marks[piece] ?? []
    const innerMm: PointMm = toMm(inner)
    const own = mark === undefined || second !== undefined ? null : (plan.areas[mark] ?? null)
    if (mark === undefined) {
      problems.push({
        code: 'no-mark',
        path: [],
        atMm: innerMm,
        message: `the area round (${innerMm.join(', ')}) has no mark and no zone`,
      })
    } else if (own !== null && own.zoneId === null) {
      problems.push({
        code: 'no-zone',
        path: ['areas', mark, 'zoneId'],
        atMm: own.markMm,
        message: `area "${own.name}" has no zone`,
      })
    }
    return {
      id: own?.id ?? null,
      name: own?.name ?? null,
      zoneId: own?.zoneId ?? null,
      region,
      areaMm2: region.areaNm2 / NM2_PER_MM2,
      borders: neighbours.map(({ piece: area, line, edges }) => ({
        area,
        lineId: plan.dividingLines[line]?.id ?? '',
        edges,
      })),
      innerMm,
    }
  })
  return { part, areas, problems }
}

/** Which marks lie in each piece, as places in the plan's list. */
function placeMarks(plan: Plan, { pieces }: Split, problems: PlanProblem[]): number[][] {
  const marks = pieces.map((): number[] => [])
  const boxes = pieces.map(({ region }) => boundsOf(region.outer))
  plan.areas.forEach(({ name, markMm }, index) => {
    const mark = toNm(markMm)
    const piece = pieces.findIndex(
      ({ region }, at) => isInBox(boxes[at], mark) && locateInRegion(region, mark) === 'inside',
    )
    const there = marks[piece]
    if (there === undefined) {
      problems.push({
        code: 'mark-outside',
        path: ['areas', index, 'markMm'],
        atMm: markMm,
        message: `the mark of area "${name}" lies outside of the part, or on a border`,
      })
      return
    }
    const [first] = there
    if (first !== undefined) {
      problems.push({
        code: 'two-marks',
        path: ['areas', index, 'markMm'],
        atMm: markMm,
        message: `areas "${plan.areas[first]?.name}" and "${name}" are one: no dividing line runs between their marks`,
      })
    }
    there.push(index)
  })
  return marks
}
