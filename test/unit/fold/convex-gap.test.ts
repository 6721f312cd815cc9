import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Corners, measureGap } from '@/lib/fold/clash/convex-gap'
import type { Vector } from '@/lib/fold/kinematics/vector'

const box = ([x, y, z]: Vector, [dx, dy, dz]: Vector): Corners =>
  [0, 1].flatMap((i) => [0, 1].flatMap((j) => [0, 1].map((k): Vector => [x + i * dx, y + j * dy, z + k * dz])))

const turn = (corners: Corners, a: number, b: number): Corners =>
  corners.map(([x, y, z]) => {
    const [u, v] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
    return [u, v * Math.cos(b) - z * Math.sin(b), v * Math.sin(b) + z * Math.cos(b)]
  })

const size = fc.double({ min: 0.001, max: 20, noNaN: true })
const place = fc.double({ min: -30, max: 30, noNaN: true })
const angle = fc.double({ min: -4, max: 4, noNaN: true })

describe('distance of convex bodies', () => {
  it('boxes along the axes: closed form, also turned in space', () => {
    fc.assert(
      fc.property(
        fc.tuple(place, place, place),
        fc.tuple(size, size, size),
        fc.tuple(place, place, place),
        fc.tuple(size, size, size),
        angle,
        angle,
        (p, s, q, t, a, b) => {
          const apart = [0, 1, 2].map((axis) =>
            Math.max(
              0,
              (q[axis as 0] ?? 0) - (p[axis as 0] ?? 0) - (s[axis as 0] ?? 0),
              (p[axis as 0] ?? 0) - (q[axis as 0] ?? 0) - (t[axis as 0] ?? 0),
            ),
          )
          const wanted = Math.hypot(...apart)
          for (const [first, second] of [
            [box(p, s), box(q, t)],
            [turn(box(p, s), a, b), turn(box(q, t), a, b)],
          ] as const) {
            const gap = measureGap(first, second)
            expect(gap.lowerMm).toBeLessThanOrEqual(wanted + 1e-7)
            expect(gap.upperMm).toBeGreaterThanOrEqual(wanted - 1e-7)
            expect(gap.upperMm - gap.lowerMm).toBeLessThan(1e-6)
          }
        },
      ),
      { numRuns: 500 },
    )
  })

  it('parallel sheets, a point inside, corners that touch, a body of one point', () => {
    expect(measureGap(box([0, 0, 0], [96, 16, 0.1]), box([3, 2, 0.35], [80, 9, 0.1])).upperMm).toBeCloseTo(0.25, 9)
    expect(measureGap(box([0, 0, 0], [10, 10, 10]), [[5, 5, 5]]).upperMm).toBe(0)
    expect(measureGap(box([0, 0, 0], [1, 1, 1]), box([1, 1, 1], [1, 1, 1])).upperMm).toBeLessThan(1e-9)
    expect(measureGap([[0, 0, 0]], [[3, 4, 12]]).lowerMm).toBeCloseTo(13, 9)
  })
})
