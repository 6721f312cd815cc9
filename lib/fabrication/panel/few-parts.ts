import {
  coverByConvex,
  getAreaUm2,
  getBounds,
  makeNoFit,
  type NoFit,
  type Polygon,
  type QuarterTurnDeg,
} from '@/lib/geometry'
import type { OutlineTask } from './nest-outline'
import { type Placement, turnPart } from './placement'

/** Where a panel holds only so many, a lattice has no room to repeat, and each part is placed by itself. */
const MOST_FEW_PARTS = 6
/** Of an outline, so that positions stay few enough to be gone through. */
const MAX_CORNERS = 12
/** Lines that are cut through no-fit polygons in one search. A bound on work, the same on every machine: some tenths of a second. */
const MAX_CUTS = 12_000
/** As in the search for lattices. */
const COVER = { maxPieces: 12, allowedExcessFraction: 0.002 }

export interface FewPlacements {
  /** From the lower left corner of the usable area. */
  readonly placements: readonly Placement[]
  /** As of `OutlineNesting`. */
  readonly excessFraction: number
}

interface Turn {
  readonly deg: QuarterTurnDeg
  readonly widthUm: number
  readonly heightUm: number
  readonly pieces: readonly Polygon[]
  /** Heights of its corners. */
  readonly levels: readonly number[]
  readonly excessFraction: number
}

interface Placed {
  readonly turn: number
  readonly xUm: number
  readonly yUm: number
}

/**
 * More parts than `leastCount`, each in its own place and turn: positions in which a part touches a side of the panel or corners of parts that
 * lie there, gone through in depth from the lower left. For panels that hold a few large parts.
 *
 * @returns the placements, or null where none was found; that there is no such arrangement is not said
 */
export function placeFewParts(task: OutlineTask, leastCount: number): FewPlacements | null {
  const areaBound = Math.floor((task.usableWidthUm * task.usableHeightUm) / getAreaUm2(task.outline))
  const corners = task.outline.length
  if (leastCount >= MOST_FEW_PARTS || areaBound <= leastCount || corners > MAX_CORNERS) return null
  const search = new FewParts(task)
  let best: readonly Placed[] | null = null
  for (let wanted = leastCount + 1; wanted <= Math.min(areaBound, MOST_FEW_PARTS); wanted += 1) {
    const found = search.find(wanted)
    if (found === null) break
    best = found
  }
  return best === null
    ? null
    : {
        placements: best.map(({ turn, xUm, yUm }) => ({ xUm, yUm, rotationDeg: search.turns[turn]?.deg ?? 0 })),
        excessFraction: Math.max(...search.turns.map(({ excessFraction }) => excessFraction)),
      }
}

class FewParts {
  readonly turns: readonly Turn[]
  private readonly noFits = new Map<string, NoFit>()
  private cuts = 0

  constructor(private readonly task: OutlineTask) {
    this.turns = task.turnsDeg.map((deg) => makeTurn(task.outline, deg))
  }

  find(wanted: number): readonly Placed[] | null {
    return this.extend([], wanted)
  }

  private extend(placed: readonly Placed[], wanted: number): readonly Placed[] | null {
    if (placed.length === wanted) return placed
    for (const next of this.listPositions(placed)) {
      if (this.cuts > MAX_CUTS) return null
      const done = this.extend([...placed, next], wanted)
      if (done !== null) return done
    }
    return null
  }

  /** Free positions from below, then from the left; of what lies in one order only: parts may be counted in any. */
  private listPositions(placed: readonly Placed[]): Placed[] {
    const last = placed.at(-1)
    return this.turns
      .flatMap((_, turn) => this.listHeights(placed, turn).flatMap((yUm) => this.listFree(placed, turn, yUm)))
      .filter((next) => last === undefined || isAfter(next, last))
      .sort((a, b) => a.yUm - b.yUm || a.xUm - b.xUm || a.turn - b.turn)
  }

  private listHeights(placed: readonly Placed[], turn: number): number[] {
    const own = this.turns[turn]
    if (own === undefined) return []
    const roomUm = this.task.usableHeightUm - own.heightUm
    if (roomUm < 0 || own.widthUm > this.task.usableWidthUm) return []
    const heights = new Set(placed.length === 0 ? [0] : [0, roomUm])
    for (const each of placed) {
      for (const there of this.turns[each.turn]?.levels ?? []) {
        for (const here of own.levels) {
          const touching = each.yUm + there - here
          for (const yUm of [touching - this.task.spacingUm, touching + this.task.spacingUm])
            if (yUm >= 0 && yUm <= roomUm) heights.add(yUm)
        }
      }
    }
    return [...heights]
  }

  /** The ends of what is free along a line: there a part touches a side or another part. */
  private listFree(placed: readonly Placed[], turn: number, yUm: number): Placed[] {
    const roomUm = this.task.usableWidthUm - (this.turns[turn]?.widthUm ?? 0)
    this.cuts += placed.length
    const blocked = placed.flatMap((each): [number, number][] => {
      const intervals = this.getNoFit(each.turn, turn).getBlockedAt(yUm - each.yUm)
      return Array.from({ length: intervals.length / 2 }, (_, at) => [
        each.xUm + (intervals[2 * at] ?? 0),
        each.xUm + (intervals[2 * at + 1] ?? 0),
      ])
    })
    const ends = [0, roomUm, ...blocked.flatMap(([from, to]) => [Math.floor(from), Math.ceil(to)])]
    const isFree = (xUm: number) => xUm >= 0 && xUm <= roomUm && blocked.every(([from, to]) => xUm <= from || xUm >= to)
    return [...new Set(ends)].filter(isFree).map((xUm) => ({ turn, xUm, yUm }))
  }

  private getNoFit(fixed: number, moving: number): NoFit {
    const key = `${fixed} ${moving}`
    const known = this.noFits.get(key)
    if (known !== undefined) return known
    const made = makeNoFit(this.turns[fixed]?.pieces ?? [], this.turns[moving]?.pieces ?? [], this.task.spacingUm)
    this.noFits.set(key, made)
    return made
  }
}

const isAfter = (next: Placed, last: Placed): boolean =>
  next.yUm > last.yUm || (next.yUm === last.yUm && next.xUm > last.xUm)

function makeTurn(outline: Polygon, deg: QuarterTurnDeg): Turn {
  const { outline: turned, widthUm, heightUm } = turnPart(outline, deg)
  const cover = coverByConvex(turned, COVER)
  // Joined pieces may reach beyond the outline's bounds by nothing: hulls of what lies within them stay within.
  const { minY } = getBounds(turned)
  return {
    deg,
    widthUm,
    heightUm,
    pieces: cover.pieces,
    excessFraction: cover.excessFraction,
    levels: [...new Set(turned.map(([, y]) => y - minY))],
  }
}
