import { describe, expect, it } from 'vitest'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { dimensionWay, startingShape } from '@/lib/plan/edit'
import { hitsAt, snapAt } from '@/lib/plan/pick'

const strip: Plan = {
  ...EMPTY_PLAN,
  ...startingShape('strip', { lengthMm: 60, widthMm: 12, armMm: 12, cornerRadiusMm: 0 }),
  stiffeners: [
    {
      id: 'board',
      stiffenerId: 'board',
      nodes: [
        { atMm: [5, 2], viaMm: null },
        { atMm: [15, 2], viaMm: null },
        { atMm: [15, 10], viaMm: null },
        { atMm: [5, 10], viaMm: null },
      ],
    },
  ],
  bendLines: [{ id: 'fold', bendId: 'fold', fromMm: [30, 0], toMm: [30, 12] }],
  cutOuts: [
    {
      id: 'eye',
      name: 'Eye',
      nodes: [
        { atMm: [40, 6], viaMm: [42, 8] },
        { atMm: [44, 6], viaMm: [42, 4] },
      ],
    },
  ],
}
const names = (x: number, y: number, toleranceMm = 0.5) =>
  hitsAt(strip, [x, y], { toleranceMm }).map(({ ref, part }) => `${'id' in ref ? ref.id : ref.list} ${part}`)

describe('what lies at a place', () => {
  it('is its points before its ways before its insides, the smaller first', () => {
    expect(names(10, 6)).toEqual(['board inside', 'outline inside'])
    expect(names(5.2, 2.2)).toEqual(['board point', 'outline inside'])
    expect(names(30.3, 6)).toEqual(['fold edge', 'outline inside'])
    expect(names(30.3, 0.1)).toEqual(['fold point', 'outline edge'])
    expect(names(100, 100)).toEqual([])
  })

  it('knows arcs as arcs: inside of the round, and on its rim', () => {
    expect(names(42, 7.8, 0.1)).toEqual(['eye inside', 'outline inside'])
    expect(names(42, 8.05, 0.1)).toEqual(['eye edge', 'outline inside'])
    expect(names(43.9, 7.9, 0.1)).toEqual(['outline inside'])
  })

  it('follows the zoom: what is near in pixels is near', () => {
    expect(names(31.5, 6, 0.5)).toEqual(['outline inside'])
    expect(names(31.5, 6, 2)).toEqual(['fold edge', 'outline inside'])
  })

  it('passes over what is hidden', () => {
    const hidden = new Set(['bendLines', 'outline'] as const)
    expect(hitsAt(strip, [30, 0], { toleranceMm: 1, hidden })).toEqual([])
  })

  it('holds for a path that is no path yet', () => {
    const broken: Plan = {
      ...EMPTY_PLAN,
      outline: [
        { atMm: [0, 0], viaMm: [5, 0] },
        { atMm: [10, 0], viaMm: null },
        { atMm: [10, 0], viaMm: null },
      ],
    }
    expect(hitsAt(broken, [5, 0], { toleranceMm: 0.1 })[0]?.part).toBe('edge')
    const [one] = broken.outline ?? []
    expect(hitsAt({ ...EMPTY_PLAN, outline: one ? [one] : [] }, [0, 0], { toleranceMm: 1 })[0]?.part).toBe('point')
  })
})

describe('snapping', () => {
  const at = (x: number, y: number, more: Partial<Parameters<typeof snapAt>[2]> = {}) => {
    const { to, atMm } = snapAt(strip, [x, y], { toleranceMm: 0.5, gridMm: 1, ...more })
    return [to, ...atMm]
  }

  it('takes points first, then middles, then edges, then the grid', () => {
    expect(at(5.2, 2.3)).toEqual(['point', 5, 2])
    expect(at(10.2, 2.3)).toEqual(['middle', 10, 2])
    expect(at(8.2, 2.3)).toEqual(['edge', 8.2, 2])
    expect(at(42.1, 8.2)).toEqual(['middle', 42, 8])
    expect(at(20.4, 6.6)).toEqual(['grid', 20, 7])
    expect(at(20.4, 6.6, { gridMm: null })).toEqual([null, 20.4, 6.6])
  })

  it('takes right angles from the point before, and shows the line', () => {
    const snap = snapAt(strip, [20.3, 6.6], { toleranceMm: 0.5, gridMm: 1, fromMm: [20, 2] })
    expect(snap).toEqual({
      to: 'square',
      atMm: [20, 7],
      guides: [
        [
          [20, 2],
          [20, 6.6],
        ],
      ],
    })
    expect(at(20.2, 11.7, { fromMm: [20, 2] })).toEqual(['edge', 20, 12])
  })

  it('does not hold what moves to itself', () => {
    expect(at(30.2, 3, { except: { list: 'bendLines', id: 'fold' } })).toEqual(['grid', 30, 3])
  })

  it('gives whole nanometres, also on an inch grid', () => {
    const { atMm } = snapAt(EMPTY_PLAN, [1.3, 2.6], { toleranceMm: 0.1, gridMm: 1.27 })
    expect(atMm).toEqual([1.27, 2.54])
  })
})

describe('dimensions', () => {
  const dimension = { plusMm: null, minusMm: null, isReference: false } as const
  const measured: Plan = {
    ...EMPTY_PLAN,
    dimensions: [
      { ...dimension, id: 'x', direction: 'along-x', fromMm: [0, 0], toMm: [60, 12] },
      { ...dimension, id: 'y', direction: 'along-y', fromMm: [0, 0], toMm: [60, 12] },
      { ...dimension, id: 'level', direction: 'along-x', fromMm: [0, 30], toMm: [60, 30] },
      { ...dimension, id: 'slant', direction: 'straight', fromMm: [100, 0], toMm: [110, 10] },
    ],
  }
  const at = (x: number, y: number) =>
    hitsAt(measured, [x, y], { toleranceMm: 0.5 }).map(({ ref }) => ('id' in ref ? ref.id : ref.list))

  it('run along the direction that they measure, and are met there alone', () => {
    expect(at(30, 0)).toEqual(['x'])
    expect(at(60, 6)).toEqual(['x'])
    expect(at(0, 6)).toEqual(['y'])
    expect(at(30, 12)).toEqual(['y'])
    expect(at(30, 30)).toEqual(['level'])
    expect(at(105, 5)).toEqual(['slant'])
    // Halfway between the two points, where neither line runs.
    expect(at(30, 6)).toEqual([])
  })

  it('begin and end at the points that they lie between', () => {
    for (const { direction, fromMm, toMm } of measured.dimensions) {
      const way = dimensionWay({ direction, fromMm, toMm })
      expect([way[0], way.at(-1)]).toEqual([fromMm, toMm])
    }
  })
})
