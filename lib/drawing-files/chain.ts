import type { Piece, Point } from './curves'
import type { Stroke } from './drawing'

/** Strokes end to end: a closed way, or one that is left open, with the file's lines that it came from. */
export interface Chain {
  readonly pieces: readonly Piece[]
  readonly isClosed: boolean
  readonly lines: readonly (number | null)[]
  /** The widest gap that was closed in it, mm. */
  readonly widestGapMm: number
}

export interface Chained {
  readonly chains: readonly Chain[]
  /** Pieces that lay on another one, there or back, and were dropped. */
  readonly doubles: number
}

interface Loose {
  readonly pieces: readonly Piece[]
  readonly line: number | null
  isUsed: boolean
}

/**
 * Joins strokes whose ends lie within `matchMm` of each other. Where several ends meet the nearest is taken, then the first of the file; that
 * a gap was closed is told by its width. Ways that close by themselves are not cut up.
 */
export function chainStrokes(strokes: readonly Stroke[], matchMm: number): Chained {
  const { kept, doubles } = dropDoubles(strokes, matchMm)
  const chains: Chain[] = []
  const loose: Loose[] = []
  for (const { pieces, line } of kept) {
    const [first, last] = [pieces[0], pieces.at(-1)]
    if (first === undefined || last === undefined) continue
    const gap = distance(first.from, last.to)
    const isLoop = pieces.length > 1 && gap <= matchMm
    if (isLoop) chains.push({ pieces: closeGap(pieces), isClosed: true, lines: [line], widestGapMm: gap })
    else loose.push({ pieces, line, isUsed: false })
  }
  const ends = new EndIndex(loose, matchMm)
  for (const start of loose) {
    if (start.isUsed) continue
    start.isUsed = true
    chains.push(grow(start, ends, matchMm))
  }
  return { chains, doubles }
}

function grow(start: Loose, ends: EndIndex, matchMm: number): Chain {
  let pieces = [...start.pieces]
  const lines = [start.line]
  let widest = 0
  for (const direction of ['on', 'back'] as const) {
    while (true) {
      const [first, last] = [pieces[0], pieces.at(-1)]
      if (first === undefined || last === undefined) break
      const gap = distance(first.from, last.to)
      const next = ends.nearest(last.to)
      if (lines.length > 1 && gap <= matchMm && (next === null || gap <= next.gap)) {
        return { pieces: closeGap(pieces), isClosed: true, lines, widestGapMm: Math.max(widest, gap) }
      }
      if (next === null) break
      next.loose.isUsed = true
      widest = Math.max(widest, next.gap)
      lines.push(next.loose.line)
      const following = next.isReversed ? reverse(next.loose.pieces) : [...next.loose.pieces]
      const [head, ...rest] = following
      if (head !== undefined) pieces.push({ ...head, from: last.to })
      for (const piece of rest) pieces.push(piece)
    }
    if (direction === 'on') pieces = reverse(pieces)
  }
  return { pieces: reverse(pieces), isClosed: false, lines, widestGapMm: widest }
}

/** The last way ends where the first begins. */
function closeGap(pieces: readonly Piece[]): Piece[] {
  const start = pieces[0]?.from
  return pieces.map((piece, at) => (at === pieces.length - 1 && start !== undefined ? { ...piece, to: start } : piece))
}

const reverse = (pieces: readonly Piece[]): Piece[] =>
  pieces.map(({ from, via, to }) => ({ from: to, via, to: from })).reverse()

export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Ends in one cell that are compared: a file made to be slow puts all of them in one place. */
const MAX_CANDIDATES = 500

/** Loose ends by the cell of a grid that they lie in, as wide as the distance that matches. */
class EndIndex {
  private readonly cells = new Map<string, { loose: Loose; isEnd: boolean; at: Point }[]>()
  private readonly size: number

  constructor(
    loose: readonly Loose[],
    private readonly matchMm: number,
  ) {
    this.size = Math.max(matchMm, 1e-6)
    for (const one of loose) {
      const [first, last] = [one.pieces[0], one.pieces.at(-1)]
      if (first === undefined || last === undefined) continue
      this.put(first.from, one, false)
      this.put(last.to, one, true)
    }
  }

  private put(at: Point, loose: Loose, isEnd: boolean): void {
    const key = this.keyOf(Math.floor(at[0] / this.size), Math.floor(at[1] / this.size))
    const cell = this.cells.get(key)
    if (cell === undefined) this.cells.set(key, [{ loose, isEnd, at }])
    else cell.push({ loose, isEnd, at })
  }

  private keyOf = (x: number, y: number) => `${x} ${y}`

  nearest(point: Point): { loose: Loose; isReversed: boolean; gap: number } | null {
    const [x, y] = [Math.floor(point[0] / this.size), Math.floor(point[1] / this.size)]
    let best: { loose: Loose; isReversed: boolean; gap: number } | null = null
    for (const dx of [-1, 0, 1]) {
      for (const dy of [-1, 0, 1]) {
        const key = this.keyOf(x + dx, y + dy)
        const cell = this.cells.get(key)
        if (cell === undefined) continue
        for (let at = 0; at < cell.length && at < MAX_CANDIDATES; at += 1) {
          // Used ends are taken out as they are met.
          while (cell[at]?.loose.isUsed === true) {
            const last = cell.pop()
            if (last !== undefined && at < cell.length) cell[at] = last
          }
          const end = cell[at]
          if (end === undefined) break
          const gap = distance(point, end.at)
          if (gap <= this.matchMm && (best === null || gap < best.gap)) {
            best = { loose: end.loose, isReversed: end.isEnd, gap }
            if (gap === 0) return best
          }
        }
      }
    }
    return best
  }
}

/** Drawn twice, there or back, within the distance that matches: one of them is enough. */
function dropDoubles(
  strokes: readonly Stroke[],
  matchMm: number,
): { readonly kept: readonly Stroke[]; readonly doubles: number } {
  const cell = Math.max(matchMm, 1e-6)
  const seen = new Map<string, Piece[]>()
  let doubles = 0
  const kept = strokes.filter(({ pieces }) => {
    const [only, second] = pieces
    if (only === undefined || second !== undefined) return true
    const [x, y] = [(only.from[0] + only.to[0]) / 2, (only.from[1] + only.to[1]) / 2]
    const [cx, cy] = [Math.floor(x / cell), Math.floor(y / cell)]
    for (const dx of [-1, 0, 1]) {
      for (const dy of [-1, 0, 1]) {
        if (seen.get(`${cx + dx} ${cy + dy}`)?.some((other) => isSamePiece(only, other, matchMm)) === true) {
          doubles += 1
          return false
        }
      }
    }
    const key = `${cx} ${cy}`
    const there = seen.get(key)
    if (there === undefined) seen.set(key, [only])
    else if (there.length < MAX_IN_CELL) there.push(only)
    return true
  })
  return { kept, doubles }
}

/** Pieces with one middle that are compared with each other: a file made to be slow has thousands. */
const MAX_IN_CELL = 64

function isSamePiece(a: Piece, b: Piece, matchMm: number): boolean {
  const near = (p: Point | null, q: Point | null) => (p === null || q === null ? p === q : distance(p, q) <= matchMm)
  if (!near(a.via, b.via)) return false
  return (near(a.from, b.from) && near(a.to, b.to)) || (near(a.from, b.to) && near(a.to, b.from))
}
