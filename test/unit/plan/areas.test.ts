import { describe, expect, it } from 'vitest'
import { transformPath } from '@/lib/geometry'
import {
  areasOf,
  checkPlan,
  EMPTY_PLAN,
  type Plan,
  pathInMm,
  pathInNm,
  planSchema,
  STARTING_SHAPES,
  startingShape,
} from '@/lib/plan'
import { EXACT_MOTIONS } from '../geometry/paths/shapes'

const SIZES = { lengthMm: 60, widthMm: 40, armMm: 12, cornerRadiusMm: 2 }
/** By hand: rectangles, and per inside corner a square less a quarter disc. */
const CORNER_MM2 = 4 - Math.PI
const AREAS_MM2 = {
  strip: 2400,
  L: 60 * 12 + 28 * 12 + CORNER_MM2,
  T: 60 * 12 + 28 * 12 + 2 * CORNER_MM2,
  cross: 60 * 12 + 28 * 12 + 4 * CORNER_MM2,
  U: 60 * 12 + 2 * 28 * 12 + 2 * CORNER_MM2,
  ring: 60 * 40 - 36 * 16 + 4 * CORNER_MM2,
} as const

const shape = (kind: (typeof STARTING_SHAPES)[number]): Plan => {
  const plan = startingShape(kind, SIZES)
  if (plan === null) throw new Error(kind)
  return plan
}

const line = (id: string, ...points: readonly (readonly [number, number])[]): Plan['dividingLines'][number] => ({
  id,
  name: id,
  nodes: points.map(([x, y]) => ({ atMm: [x, y], viaMm: null })),
})

const mark = (id: string, x: number, y: number, zoneId: string | null = id): Plan['areas'][number] => ({
  id,
  name: id,
  zoneId,
  markMm: [x, y],
})

describe.each(STARTING_SHAPES)('a starting shape: %s', (kind) => {
  it('is a plan that opens, with the area of its closed form', () => {
    const plan = shape(kind)
    expect(planSchema.safeParse(plan).success).toBe(true)
    expect(checkPlan(plan)).toEqual([])
    const { areas } = areasOf(plan)
    expect(areas).toHaveLength(1)
    expect(areas[0]?.areaMm2).toBeCloseTo(AREAS_MM2[kind], 4)
  })

  it('is refused where the arms do not fit', () => {
    expect(startingShape(kind, { ...SIZES, armMm: kind === 'strip' ? 0 : 60 })).toBeNull()
  })
})

describe('areas of a plan', () => {
  const cross: Plan = {
    ...shape('cross'),
    dividingLines: [
      line('west', [22, 14], [22, 26]),
      line('east', [38, 14], [38, 26]),
      line('south', [24, 12], [36, 12]),
      line('north', [24, 28], [36, 28]),
    ],
    areas: [mark('hub', 30, 20), mark('w', 5, 20), mark('e', 55, 20), mark('s', 30, 5), mark('n', 30, 35)],
  }

  it('know their zones and neighbours: four arms border on the hub alone', () => {
    const { areas, problems } = areasOf(cross)
    expect(problems).toEqual([])
    const hub = areas.findIndex(({ id }) => id === 'hub')
    expect(areas[hub]?.borders.map(({ lineId }) => lineId).sort()).toEqual(['east', 'north', 'south', 'west'])
    for (const area of areas.filter(({ id }) => id !== 'hub')) {
      expect(area.borders.map(({ area: other }) => other)).toEqual([hub])
      expect(area.areaMm2).toBeCloseTo(area.id === 'w' || area.id === 'e' ? 22 * 12 : 12 * 12, 6)
    }
  })

  it('are the same under quarter turns and mirrors', () => {
    const before = areasOf(cross)
      .areas.map(({ id, areaMm2 }) => [id, areaMm2.toFixed(6)])
      .sort()
    for (const motion of EXACT_MOTIONS) {
      const carry = (nodes: Plan['dividingLines'][number]['nodes']) => pathInMm(transformPath(pathInNm(nodes), motion))
      const moved: Plan = {
        ...cross,
        outline: carry(cross.outline ?? []),
        dividingLines: cross.dividingLines.map((each) => ({ ...each, nodes: carry(each.nodes) })),
        areas: cross.areas.map((each) => ({
          ...each,
          markMm: carry([{ atMm: each.markMm, viaMm: null }])[0]?.atMm ?? [0, 0],
        })),
      }
      expect(planSchema.safeParse(moved).success).toBe(true)
      expect(
        areasOf(moved)
          .areas.map(({ id, areaMm2 }) => [id, areaMm2.toFixed(6)])
          .sort(),
      ).toEqual(before)
    }
  })

  it('of a ring are two where it is cut twice', () => {
    const ring: Plan = {
      ...shape('ring'),
      dividingLines: [line('left', [0, 20], [12, 20]), line('right', [48, 20], [60, 20])],
      areas: [mark('lower', 30, 5), mark('upper', 30, 35)],
    }
    const { areas, problems } = areasOf(ring)
    expect(problems).toEqual([])
    expect(areas.map(({ areaMm2 }) => areaMm2)).toEqual([
      expect.closeTo(AREAS_MM2.ring / 2, 4),
      expect.closeTo(AREAS_MM2.ring / 2, 4),
    ])
    // They meet along both lines.
    expect(areas[0]?.borders.map(({ lineId }) => lineId).sort()).toEqual(['left', 'right'])
  })

  it('name what is unfinished, with its place', () => {
    const codes = (plan: Plan) => areasOf(plan).problems.map(({ code }) => code)
    expect(codes(EMPTY_PLAN)).toEqual(['no-outline'])
    expect(codes(shape('strip'))).toEqual(['no-mark'])
    expect(codes({ ...shape('strip'), areas: [mark('a', 1, 1, null)] })).toEqual(['no-zone'])
    expect(codes({ ...shape('strip'), areas: [mark('a', 1, 1), mark('b', 50, 1)] })).toEqual(['two-marks'])
    expect(codes({ ...shape('strip'), areas: [mark('a', 1, 1), mark('b', 90, 1)] })).toEqual(['mark-outside'])
    expect(
      codes({ ...shape('strip'), areas: [mark('a', 1, 1)], dividingLines: [line('d', [20, 0], [20, 39])] }),
    ).toEqual(['idle-line'])
  })
})

