import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  boundsOf,
  checkLoop,
  edgesOfLoop,
  flattenEdges,
  type LineOrArc,
  type Loop,
  lengthOf,
  locatePoint,
  nearestOnEdge,
  type PointNm,
  reversePath,
  signedAreaOf,
  transformPath,
} from '@/lib/geometry'
import { backwards, carry, disc, EXACT_MOTIONS, from, polygon, roundedL, stadium } from './shapes'

const MM = 1e6
const MM2 = 1e12

const SHAPES: Readonly<Record<string, Loop>> = {
  rectangle: polygon([0, 0], [30, 0], [30, 12], [0, 12]),
  stadium: stadium(30, 4),
  L: roundedL(2),
  disc: disc(7),
}

/** By hand: exact mathematics. */
const CLOSED: Readonly<Record<string, { readonly areaMm2: number; readonly lengthMm: number }>> = {
  rectangle: { areaMm2: 360, lengthMm: 84 },
  stadium: { areaMm2: 240 + 16 * Math.PI, lengthMm: 60 + 8 * Math.PI },
  L: { areaMm2: 256 + 4 - Math.PI, lengthMm: 80 - 4 + Math.PI },
  disc: { areaMm2: 49 * Math.PI, lengthMm: 14 * Math.PI },
}

describe.each(Object.keys(SHAPES))('%s', (name) => {
  const loop = SHAPES[name] ?? []
  const closed = CLOSED[name] ?? { areaMm2: 0, lengthMm: 0 }
  const variants = loop.flatMap((_, start) => [from(loop, start), backwards(from(loop, start))])

  it('is simple, with area and length of the closed form, from every node and both ways', () => {
    for (const variant of variants) {
      expect(checkLoop(variant)).toEqual([])
      const edges = edgesOfLoop(variant)
      expect(Math.abs(signedAreaOf(edges)) / MM2).toBeCloseTo(closed.areaMm2, 5)
      expect(lengthOf(edges) / MM).toBeCloseTo(closed.lengthMm, 5)
      expect(signedAreaOf(reversePath(edges))).toBeCloseTo(-signedAreaOf(edges), -3)
    }
  })

  it('keeps area, length and every location under quarter turns and mirrors', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000, max: 42_000 }), fc.integer({ min: -10_000, max: 24_000 }), (xUm, yUm) => {
        const point: PointNm = [xUm * 1000, yUm * 1000]
        const where = locatePoint(edgesOfLoop(loop), point)
        for (const variant of variants) expect(locatePoint(edgesOfLoop(variant), point)).toBe(where)
        for (const motion of EXACT_MOTIONS) {
          const moved = edgesOfLoop(transformPath(loop, motion))
          expect(locatePoint(moved, carry(motion, point))).toBe(where)
          expect(lengthOf(moved)).toBeCloseTo(lengthOf(edgesOfLoop(loop)), -1)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('has its nodes and middles of straight edges on it, and their neighbours at one nanometre off it', () => {
    const edges = edgesOfLoop(loop)
    for (const { kind, from: start, to } of edges) {
      expect(locatePoint(edges, start)).toBe('on')
      if (kind === 'arc') continue
      const middle: PointNm = [Math.round((start[0] + to[0]) / 2), Math.round((start[1] + to[1]) / 2)]
      expect(locatePoint(edges, middle)).toBe('on')
      const [dx, dy] = [Math.sign(to[0] - start[0]), Math.sign(to[1] - start[1])]
      const isLeft = signedAreaOf(edges) > 0
      const [left, right]: [PointNm, PointNm] = [
        [middle[0] - dy, middle[1] + dx],
        [middle[0] + dy, middle[1] - dx],
      ]
      expect(locatePoint(edges, left)).toBe(isLeft ? 'inside' : 'outside')
      expect(locatePoint(edges, right)).toBe(isLeft ? 'outside' : 'inside')
    }
  })

  it('is located as a second implementation does, away from its border (flatten-js)', () => {
    const face = asFlatten(edgesOfLoop(loop))
    const edges = edgesOfLoop(loop)
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: 40, noNaN: true }),
        fc.double({ min: -9, max: 22, noNaN: true }),
        (x, y) => {
          const point: PointNm = [Math.round(x * MM) + 0, Math.round(y * MM) + 0]
          const near = Math.min(...edges.map((edge) => nearestOnEdge(edge, point).distanceNm))
          fc.pre(near > 10)
          const theirs = face.contains(new Flatten.Point(point[0] / MM, point[1] / MM))
          expect(locatePoint(edges, point)).toBe(theirs ? 'inside' : 'outside')
        },
      ),
      { numRuns: 300 },
    )
    expect(Math.abs(face.area())).toBeCloseTo(closed.areaMm2, 5)
  })

  it('flattens within the error that was asked for', () => {
    for (const errorNm of [100, 10_000]) {
      const edges = edgesOfLoop(loop)
      for (const corner of flattenEdges(edges, errorNm)) {
        expect(Math.min(...edges.map((edge) => nearestOnEdge(edge, corner).distanceNm))).toBeLessThan(1.5)
      }
      const flat = edgesOfLoop(flattenEdges(edges, errorNm).map((at) => ({ at, via: null })))
      for (const { from: a, to: b } of flat) {
        const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const
        expect(Math.min(...edges.map((edge) => nearestOnEdge(edge, middle).distanceNm))).toBeLessThan(errorNm + 1.5)
      }
    }
  })
})

