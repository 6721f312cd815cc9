import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { locatePoint, makeArc, makeLine, type PointNm, sideOfLine } from '@/lib/geometry'

const point = fc.tuple(fc.integer({ min: -5e9, max: 5e9 }), fc.integer({ min: -5e9, max: 5e9 }))

describe('sides', () => {
  it('left is left with y up', () => {
    expect(sideOfLine([0, 0], [1, 0], [0, 1])).toBe(1)
    expect(sideOfLine([0, 0], [1, 0], [0, -1])).toBe(-1)
    expect(sideOfLine([0, 0], [1, 0], [7, 0])).toBe(0)
  })

  it('are exact: the determinant in whole numbers of any size says the same', () => {
    fc.assert(
      fc.property(point, point, point, (a, b, c) => {
        const big = ([x, y]: readonly [number, number]) => [BigInt(x), BigInt(y)] as const
        const [[ax, ay], [bx, by], [cx, cy]] = [big(a), big(b), big(c)]
        const exact = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
        expect(sideOfLine(a, b, c)).toBe(exact > 0n ? 1 : exact < 0n ? -1 : 0)
      }),
    )
  })

  it('notice one nanometre at the ends of five metres', () => {
    const far: PointNm = [5_000_000_000, 4_999_999_999]
    const middle: PointNm = [1, 1]
    expect(sideOfLine([-4_999_999_999, -4_999_999_999], far, middle)).toBe(1)
  })

  it('of a circle are the same in whichever order its three points come', () => {
    // The circle through (±5, 0) and (0, 5), in µm; 3-4-5 lies on it.
    const um = (x: number, y: number): PointNm => [x * 1000, y * 1000]
    for (const [from, through, to] of [
      [um(5, 0), um(0, 5), um(-5, 0)],
      [um(-5, 0), um(0, 5), um(5, 0)],
    ] as const) {
      const arc = makeArc(from, through, to)
      if (arc === null) throw new Error('no arc')
      const edges = [arc, makeLine(to, from)]
      expect(locatePoint(edges, um(3, 4))).toBe('on')
      expect(locatePoint(edges, [3000, 4001])).toBe('outside')
      expect(locatePoint(edges, [3000, 3999])).toBe('inside')
      expect(locatePoint(edges, [3000, 0])).toBe('on')
      expect(locatePoint(edges, [3000, -1])).toBe('outside')
    }
  })
})
