import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measureEnvelope } from '@/lib/fold/fit/measure-envelope'
import { boundOffset, type FlatEnd, placeEnd } from '@/lib/fold/fit/place-end'
import type { FlatPart } from '@/lib/fold/kinematics/flat-part'
import { foldPart, placeInBand } from '@/lib/fold/kinematics/fold-part'
import { movePoint } from '@/lib/fold/kinematics/pose'
import type { Vector } from '@/lib/fold/kinematics/vector'
import { carry, makeStripPart, rectangle, type StripBend } from './make-part'

const T = 0.1
const fold = (part: FlatPart) => foldPart(part, 'p0')
const anyBends = fc.array(
  fc.record({
    angleDeg: fc.double({ min: -170, max: 170, noNaN: true }),
    insideMm: fc.double({ min: 0.5, max: 6, noNaN: true }),
    plateMm: fc.double({ min: 2, max: 20, noNaN: true }),
  }),
  { minLength: 1, maxLength: 4 },
)

describe('the box of a folded strip', () => {
  it.each([
    { angleDeg: 90, sizes: [10 + 3 + T, 8, 3 + T + 10] },
    { angleDeg: -90, sizes: [10 + 3 + T, 8, 3 + T + 10] },
    { angleDeg: 180, sizes: [10 + 3 + T, 8, 2 * (3 + T)] },
  ])('at $angleDeg degrees is that of the closed form, between its bounds', ({ angleDeg, sizes }) => {
    const part = makeStripPart([{ angleDeg, insideMm: 3, plateMm: 10 }])
    measureEnvelope(part, [], fold(part)).forEach(({ lowerMm, upperMm }, axis) => {
      expect(lowerMm).toBeLessThanOrEqual((sizes[axis] ?? 0) + 1e-9)
      expect(upperMm).toBeGreaterThanOrEqual((sizes[axis] ?? 0) - 1e-9)
      expect(upperMm - lowerMm).toBeLessThan(0.01)
    })
  })

  it('counts what stands on the part: a component 2 mm high on a flat strip', () => {
    const part = makeStripPart([{ angleDeg: 0.0001, insideMm: 3, plateMm: 10 }])
    const body = carry('c', 'p0', rectangle(1, 1, 3, 3), T / 2, T / 2 + 2)
    const [, , height] = measureEnvelope(part, [body], fold(part))
    expect(height.lowerMm).toBeLessThanOrEqual(2 + T)
    expect(height.upperMm).toBeGreaterThanOrEqual(2 + T)
  })

  it('holds every point of any strip, and is no larger than they need', () => {
    fc.assert(
      fc.property(anyBends, (bends: StripBend[]) => {
        const part = makeStripPart(bends)
        const folded = fold(part)
        const points: Vector[] = []
        for (const { id, solids } of part.plates) {
          const pose = folded.plates.get(id)
          for (const { loops, bottomMm, topMm } of solids) {
            for (const [x, y] of loops.flat()) {
              for (const z of [bottomMm, topMm]) if (pose !== undefined) points.push(movePoint(pose, [x, y, z]))
            }
          }
        }
        for (const band of part.bands) {
          const placed = folded.bands.get(band.id)
          for (let step = 0; step <= 400 && placed !== undefined; step += 1) {
            for (const z of [band.bottomMm, band.topMm]) {
              for (const y of [0, 8])
                points.push(placeInBand(placed, [band.start[0] + (band.lengthMm * step) / 400, y, z]))
            }
          }
        }
        measureEnvelope(part, [], folded).forEach(({ lowerMm, upperMm }, axis) => {
          const values = points.map((point) => point[axis as 0])
          const span = Math.max(...values) - Math.min(...values)
          expect(span).toBeLessThanOrEqual(upperMm + 1e-9)
          expect(span).toBeGreaterThanOrEqual(lowerMm - 1e-3)
        })
      }),
      { numRuns: 60 },
    )
  })
})

