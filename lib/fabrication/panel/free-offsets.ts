import type { Intervals } from '@/lib/geometry'

/**
 * Offsets along a row of parts that repeats at a pitch, in whole micrometres from 0 to the pitch: what other rows block is
 * gathered, and what is left is where the next row may stand.
 */
export class FreeOffsets {
  /** First and last blocked offset, pair by pair, not wrapped. */
  private readonly blocked: [number, number][] = []
  private isFull = false

  constructor(private readonly pitchUm: number) {}

  /** Blocks sign x interval + shift. The ends of the open intervals stay free. */
  block(intervals: Intervals, shift: number, sign: 1 | -1 = 1): void {
    const pitch = this.pitchUm
    for (let index = 0; index + 1 < intervals.length; index += 2) {
      const from = intervals[index] ?? 0
      const to = intervals[index + 1] ?? 0
      const first = (sign === 1 ? from : -to) + shift + 1
      const length = to - from - 1
      if (length <= 0) continue
      if (length >= pitch) {
        this.isFull = true
        return
      }
      const start = ((first % pitch) + pitch) % pitch
      const end = start + length - 1
      if (end < pitch) this.blocked.push([start, end])
      else this.blocked.push([start, pitch - 1], [0, end - pitch])
    }
  }

  /** First and last offset of each free stretch, ascending; empty where nothing is free. */
  getEnds(): number[] {
    if (this.isFull) return []
    this.blocked.sort((a, b) => a[0] - b[0])
    const ends: number[] = []
    let next = 0
    for (const [from, to] of this.blocked) {
      if (from > next) pushBoth(ends, next, from - 1)
      if (to >= next) next = to + 1
    }
    if (next < this.pitchUm) pushBoth(ends, next, this.pitchUm - 1)
    return ends
  }
}

function pushBoth(ends: number[], first: number, last: number): void {
  ends.push(first)
  if (last !== first) ends.push(last)
}

/** Does an offset lie inside one of the intervals, taken round the pitch? */
export function isBlockedAlong(intervals: Intervals, offset: number, pitchUm: number): boolean {
  for (let index = 0; index + 1 < intervals.length; index += 2) {
    const from = intervals[index] ?? 0
    const to = intervals[index + 1] ?? 0
    // The first whole micrometre of the offset's row that lies beyond the left end.
    const next = from + 1 + ((((offset - from - 1) % pitchUm) + pitchUm) % pitchUm)
    if (next < to) return true
  }
  return false
}
