import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clipToBand,
  distanceBetweenRegions,
  type Loop,
  locateInRegion,
  makeRegion,
  type Path,
  type Region,
  splitByLines,
  transformPath,
} from '@/lib/geometry'
import { disc, EXACT_MOTIONS, polygon, roundedL, stadium } from './shapes'

const MM2 = 1e12

function region(outer: Loop, ...holes: Loop[]): Region {
  const made = makeRegion(outer, holes)
  if (!made.ok) throw new Error(JSON.stringify(made.issues))
  return made.region
}

const line = (...points: readonly (readonly [number, number])[]): Path =>
  points.map(([x, y]) => ({ at: [Math.round(x * 1e6) + 0, Math.round(y * 1e6) + 0], via: null }))

const areasOf = (pieces: readonly { readonly region: Region }[]) =>
  pieces.map((piece) => piece.region.areaNm2 / MM2).sort((a, b) => a - b)

describe('a region cut by lines', () => {
  const strip = polygon([0, 0], [60, 0], [60, 10], [0, 10])

  it('gives areas that add up, and who lies beside whom', () => {
    const { pieces, idle } = splitByLines(region(strip), [line([20, 0], [20, 10]), line([45, 0], [45, 10])])
    expect(areasOf(pieces)).toEqual([150, 200, 250])
    expect(idle).toEqual([])
    expect(pieces.map(({ neighbours }) => neighbours.length).sort()).toEqual([1, 1, 2])
  })

  it('knows a line that ends in the middle, and one that stops 1 µm short', () => {
    expect(splitByLines(region(strip), [line([20, 0], [20, 5])]).idle).toEqual([0])
    expect(areasOf(splitByLines(region(strip), [line([20, 0.001], [20, 9.9995])]).pieces)).toEqual([
      expect.closeTo(200, 2),
      expect.closeTo(400, 2),
    ])
    expect(splitByLines(region(strip), [line([20, 0.002], [20, 10])]).idle).toEqual([0])
  })

  it('takes lines that cross, end on each other, and bend', () => {
    const square = region(polygon([0, 0], [10, 0], [10, 10], [0, 10]))
    expect(areasOf(splitByLines(square, [line([5, 0], [5, 10]), line([0, 4], [10, 4])]).pieces)).toEqual([
      20, 20, 30, 30,
    ])
    expect(areasOf(splitByLines(square, [line([5, 0], [5, 10]), line([0, 4], [5, 4])]).pieces)).toEqual([20, 30, 50])
    expect(areasOf(splitByLines(square, [line([2, 0], [2, 6], [8, 6], [8, 0])]).pieces)).toEqual([36, 64])
  })

  it('keeps cut-outs in the area that holds them, and opens a ring only where it is cut twice', () => {
    const ring = region(polygon([0, 0], [40, 0], [40, 40], [0, 40]), polygon([10, 10], [30, 10], [30, 30], [10, 30]))
    const once = splitByLines(ring, [line([0, 20], [10, 20])])
    expect(areasOf(once.pieces)).toEqual([1200])
    expect(once.idle).toEqual([0])
    const twice = splitByLines(ring, [line([0, 20], [10, 20]), line([30, 20], [40, 20])])
    expect(areasOf(twice.pieces)).toEqual([600, 600])
    const holed = splitByLines(region(strip, disc(2, 50, 5)), [line([20, 0], [20, 10])])
    expect(areasOf(holed.pieces)).toEqual([200, expect.closeTo(400 - 4 * Math.PI, 4)])
    expect(holed.pieces.map((piece) => piece.region.holes.length).sort()).toEqual([0, 1])
  })

  it('takes an area closed by a line alone', () => {
    const pieces = splitByLines(region(strip), [line([20, 3], [30, 3], [30, 7], [20, 7], [20, 3])]).pieces
    expect(areasOf(pieces)).toEqual([40, 560])
  })

  it('gives the same areas under every quarter turn and mirror', () => {
    const lines = [line([0, 12], [8, 12]), line([14, 0], [14, 8])]
    const straight = areasOf(splitByLines(region(roundedL(2)), lines).pieces)
    expect(straight).toHaveLength(3)
    for (const motion of EXACT_MOTIONS) {
      const moved = splitByLines(
        region(transformPath(roundedL(2), motion)),
        lines.map((path) => transformPath(path, motion)),
      )
      areasOf(moved.pieces).forEach((area, at) => {
        expect(area).toBeCloseTo(straight[at] ?? Number.NaN, 6)
      })
    }
  })

  it('adds up for any lines', () => {
    const at = fc.tuple(fc.integer({ min: -2, max: 12 }), fc.integer({ min: -2, max: 12 }))
    const lines = fc.array(
      fc.tuple(at, at).filter(([a, b]) => a[0] !== b[0] || a[1] !== b[1]),
      { maxLength: 5 },
    )
    fc.assert(
      fc.property(lines, (pairs) => {
        const whole = region(stadium(10, 5))
        const { pieces } = splitByLines(
          whole,
          pairs.map(([a, b]) => line(a, b)),
        )
        const sum = pieces.reduce((total, piece) => total + piece.region.areaNm2, 0)
        expect(sum / MM2).toBeCloseTo(whole.areaNm2 / MM2, 3)
      }),
      { numRuns: 200 },
    )
  })
})

describe('a band', () => {
  it('across an arm is as wide as the arm there', () => {
    const [band, ...more] = clipToBand(region(roundedL(2)), {
      from: [0, 15e6],
      to: [8e6, 15e6],
      halfWidthNm: 1.5e6,
    })
    expect(more).toEqual([])
    expect((band?.areaNm2 ?? 0) / MM2).toBeCloseTo(24, 6)
  })

  it('through both arms of a U has two pieces', () => {
    const u = polygon([0, 0], [30, 0], [30, 20], [22, 20], [22, 8], [8, 8], [8, 20], [0, 20])
    expect(clipToBand(region(u), { from: [0, 15e6], to: [8e6, 15e6], halfWidthNm: 1e6 })).toHaveLength(2)
  })
})

describe('distance between regions', () => {
  it('is that of the closed form, and 0 where one lies in the other', () => {
    expect(distanceBetweenRegions(region(disc(2)), region(disc(3, 10, 0))).distanceNm).toBeCloseTo(5e6, 0)
    expect(
      distanceBetweenRegions(region(disc(2)), region(polygon([5, -9], [6, -9], [6, 9], [5, 9]))).distanceNm,
    ).toBeCloseTo(3e6, 0)
    expect(distanceBetweenRegions(region(disc(9)), region(disc(1))).distanceNm).toBe(0)
    expect(distanceBetweenRegions(region(disc(1)), region(disc(9))).distanceNm).toBe(0)
    expect(locateInRegion(region(disc(9), disc(3)), [0, 0])).toBe('outside')
    expect(distanceBetweenRegions(region(disc(9), disc(3)), region(disc(1))).distanceNm).toBeCloseTo(2e6, 0)
  })
})