function asFlatten(edges: readonly LineOrArc[]): Flatten.Polygon {
  const point = ([x, y]: readonly [number, number]) => new Flatten.Point(x / MM, y / MM)
  const shapes = edges.map((edge) =>
    edge.kind === 'line'
      ? new Flatten.Segment(point(edge.from), point(edge.to))
      : new Flatten.Arc(
          point(edge.centre),
          edge.radiusNm / MM,
          edge.startRad,
          edge.startRad + edge.sweepRad,
          edge.sweepRad > 0,
        ),
  )
  const polygonOf = new Flatten.Polygon()
  polygonOf.addFace(shapes)
  return polygonOf
}

describe('bounds', () => {
  it('come from where an arc bulges, not from its ends', () => {
    const box = boundsOf(edgesOfLoop(stadium(30, 4)))
    expect(box.minX / MM).toBeCloseTo(-4, 6)
    expect(box.maxX / MM).toBeCloseTo(34, 6)
    expect(box.minY / MM).toBeCloseTo(-4, 6)
    expect(box.maxY / MM).toBeCloseTo(4, 6)
  })
})

describe('a loop that meets itself', () => {
  it.each([
    ['a figure of eight', polygon([0, 0], [10, 10], [10, 0], [0, 10]), 'meets'],
    ['an edge that runs back', polygon([0, 0], [10, 0], [4, 0], [4, 5]), 'overlaps'],
    ['a corner that touches a side', polygon([0, 0], [10, 0], [10, 8], [5, 0], [0, 8]), 'meets'],
    ['no area', polygon([0, 0], [10, 0]), 'overlaps'],
  ])('is found: %s', (_, loop, code) => {
    for (let start = 0; start < loop.length; start += 1) {
      const found = checkLoop(from(loop, start)).map((issue) => issue.code)
      expect(found).toContain(code)
    }
  })

  it('is found where an arc runs through a line', () => {
    const loop: Loop = [
      { at: [0, 0], via: [5e6, 3e6] },
      { at: [10e6, 0], via: null },
      { at: [10e6, 2e6], via: null },
      { at: [0, 2e6], via: null },
    ]
    expect(checkLoop(loop).map(({ code }) => code)).toContain('meets')
  })

  it('is not seen in tangent fillets whose points were rounded, at any angle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (radius, rad) => {
          const [c, s] = [Math.cos(rad), Math.sin(rad)]
          const loop = transformPath(roundedL(radius), { xTo: [c, s], yTo: [-s, c], move: [12_345, 678] })
          expect(checkLoop(loop)).toEqual([])
        },
      ),
    )
  })
})
