import { describe, expect, it } from 'vitest'
import {
  addConvex,
  coverByConvex,
  findCrossing,
  getAreaUm2,
  getBounds,
  makeDisc,
  makeNoFit,
  type Polygon,
  requireWholeMicrometres,
  tidy,
  triangulate,
  turnBy,
} from '@/lib/geometry'
import { findNestingFaults } from '../fabrication/panel/independent-check'
import { HOOK, L_SHAPE, makeRandom, makeRandomPart, makeStar, mm, U_SHAPE } from '../fabrication/panel/shapes'

const SQUARE: Polygon = mm([0, 0], [10, 0], [10, 10], [0, 10])

describe('simple outlines', () => {
  it('names the two edges that cross', () => {
    expect(findCrossing(mm([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({ firstEdge: 0, secondEdge: 2, kind: 'cross' })
    expect(findCrossing(mm([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]))).toMatchObject({ kind: 'cross', firstEdge: 0 })
  })

  it('sees an edge that runs back on the one before, and an edge without length', () => {
    expect(findCrossing(mm([0, 0], [10, 0], [4, 0], [4, 8]))).toEqual({ firstEdge: 0, secondEdge: 1, kind: 'overlap' })
    expect(findCrossing(mm([0, 0], [10, 0], [10, 0], [4, 8]))).toEqual({
      firstEdge: 1,
      secondEdge: 2,
      kind: 'no-length',
    })
  })

  it('takes shapes whose edges only share corners', () => {
    for (const shape of [SQUARE, L_SHAPE, U_SHAPE, HOOK]) expect(findCrossing(shape)).toBeNull()
  })

  it('looks through two thousand vertices', () => {
    const round = makeStar(2000, (index) => 40 + (index % 2))
    expect(findCrossing(round)).toBeNull()
    const swapped = [...round]
    ;[swapped[700], swapped[900]] = [round[900] ?? [0, 0], round[700] ?? [0, 0]]
    expect(findCrossing(swapped)).not.toBeNull()
  })

  it('refuses coordinates out of bounds by name', () => {
    expect(() => requireWholeMicrometres('outline', [[0, 2 ** 25]])).toThrow(/outline\[0\]\[1\]/)
  })
})

describe('pieces', () => {
  it('triangles add up to the area of the outline', () => {
    const random = makeRandom(3)
    for (let round = 0; round < 100; round += 1) {
      const shape = tidy(makeRandomPart(random))
      const sum = triangulate(shape).reduce((total, triangle) => total + getAreaUm2(triangle), 0)
      expect(sum).toBe(getAreaUm2(shape))
    }
  })

  it('convex pieces are exact where nothing has to be added, and say how much they add otherwise', () => {
    expect(coverByConvex(tidy(L_SHAPE), { maxPieces: 9, allowedExcessFraction: 0 })).toMatchObject({
      excessFraction: 0,
      pieces: { length: 2 },
    })
    const spiky = tidy(makeStar(60, (index) => (index % 2 === 0 ? 30 : 40)))
    const { pieces, excessFraction } = coverByConvex(spiky, { maxPieces: 5, allowedExcessFraction: 0 })
    expect(pieces.length).toBeLessThanOrEqual(5)
    expect(excessFraction).toBeGreaterThan(0)
    // Every corner of the outline lies in a piece: nothing of it was lost.
    const holds = (piece: Polygon, [x, y]: readonly [number, number]) =>
      piece.every(([x0, y0], index) => {
        const [x1, y1] = piece[(index + 1) % piece.length] ?? [x0, y0]
        return (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0) >= 0
      })
    for (const corner of spiky) expect(pieces.some((piece) => holds(piece, corner))).toBe(true)
  })

  it('the disc of a clearance holds the circle and is exact along the axes', () => {
    for (const radiusUm of [1, 100, 2540, 12_345]) {
      const disc = makeDisc(radiusUm)
      expect(getBounds(disc)).toEqual({ minX: -radiusUm, minY: -radiusUm, maxX: radiusUm, maxY: radiusUm })
      disc.forEach(([x0, y0], index) => {
        const [x1, y1] = disc[(index + 1) % disc.length] ?? [0, 0]
        const distance = (x0 * y1 - x1 * y0) / Math.hypot(x1 - x0, y1 - y0)
        expect(distance).toBeGreaterThanOrEqual(radiusUm - 1e-6)
      })
      for (const [x, y] of disc) expect(Math.hypot(x, y)).toBeLessThanOrEqual(1.0197 * radiusUm + 2)
    }
  })

  it('the sum of two squares is the square of both sides', () => {
    expect(getBounds(addConvex(SQUARE, SQUARE))).toEqual({ minX: 0, minY: 0, maxX: 20_000, maxY: 20_000 })
    expect(getAreaUm2(addConvex(SQUARE, SQUARE))).toBe(4 * getAreaUm2(SQUARE))
  })
})

describe('no-fit polygons', () => {
  it('block exactly the offsets at which squares overlap', () => {
    const noFit = makeNoFit([SQUARE], [SQUARE], 0)
    expect(noFit.getBlockedAt(0)).toEqual([-10_000, 10_000])
    expect(noFit.getBlockedAt(10_000)).toEqual([])
    expect(noFit.isBlocked(10_000, 0)).toBe(false)
    expect(noFit.isBlocked(9_999, 9_999)).toBe(true)
    expect(makeNoFit([SQUARE], [SQUARE], 500).getBlockedAt(0)).toEqual([-10_500, 10_500])
  })

  it('agree with overlap and distance by definition, for random shapes and offsets', () => {
    const random = makeRandom(5)
    let blocked = 0
    for (let round = 0; round < 80; round += 1) {
      const shape = tidy(makeRandomPart(random))
      const pieces = coverByConvex(shape, { maxPieces: 99, allowedExcessFraction: 0 }).pieces
      const turned = shape.map(([x, y]) => [0 - x, 0 - y] as const)
      const other = pieces.map((piece) => turnBy(piece, 180))
      const spacingUm = Math.round(random() * 3000)
      const noFit = makeNoFit(pieces, other, spacingUm)
      const [dx, dy] = [noFit.minX, noFit.minY].map((low, axis) => {
        const high = axis === 0 ? noFit.maxX : noFit.maxY
        return Math.round(low + (high - low) * random())
      }) as [number, number]
      const isFree = !noFit.isBlocked(dx, dy)
      const { minX, minY } = getBounds(shape)
      const { minX: turnedX, minY: turnedY } = getBounds(turned)
      const faults = (clearanceUm: number) =>
        findNestingFaults(
          shape,
          [
            { xUm: minX, yUm: minY, rotationDeg: 0 },
            { xUm: turnedX + dx, yUm: turnedY + dy, rotationDeg: 180 },
          ],
          { left: -Infinity, right: Infinity, bottom: -Infinity, top: Infinity, spacingUm: clearanceUm },
        )
      if (isFree) expect(faults(spacingUm)).toEqual([])
      else {
        blocked += 1
        // The clearance's circle may be up to 2 % and 2 um too large, and no more.
        expect(faults(1.0197 * spacingUm + 2)).not.toEqual([])
      }
    }
    expect(blocked).toBeGreaterThan(20)
  })
})