describe('where the end of a strip comes to lie', () => {
  const endOf = (part: FlatPart): FlatEnd => {
    const last = part.plates.at(-1)
    const x = Math.max(...(last?.solids[0]?.loops[0] ?? []).map(([at]) => at))
    return { plateId: last?.id ?? '', at: [x, 4, 0], outwards: [1, 0, 0] }
  }

  it('is that of the closed form after a quarter turn up', () => {
    const part = makeStripPart([{ angleDeg: 90, insideMm: 3, plateMm: 10 }])
    const { placed } = placeEnd(part, 'p0', endOf(part)) ?? {}
    const neutral = 3 + T / 2
    expect(placed?.at[0]).toBeCloseTo(10 + neutral, 9)
    expect(placed?.at[2]).toBeCloseTo(neutral + 10, 9)
    expect(placed?.pointsTo[2]).toBeCloseTo(1, 12)
    expect(placed?.topFaces[0]).toBeCloseTo(-1, 12)
  })

  it('at half a turn moves by twice what the axis is off, and not at all along the part with the radius', () => {
    const part = makeStripPart([{ angleDeg: 180, insideMm: 3, plateMm: 10 }])
    const { shifts = [] } = placeEnd(part, 'p0', endOf(part)) ?? {}
    expect(shifts[0]?.perPlaceMm[0]).toBeCloseTo(2, 9)
    // The axis stays in the middle of the band; the fold gets higher by two radii.
    expect(shifts[0]?.perRadiusMm[0]).toBeCloseTo(0, 9)
    expect(shifts[0]?.perRadiusMm[2]).toBeCloseTo(2, 9)
  })

  it('is the same seen from the end as the plate that stays', () => {
    fc.assert(
      fc.property(anyBends, (bends: StripBend[]) => {
        const part = makeStripPart(bends)
        const end = endOf(part)
        const pose = foldPart(part, 'p0').plates.get(end.plateId)
        const { placed } = placeEnd(part, 'p0', end) ?? {}
        const want = pose === undefined ? end.at : movePoint(pose, end.at)
        for (const axis of [0, 1, 2] as const) expect(placed?.at[axis]).toBeCloseTo(want[axis], 9)
      }),
      { numRuns: 60 },
    )
  })

  it('moves with radii exactly as a strip of other radii does, its axes where they were', () => {
    fc.assert(
      fc.property(anyBends, fc.double({ min: -0.4, max: 0.4, noNaN: true }), (bends: StripBend[], byMm) => {
        const part = makeStripPart(bends)
        const before = placeEnd(part, 'p0', endOf(part))
        const rounder: FlatPart = {
          ...part,
          bands: part.bands.map((band) => {
            const longerMm = (byMm * Math.abs(band.angleDeg) * Math.PI) / 180
            return { ...band, lengthMm: band.lengthMm + longerMm, start: [band.start[0] - longerMm / 2, band.start[1]] }
          }),
        }
        const after = placeEnd(rounder, 'p0', endOf(part))
        const moved = (before?.shifts ?? []).reduce<Vector>(
          (sum, { perRadiusMm: [x, y, z] }) => [sum[0] + x * byMm, sum[1] + y * byMm, sum[2] + z * byMm],
          before?.placed.at ?? [0, 0, 0],
        )
        for (const axis of [0, 1, 2] as const) expect(after?.placed.at[axis]).toBeCloseTo(moved[axis], 8)
      }),
      { numRuns: 100 },
    )
  })
})

describe('an offset that tolerances move', () => {
  const anyVector = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -5, max: 5, noNaN: true }))) as fc.Arbitrary<
    [number, number, number]
  >

  it('keeps its bounds wherever in them each tolerance lies', () => {
    fc.assert(
      fc.property(
        anyVector,
        fc.array(anyVector, { maxLength: 15 }),
        fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
        (offset, shifts, shares) => {
          const { lowMm, highMm } = boundOffset(offset, shifts)
          const [x, y, z] = shifts.reduce<Vector>((sum, shift) => {
            const share = shares.next().value ?? 0
            return [sum[0] + share * shift[0], sum[1] + share * shift[1], sum[2] + share * shift[2]]
          }, offset)
          const length = Math.hypot(x, y, z)
          expect(length).toBeGreaterThanOrEqual(lowMm - 1e-9)
          expect(length).toBeLessThanOrEqual(highMm + 1e-9)
        },
      ),
      { numRuns: 300 },
    )
  })

  it('is exact along one line: 3 mm, with 1 mm and 0.5 mm along it', () => {
    expect(
      boundOffset(
        [3, 0, 0],
        [
          [1, 0, 0],
          [0.5, 0, 0],
        ],
      ),
    ).toEqual({ lowMm: 1.5, highMm: 4.5 })
    expect(boundOffset([0, 0, 0], [])).toEqual({ lowMm: 0, highMm: 0 })
  })
})
