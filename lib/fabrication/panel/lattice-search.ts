import { at, type Intervals } from '@/lib/geometry'
import { FreeOffsets } from './free-offsets'
import {
  clipLattice,
  countRows,
  getAreaPerPart,
  getCountBound,
  isLatticeFree,
  isPitchFree,
  type Lattice,
  type PairRules,
  type Room,
  type Row,
} from './lattice'

/** What is nested: one part in one position, and its turn by half where that is allowed. */
export interface SearchTask {
  readonly rules: PairRules
  readonly room: Room
  readonly partWidthUm: number
  readonly partHeightUm: number
  readonly areaUm2: number
  readonly spacingUm: number
  /** Heights at which two corners of the shapes come level: the ones worth trying for outlines with few corners. */
  readonly corners: { readonly alike: readonly number[]; readonly turned: readonly number[] }
}

export interface Found {
  readonly lattice: Lattice
  readonly rows: readonly Row[]
  readonly count: number
}

/** Heights are tried on a grid of this many steps over the height of the part. */
const HEIGHT_STEPS = 36
/** With more heights of corners than this the grid alone is tried. */
const MAX_CORNER_HEIGHTS = 28
const MAX_PITCHES = 36
/** Questions to the no-fit polygons in one search: a bound on work that no clock is needed for. */
const MAX_QUESTIONS = 40_000
/** Lattices that take more room per part than this times the densest are not followed up. */
const SLACK_RATIO = 1.35
const KEPT_LATTICES = 12
/** Lattices whose heights are then sought exactly. */
const REFINED_LATTICES = 4

/**
 * Dense double lattices of a part, each clipped to the room; best first. The row's pitch, the place of the turned row and
 * the place of the next row are all taken on the rim of the no-fit polygons (where parts touch, or keep exactly the
 * clearance), as in the densest lattices they lie there. Heights come from corners that come level, or from a grid and then
 * by bisection.
 *
 * Model    double lattice with one generator along the panel's side (Kuperberg and Kuperberg 1990 for convex shapes)
 * @returns at most KEPT_LATTICES lattices that hold a part; the same ones on every machine
 */
export function searchLattices(task: SearchTask): Found[] {
  const search = new Search(task)
  search.run()
  return search.getFound()
}

class Search {
  private questions = 0
  private densest = Infinity
  private kept: Found[] = []
  private readonly heights: { readonly alike: readonly number[]; readonly turned: readonly number[] }
  private readonly gridUm: number

  constructor(private readonly task: SearchTask) {
    const reachUm = task.partHeightUm + task.spacingUm
    this.gridUm = Math.max(1, Math.ceil(reachUm / HEIGHT_STEPS))
    const grid = Array.from({ length: HEIGHT_STEPS + 1 }, (_, step) => Math.min(step * this.gridUm, reachUm))
    const withCorners = (corners: readonly number[]) => {
      const upwards = sortedUnique(corners.filter((height) => height >= 0 && height <= reachUm))
      return upwards.length > MAX_CORNER_HEIGHTS ? grid : sortedUnique([...upwards, ...thin(grid, 12)])
    }
    this.heights = { alike: withCorners(task.corners.alike), turned: withCorners(task.corners.turned) }
  }

  run(): void {
    const pitches = this.listPitches()
    for (const pitchUm of pitches) this.tryPlain(pitchUm)
    if (this.task.rules.turned !== null) for (const pitchUm of pitches) this.tryDouble(pitchUm)
    for (const found of this.kept.slice(0, REFINED_LATTICES)) this.refine(found.lattice)
  }

  getFound(): Found[] {
    return this.kept
  }

  /** Pitches at which something just fits: between parts, beside the turned one, or so that one more stands in the row. */
  private listPitches(): number[] {
    const { rules, room, partWidthUm, spacingUm } = this.task
    const longest = 2 * (partWidthUm + spacingUm)
    const fitting: number[] = []
    const addWidths = (intervals: Intervals) => {
      for (let one = 0; one < intervals.length; one += 2) {
        for (let other = 1; other < intervals.length; other += 2)
          fitting.push(at(intervals, other) - at(intervals, one))
      }
    }
    const flat = rules.alike.getBlockedAt(0)
    for (let index = 1; index < flat.length; index += 2) fitting.push(at(flat, index))
    for (const height of this.heights.alike) addWidths(rules.alike.getBlockedAt(height))
    for (const height of this.heights.turned) {
      if (rules.turned !== null) addWidths(rules.turned.getBlockedAt(height))
    }
    const usable = sortedUnique(fitting.filter((pitch) => pitch > 0 && pitch <= longest && isPitchFree(rules, pitch)))
    const whole: number[] = []
    for (let count = 2; count <= 40; count += 1) {
      const pitch = Math.floor(room.widthUm / (count - 1))
      if (pitch > 0 && pitch <= longest && isPitchFree(rules, pitch)) whole.push(pitch)
    }
    return sortedUnique([...thin(usable, MAX_PITCHES), ...thin(whole, MAX_PITCHES / 3)])
  }

  private tryPlain(pitchUm: number): void {
    const { alike } = this.task.rules
    for (const stepUm of this.listSteps(pitchUm, 1, this.heights.alike)) {
      if (this.isSpent()) return
      const free = new FreeOffsets(pitchUm)
      free.block(alike.getBlockedAt(stepUm), 0)
      const ends = free.getEnds()
      if (this.offer(ends, (shiftUm) => ({ pitchUm, stepUm, shiftUm, turned: null }))) return
    }
  }

  private tryDouble(pitchUm: number): void {
    const { turned } = this.task.rules
    if (turned === null) return
    for (const dy of this.heights.turned) {
      const beside = new FreeOffsets(pitchUm)
      beside.block(turned.getBlockedAt(dy), 0)
      for (const dx of thin(beside.getEnds(), 4)) this.tryNextRow(pitchUm, dx, dy)
    }
  }

