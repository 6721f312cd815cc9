import { describe, expect, it } from 'vitest'
import { EMPTY_PLAN, measurePlan, type Plan, type PlanFacts } from '@/lib/plan'

type Point = [number, number]

const path = (...points: Point[]) => points.map((atMm) => ({ atMm, viaMm: null }))

interface Drawn {
  readonly at: Point[]
  readonly widthMm: number | null
  readonly layerId?: string
  /** Pieces of one conductor have its name; without one each is a conductor of its own. */
  readonly of?: string
}

const measure = (routes: readonly Drawn[]) => measureRoutes(routes).shares

/** A strip of 60 by 10 mm with one bend across its middle, whose band is 8 mm wide. */
function measureRoutes(routes: readonly Drawn[]) {
  const plan: Plan = {
    ...EMPTY_PLAN,
    outline: path([0, 0], [60, 0], [60, 10], [0, 10]),
    areas: [{ id: 'arm', name: 'Arm', zoneId: 'arm', markMm: [5, 5] }],
    bendLines: [{ id: 'line', bendId: 'fold', fromMm: [30, 0], toMm: [30, 10] }],
    routes: routes.map(({ at, widthMm, layerId = null, of }, index) => ({
      id: `route-${index}`,
      conductorId: of ?? `c-${index}`,
      layerId,
      widthMm,
      nodes: path(...at),
    })),
  }
  const facts: PlanFacts = {
    bandWidthsMm: new Map([['fold', 8]]),
    zoneOfBend: new Map([['fold', 'arm']]),
    flatZoneIds: new Set(),
    drillsMm: new Map(),
    conductors: new Map(routes.map(({ of }, index) => [of ?? `c-${index}`, { layerId: 'l1', widthMm: null }])),
    conductorLayerIds: ['l1', 'l2'],
  }
  return measurePlan(plan, facts).routes
}

describe('copper of drawn routes in the band of a bend', () => {
  it('is their area over that of the band: 1 mm and 1.5 mm across 10 mm are a quarter', () => {
    const [share] = measure([
      {
        at: [
          [0, 2],
          [60, 2],
        ],
        widthMm: 1,
      },
      {
        at: [
          [0, 6],
          [60, 6],
        ],
        widthMm: 1.5,
      },
    ])
    expect(share?.shareFraction).toBeCloseTo(0.25, 9)
    expect(share?.conductorIds).toEqual(['c-0', 'c-1'])
  })

  it('counts what ends within the band for its length there, and what stays outside for nothing', () => {
    // The band reaches from 26 to 34 mm: half of it.
    expect(
      measure([
        {
          at: [
            [0, 5],
            [30, 5],
          ],
          widthMm: 2,
        },
      ])[0]?.shareFraction,
    ).toBeCloseTo(0.1, 9)
    expect(
      measure([
        {
          at: [
            [0, 5],
            [26, 5],
          ],
          widthMm: 2,
        },
      ]),
    ).toEqual([])
  })

  it('a slanted route covers more of the band by the length that it has there', () => {
    const [share] = measure([
      {
        at: [
          [24, 0],
          [36, 10],
        ],
        widthMm: 1,
      },
    ])
    // 8 mm across the band at 10 in 12: a way of 8 x hypot(12, 10) / 12, over 80 mm².
    expect(share?.shareFraction).toBeCloseTo((8 * Math.hypot(12, 10)) / 12 / 80, 6)
  })

  it('two routes over each other are one, each layer is its own, and a width that nobody knows adds nothing', () => {
    const over = {
      at: [
        [0, 5],
        [60, 5],
      ] as Point[],
      widthMm: 2,
    }
    expect(measure([over, over])[0]?.shareFraction).toBeCloseTo(0.2, 9)
    expect(
      measure([over, { ...over, layerId: 'l2' }]).map(({ layerId, shareFraction }) => [layerId, shareFraction]),
    ).toEqual([
      ['l1', 0.2],
      ['l2', 0.2],
    ])
    expect(measure([{ ...over, widthMm: null }])).toEqual([])
  })
})

describe('conductors on neighbouring layers that lie over each other in the band of a bend', () => {
  const straight = (fromX: number, toX: number, y: number, more: Omit<Drawn, 'at' | 'widthMm'>): Drawn => ({
    at: [
      [fromX, y],
      [toX, y],
    ],
    widthMm: 1,
    ...more,
  })

  it('are found with the share of the narrower one, over the width of the band', () => {
    const [found] = measureRoutes([straight(0, 60, 5, {}), straight(0, 60, 5.4, { layerId: 'l2' })]).stacked
    expect(found).toMatchObject({ bendId: 'fold', conductorIds: ['c-0', 'c-1'] })
    expect(found?.shareFraction).toBeCloseTo(0.6, 9)
    expect(found?.lengthMm).toBeCloseTo(8, 9)
  })

  it('are one finding where one of them is drawn in pieces, over the length of all pieces together', () => {
    const { stacked } = measureRoutes([
      straight(0, 31, 5, { of: 'drive' }),
      straight(31, 33, 5.5, { of: 'drive' }),
      straight(0, 60, 5, { of: 'return', layerId: 'l2' }),
    ])
    expect(stacked.map(({ conductorIds }) => conductorIds)).toEqual([['drive', 'return']])
    expect(stacked[0]?.shareFraction).toBeCloseTo(1, 9)
    // From 26 to 31 and from 31 to 33 mm.
    expect(stacked[0]?.lengthMm).toBeCloseTo(7, 9)
  })

  it('are none where each keeps to its own part of the band, lies beside the other, or is on the same layer', () => {
    const pieces = [straight(0, 29, 5, {}), straight(29, 60, 5, { layerId: 'l2' })]
    expect(measureRoutes(pieces).stacked).toEqual([])
    expect(measureRoutes([straight(0, 60, 4, {}), straight(0, 60, 5, { layerId: 'l2' })]).stacked).toEqual([])
    expect(measureRoutes([straight(0, 60, 5, {}), straight(0, 60, 5, {})]).stacked).toEqual([])
  })
})
