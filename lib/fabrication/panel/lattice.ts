import type { NoFit } from '@/lib/geometry'
import { isBlockedAlong } from './free-offsets'

/**
 * A double lattice along one side of the panel: parts repeat along a row at `pitchUm`; each next row of the same kind lies
 * `stepUm` higher and `shiftUm` along. Between them lie rows of the part turned by half, `turned` from the part; null is a
 * plain lattice. All places are those of the lower left corner of the bounds.
 */
export interface Lattice {
  readonly pitchUm: number
  readonly stepUm: number
  readonly shiftUm: number
  readonly turned: { readonly dx: number; readonly dy: number } | null
}

/** Where two parts may not stand: alike ones, and the turned one beside the part. */
export interface PairRules {
  readonly alike: NoFit
  readonly turned: NoFit | null
}

/** Room for the lower left corner of a part's bounds. */
export interface Room {
  readonly widthUm: number
  readonly heightUm: number
}

/** One row, clipped to the room. */
export interface Row {
  readonly xUm: number
  readonly yUm: number
  readonly pitchUm: number
  readonly count: number
  readonly isTurned: boolean
}

/** Room taken by each part of an endless lattice, in square micrometres. */
export function getAreaPerPart({ pitchUm, stepUm, turned }: Lattice): number {
  return (pitchUm * stepUm) / (turned === null ? 1 : 2)
}

/** Rows that stand at a pitch: does the part keep clear of those beside it? */
export function isPitchFree({ alike }: PairRules, pitchUm: number): boolean {
  const blocked = alike.getBlockedAt(0)
  for (let index = 0; index + 1 < blocked.length; index += 2) {
    const from = blocked[index] ?? 0
    const to = blocked[index + 1] ?? 0
    const multiple = Math.max(pitchUm, (Math.floor(from / pitchUm) + 1) * pitchUm)
    if (multiple > from && multiple < to) return false
  }
  return true
}

/** Every two parts of the endless lattice keep their clearance. */
export function isLatticeFree(rules: PairRules, { pitchUm, stepUm, shiftUm, turned }: Lattice): boolean {
  if (!isPitchFree(rules, pitchUm)) return false
  const { alike } = rules
  for (let row = 1; row * stepUm < alike.maxY; row += 1) {
    if (isBlockedAlong(alike.getBlockedAt(row * stepUm), row * shiftUm, pitchUm)) return false
  }
  if (turned === null || rules.turned === null) return turned === null
  const first = Math.ceil((rules.turned.minY - turned.dy) / stepUm)
  const last = Math.floor((rules.turned.maxY - turned.dy) / stepUm)
  for (let row = first; row <= last; row += 1) {
    const blocked = rules.turned.getBlockedAt(turned.dy + row * stepUm)
    if (isBlockedAlong(blocked, turned.dx + row * shiftUm, pitchUm)) return false
  }
  return true
}

/** Most parts that a lattice can leave in the room, without looking at where its rows fall. */
export function getCountBound({ pitchUm, stepUm, turned }: Lattice, room: Room): number {
  const rows = Math.floor(room.heightUm / stepUm) + 1
  return (Math.floor(room.widthUm / pitchUm) + 1) * rows * (turned === null ? 1 : 2)
}

/** More rows than these are not tried as the one that stands flush at the left. */
const MAX_FLUSH_ROWS = 24

/**
 * Clips a lattice to a room. The lowest row stands flush at the bottom and one row flush at the left: which ones is tried,
 * and the first way that holds most parts is taken.
 *
 * @param leastCount  ways that hold no more than this are of no interest: then the result is empty
 */
export function clipLattice(lattice: Lattice, room: Room, leastCount = 0): Row[] {
  const { pitchUm, turned } = lattice
  if (room.widthUm < 0 || room.heightUm < 0) return []
  let best: { rows: readonly Offset[]; start: number } | null = null
  let bestCount = leastCount
  for (const phase of turned === null ? [0] : [0, 1]) {
    const offsets = listOffsets(lattice, room, phase === 1)
    if (offsets.length * (Math.floor(room.widthUm / pitchUm) + 1) <= bestCount) continue
    const tried = new Set<number>()
    for (const { along } of offsets) {
      const start = modulo(-along, pitchUm)
      if (tried.has(start) || tried.size >= MAX_FLUSH_ROWS) continue
      tried.add(start)
      let count = 0
      for (const offset of offsets) count += countInRow(modulo(start + offset.along, pitchUm), pitchUm, room.widthUm)
      if (count > bestCount) {
        best = { rows: offsets, start }
        bestCount = count
      }
    }
  }
  if (best === null) return []
  const { rows, start } = best
  return rows.flatMap(({ along, yUm, isTurned }) => {
    const xUm = modulo(start + along, pitchUm)
    const count = countInRow(xUm, pitchUm, room.widthUm)
    return count === 0 ? [] : [{ xUm, yUm, pitchUm, count, isTurned }]
  })
}

export function countRows(rows: readonly Row[]): number {
  return rows.reduce((sum, { count }) => sum + count, 0)
}

interface Offset {
  readonly along: number
  readonly yUm: number
  readonly isTurned: boolean
}

function listOffsets({ stepUm, shiftUm, turned }: Lattice, room: Room, beginsTurned: boolean): Offset[] {
  const offsets: Offset[] = []
  const baseY = beginsTurned && turned !== null ? -turned.dy : 0
  const firstRow = -Math.ceil(Math.abs(turned?.dy ?? 0) / stepUm) - 1
  for (let row = firstRow; ; row += 1) {
    const yUm = baseY + row * stepUm
    if (yUm > room.heightUm && yUm + (turned?.dy ?? 0) > room.heightUm) break
    if (yUm >= 0 && yUm <= room.heightUm) offsets.push({ along: row * shiftUm, yUm, isTurned: false })
    if (turned === null) continue
    const turnedY = yUm + turned.dy
    if (turnedY >= 0 && turnedY <= room.heightUm) {
      offsets.push({ along: row * shiftUm + turned.dx, yUm: turnedY, isTurned: true })
    }
  }
  return offsets
}

function countInRow(startUm: number, pitchUm: number, widthUm: number): number {
  return startUm > widthUm ? 0 : Math.floor((widthUm - startUm) / pitchUm) + 1
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by
}