  /** Lowest next row for a pitch and a turned row. */
  private tryNextRow(pitchUm: number, dx: number, dy: number): void {
    const heights = [...this.heights.alike, ...this.heights.turned.map((height) => height + dy)]
    for (const stepUm of this.listSteps(pitchUm, 2, heights)) {
      if (stepUm < dy) continue
      if (this.isSpent()) return
      const ends = this.getNextEnds(pitchUm, dx, dy, stepUm)
      if (this.offer(ends, (shiftUm) => ({ pitchUm, stepUm, shiftUm, turned: { dx, dy } }))) return
    }
  }

  private getNextEnds(pitchUm: number, dx: number, dy: number, stepUm: number): number[] {
    const { alike, turned } = this.task.rules
    this.questions += 1
    const free = new FreeOffsets(pitchUm)
    free.block(alike.getBlockedAt(stepUm), 0)
    if (turned !== null) {
      // The next row's turned part above this part, and this row's turned part below the next part.
      free.block(turned.getBlockedAt(dy + stepUm), -dx)
      free.block(turned.getBlockedAt(dy - stepUm), dx, -1)
    }
    return free.getEnds()
  }

  /** Steps from the least that the area allows, lowest first, while they may still be of use. */
  private listSteps(pitchUm: number, partsPerCell: number, heights: readonly number[]): number[] {
    const { areaUm2, partHeightUm, spacingUm } = this.task
    const least = Math.max(1, Math.floor((partsPerCell * areaUm2) / pitchUm))
    const most = partsPerCell * (partHeightUm + spacingUm)
    return sortedUnique([...heights, most].filter((height) => height >= least && height <= most))
  }

  /** Takes in the free ones; says whether one was free. */
  private offer(ends: readonly number[], makeLattice: (shiftUm: number) => Lattice): boolean {
    let isFree = false
    for (const shiftUm of thin(ends, 4)) {
      const lattice = makeLattice(shiftUm)
      const area = getAreaPerPart(lattice)
      if (area > this.densest * SLACK_RATIO) return true
      if (!isLatticeFree(this.task.rules, lattice)) continue
      isFree = true
      this.densest = Math.min(this.densest, area)
      this.keep(lattice)
    }
    return isFree
  }

  private keep(lattice: Lattice): void {
    const { room } = this.task
    const worst = this.kept.length < KEPT_LATTICES ? 0 : (this.kept.at(-1)?.count ?? 0)
    if (getCountBound(lattice, room) < worst) return
    const rows = clipLattice(lattice, room)
    const count = countRows(rows)
    if (count === 0) return
    const isKnown = this.kept.some(
      (found) => found.count === count && getAreaPerPart(found.lattice) === getAreaPerPart(lattice),
    )
    if (isKnown) return
    this.kept.push({ lattice, rows, count })
    this.kept.sort(
      (one, other) => other.count - one.count || getAreaPerPart(one.lattice) - getAreaPerPart(other.lattice),
    )
    this.kept.length = Math.min(this.kept.length, KEPT_LATTICES)
  }

  /** Lowers the step by bisection, and the turned row with it, down to a few micrometres. */
  private refine(lattice: Lattice): void {
    let best = this.lower(lattice)
    for (let moveUm = this.gridUm >> 1; moveUm >= 16 && best.turned !== null; moveUm >>= 1) {
      for (const move of [moveUm, -moveUm]) {
        const { turned } = best
        if (turned === null || turned.dy + move < 0) continue
        const beside = new FreeOffsets(best.pitchUm)
        beside.block(this.task.rules.turned?.getBlockedAt(turned.dy + move) ?? [], 0)
        const dx = findNearest(beside.getEnds(), turned.dx)
        if (dx === null) continue
        const moved = this.lower({ ...best, turned: { dx, dy: turned.dy + move } })
        if (moved.stepUm < best.stepUm) best = moved
      }
    }
    if (isLatticeFree(this.task.rules, best)) this.keep(best)
  }

  private lower(lattice: Lattice): Lattice {
    let best = lattice
    let tooLow = Math.max(1, lattice.stepUm - 2 * this.gridUm)
    let freeUm = lattice.stepUm
    while (freeUm - tooLow > 4) {
      const stepUm = (freeUm + tooLow) >> 1
      const { pitchUm, turned } = lattice
      const ends =
        turned === null ? this.getPlainEnds(pitchUm, stepUm) : this.getNextEnds(pitchUm, turned.dx, turned.dy, stepUm)
      const found = ends
        .map((shiftUm) => ({ ...lattice, stepUm, shiftUm }))
        .find((each) => isLatticeFree(this.task.rules, each))
      if (found === undefined) tooLow = stepUm
      else {
        best = found
        freeUm = stepUm
      }
    }
    return best
  }

  private getPlainEnds(pitchUm: number, stepUm: number): number[] {
    const free = new FreeOffsets(pitchUm)
    free.block(this.task.rules.alike.getBlockedAt(stepUm), 0)
    return free.getEnds()
  }

  private isSpent(): boolean {
    this.questions += 1
    return this.questions > MAX_QUESTIONS
  }
}

function sortedUnique(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b)
}

/** At most so many, evenly taken, with the first and the last. */
function thin(values: readonly number[], most: number): number[] {
  if (values.length <= most) return [...values]
  return Array.from({ length: most }, (_, index) => at(values, Math.round((index * (values.length - 1)) / (most - 1))))
}

function findNearest(values: readonly number[], wanted: number): number | null {
  let best: number | null = null
  for (const value of values) if (best === null || Math.abs(value - wanted) < Math.abs(best - wanted)) best = value
  return best
}
