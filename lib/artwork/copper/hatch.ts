import type { CopperEdges } from './edges'
import { describeEdge, lookAcross } from './facing'

/** Bars of a hatched plane, read from the borders of its openings, however those were drawn. */
export interface DrawnHatch {
  readonly barNm: number
  readonly pitchNm: number
  /** Of the nearest family of bars to the x axis of the file, from 0 below 90. */
  readonly turnDeg: number
  /** Openings over all, by bar and pitch of both families. */
  readonly openFraction: number
  /** The border of an opening. */
  readonly at: readonly [xNm: number, yNm: number]
}

/** Wider openings and bars are no hatch. Our choice: hatches for flex have a pitch of 0.4 to 2 mm (common practice, no published source). */
const WIDEST_NM = 3_000_000
/** Shorter pieces of a border say nothing of a direction. */
const LEAST_EDGE_NM = 30_000
/** Borders turned from each other by less are parallel: coordinates in nanometres turn a border of 0.03 mm by far less. */
const PARALLEL_DEG = 1
/** Of the borders between copper that hangs together: more of them run along the two families than this. Our choice. */
const LEAST_IN_FAMILIES = 0.5
/** Of a family: as many have its bar and its opening within 5 %, or 10 um. Our choice. */
const LEAST_ALIKE = 0.6
const ALIKE_FRACTION = 0.05
const ALIKE_NM = 10_000
/** Fewer openings are slots. Our choice. */
const LEAST_OPENINGS = 3
const BINS = 180

interface Border {
  readonly edge: number
  /** Along the border, 0 to 180. */
  readonly deg: number
  readonly lengthNm: number
  readonly barNm: number
  readonly gapNm: number
}

/**
 * Two families of bars at right angles, alike in bar and pitch; null where copper has none. Each border of an opening looks over it to the next bar, and through its own bar to
 * the next opening: figures so hold however many hatches with other origins a layer has, and over the cuts between tiles.
 *
 * @param only  edges that are looked at
 */
export function findHatch(edges: CopperEdges, only: Iterable<number>): DrawnHatch | null {
  const borders = collectBorders(edges, only)
  const whole = lengthOf(borders)
  const turnDeg = findTurn(borders)
  if (turnDeg === null) return null
  const families = [turnDeg, (turnDeg + 90) % 180].map((deg) =>
    borders.filter((border) => awayFrom(border.deg, deg, 180) <= PARALLEL_DEG),
  )
  if (lengthOf(families.flat()) < LEAST_IN_FAMILIES * whole) return null
  const [one, other] = families.map(measureFamily)
  if (one == null || other == null) return null
  if (!isAlike(one.barNm, other.barNm) || !isAlike(one.gapNm, other.gapNm)) return null
  const [barNm, gapNm] = [(one.barNm + other.barNm) / 2, (one.gapNm + other.gapNm) / 2]
  const openings = lengthOf(families.flat()) / (4 * gapNm)
  if (openings < LEAST_OPENINGS) return null
  const { at } = describeEdge(edges, one.edge)
  return {
    barNm,
    pitchNm: barNm + gapNm,
    turnDeg: turnDeg % 90,
    openFraction: (one.gapNm / (one.barNm + one.gapNm)) * (other.gapNm / (other.barNm + other.gapNm)),
    at,
  }
}

/** Borders that face copper of their own island over a gap, and a border of it through their bar. */
function collectBorders(edges: CopperEdges, only: Iterable<number>): Border[] {
  const borders: Border[] = []
  for (const edge of only) {
    const { at, ux, uy, lengthNm } = describeEdge(edges, edge)
    if (lengthNm < LEAST_EDGE_NM) continue
    const facesParallel = (other: number) => {
      const { ux: vx, uy: vy } = describeEdge(edges, other)
      return ux * vx + uy * vy < -COS_PARALLEL
    }
    const over = lookAcross(edges, at, [uy, -ux], WIDEST_NM, edge)
    // Gaps between pieces of copper that do not hang together are spaces between conductors.
    if (over === null || edges.islands[over.edge] !== edges.islands[edge] || !facesParallel(over.edge)) continue
    const through = lookAcross(edges, at, [-uy, ux], WIDEST_NM, edge)
    if (through === null || !facesParallel(through.edge)) continue
    const deg = ((Math.atan2(uy, ux) * 180) / Math.PI + 360) % 180
    borders.push({ edge, deg, lengthNm, barNm: through.distanceNm, gapNm: over.distanceNm })
  }
  return borders
}

const COS_PARALLEL = Math.cos((PARALLEL_DEG * Math.PI) / 180)

/** The direction, below 90, that most of the borders have or are square to. */
function findTurn(borders: readonly Border[]): number | null {
  if (borders.length === 0) return null
  const bins = new Float64Array(BINS)
  const step = 90 / BINS
  for (const { deg, lengthNm } of borders) {
    const bin = Math.floor((deg % 90) / step) % BINS
    bins[bin] = (bins[bin] ?? 0) + lengthNm
  }
  const around = (bin: number) =>
    (bins[(bin + BINS - 1) % BINS] ?? 0) + (bins[bin] ?? 0) + (bins[(bin + 1) % BINS] ?? 0)
  let best = 0
  for (let bin = 1; bin < BINS; bin += 1) if (around(bin) > around(best)) best = bin
  const middle = (best + 0.5) * step
  let [sum, weight] = [0, 0]
  for (const { deg, lengthNm } of borders) {
    const off = ((((deg - middle) % 90) + 135) % 90) - 45
    if (Math.abs(off) > PARALLEL_DEG) continue
    sum += off * lengthNm
    weight += lengthNm
  }
  const turn = (((middle + sum / weight) % 90) + 90) % 90
  // Rounding may leave 89.9999 for 0.
  return awayFrom(turn, 0, 90) < 1e-3 ? 0 : turn
}

/** Bar and opening of a family; null where too few of its borders have the same. */
function measureFamily(borders: readonly Border[]): { barNm: number; gapNm: number; edge: number } | null {
  const [first] = borders
  if (first === undefined) return null
  const barNm = middleOf(borders, ({ barNm: nm }) => nm)
  const gapNm = middleOf(borders, ({ gapNm: nm }) => nm)
  const alike = borders.filter((border) => isAlike(border.barNm, barNm) && isAlike(border.gapNm, gapNm))
  if (lengthOf(alike) < LEAST_ALIKE * lengthOf(borders)) return null
  return { barNm, gapNm, edge: (alike[0] ?? first).edge }
}

/** The median, by length of border. */
function middleOf(borders: readonly Border[], read: (border: Border) => number): number {
  const sorted = [...borders].sort((one, other) => read(one) - read(other))
  let left = lengthOf(sorted) / 2
  for (const border of sorted) {
    left -= border.lengthNm
    if (left <= 0) return read(border)
  }
  return 0
}

const lengthOf = (borders: readonly Border[]): number => borders.reduce((sum, { lengthNm }) => sum + lengthNm, 0)

const isAlike = (one: number, other: number): boolean =>
  Math.abs(one - other) <= Math.max(ALIKE_NM, ALIKE_FRACTION * Math.max(one, other))

/** Of two directions, the least turn from one to the other within a period. */
function awayFrom(one: number, other: number, periodDeg: number): number {
  const off = (((one - other) % periodDeg) + periodDeg) % periodDeg
  return Math.min(off, periodDeg - off)
}