describe('a plan is refused', () => {
  const outlined = shape('strip')
  it.each<[string, Plan, RegExp]>([
    [
      'whose outline crosses itself',
      {
        ...EMPTY_PLAN,
        outline: [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null })),
      },
      /meets/,
    ],
    [
      'with an arc of three points in line',
      {
        ...EMPTY_PLAN,
        outline: [
          { atMm: [0, 0], viaMm: [5, 0] },
          { atMm: [10, 0], viaMm: null },
          { atMm: [10, 9], viaMm: null },
        ],
      },
      /is not an arc/,
    ],
    [
      'with an arc past a half circle',
      {
        ...EMPTY_PLAN,
        outline: [
          { atMm: [0, 0], viaMm: [5, -9] },
          { atMm: [10, 0], viaMm: null },
          { atMm: [5, 9], viaMm: null },
        ],
      },
      /half circle/,
    ],
    [
      'with a cut-out outside',
      {
        ...outlined,
        cutOuts: [
          {
            id: 'a',
            name: 'A',
            nodes: [
              [55, 5],
              [65, 5],
              [60, 9],
            ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null })),
          },
        ],
      },
      /within the outline/,
    ],
    ['with one id twice', { ...outlined, areas: [mark('a', 1, 1), mark('a', 2, 2)] }, /used twice/],
    [
      'with a pattern without a step',
      {
        ...outlined,
        holes: [{ id: 'h', holeId: 'h', atMm: [5, 5], columns: 3, rows: 1, columnStepMm: null, rowStepMm: null }],
      },
      /step/,
    ],
    [
      'with more holes than a shop drills',
      {
        ...outlined,
        holes: [
          { id: 'h', holeId: 'h', atMm: [5, 5], columns: 500, rows: 500, columnStepMm: [1, 0], rowStepMm: [0, 1] },
        ],
      },
      /at most/,
    ],
  ])('%s', (_, plan, message) => {
    expect(
      checkPlan(plan)
        .map((issue) => issue.message)
        .join('\n'),
    ).toMatch(message)
  })

  it('with a coordinate finer than a nanometre', () => {
    const fine = {
      ...EMPTY_PLAN,
      outline: [
        { atMm: [0.0000001, 0], viaMm: null },
        { atMm: [1, 0], viaMm: null },
        { atMm: [1, 1], viaMm: null },
      ],
    }
    expect(planSchema.safeParse(fine).error?.issues[0]?.message).toMatch(/nanometres/)
    // A mil and a tenth of one are whole nanometres.
    expect(
      planSchema.safeParse({
        ...fine,
        outline: [
          { atMm: [0.0254, 0.00254], viaMm: null },
          { atMm: [1, 0], viaMm: null },
          { atMm: [1, 1], viaMm: null },
        ],
      }).success,
    ).toBe(true)
  })
})
