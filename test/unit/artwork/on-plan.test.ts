import { describe, expect, test } from 'vitest'
import { buildCopperStack, measureOnPlan, type OnPlanFacts, type PlanGround, readSet } from '@/lib/artwork'
import { type Drawn, drawDrill, drawGerber, type Writing } from './draw-set'

const NM = 1e6
type Point = readonly [number, number]
const ring = (...corners: Point[]) => corners.flatMap(([x, y]) => [x * NM, y * NM])
const box = (x0: number, y0: number, x1: number, y1: number) => ring([x0, y0], [x1, y0], [x1, y1], [x0, y1])

/** 40 x 10 mm with a notch at one corner, so that it lies in one way alone; a bend of 2 mm square to its length at x = 16. */
const OUTLINE: readonly Point[] = [
  [0, 0],
  [40, 0],
  [40, 7],
  [37, 7],
  [37, 10],
  [0, 10],
]
const GROUND: PlanGround = {
  basis: 'the plan',
  part: [ring(...OUTLINE)],
  zones: [
    { zoneId: 'left', isFinger: false, isRigid: false, rings: [box(0, 0, 20, 10)] },
    {
      zoneId: 'right',
      isFinger: false,
      isRigid: false,
      rings: [ring([20, 0], [40, 0], [40, 7], [37, 7], [37, 10], [20, 10])],
    },
  ],
  bands: [
    {
      basis: 'the band',
      lineId: 'line',
      bendId: 'bend',
      fromNm: [16 * NM, 0],
      toNm: [16 * NM, 10 * NM],
      widthNm: 2 * NM,
      rings: [box(15, 0, 17, 10)],
    },
  ],
  holes: [{ holeId: 'via', atNm: [3 * NM, 3 * NM], diameterNm: 0.3 * NM }],
}

interface Layers {
  readonly top?: readonly Drawn[]
  readonly bottom?: readonly Drawn[]
  readonly holes?: readonly Point[]
}

function measure({ top = [], bottom = [], holes = [[3, 3]] }: Layers, writing: Writing = {}): OnPlanFacts {
  const border = OUTLINE.map((from, at): Drawn => {
    const to = OUTLINE[(at + 1) % OUTLINE.length] as Point
    return { stroke: [from, to], widthMm: 0.1 }
  })
  const set = readSet([
    drawGerber('top.gbr', 'Copper,L1,Top', top, writing),
    drawGerber('bottom.gbr', 'Copper,L2,Bot', bottom, writing),
    drawGerber('profile.gbr', 'Profile,NP', border, writing),
    drawDrill('plated.drl', holes, 0.3, writing),
  ])
  return measureOnPlan(set, buildCopperStack(set), GROUND)
}
const topInBend = (layers: Layers, writing?: Writing) => {
  const { bands } = measure(layers, writing)
  const found = bands[0]?.layers.find(({ fileName }) => fileName === 'top.gbr')
  if (found === undefined) throw new Error('the layer was not measured in the bend')
  return found
}

/** Runs across the bend, square to its axis. */
const straight = (y: number, widthMm = 0.2): Drawn => ({
  stroke: [
    [2, y],
    [30, y],
  ],
  widthMm,
})

const turned =
  (deg: 0 | 90 | 180 | 270, isMirrored: boolean, shift: Point): Writing['move'] =>
  ([x, y]) => {
    const mx = isMirrored ? -x : x
    const [cos, sin] = { 0: [1, 0], 90: [0, 1], 180: [-1, 0], 270: [0, -1] }[deg] as [number, number]
    return [cos * mx - sin * y + shift[0], sin * mx + cos * y + shift[1]]
  }
const WRITINGS: readonly (readonly [string, Writing])[] = [
  ['as drawn', {}],
  ['in inches', { unit: 'inch' }],
  ...[false, true].flatMap((isMirrored) =>
    ([0, 90, 180, 270] as const).map(
      (deg) =>
        [
          `${isMirrored ? 'mirrored and ' : ''}turned by ${deg} and shifted`,
          { move: turned(deg, isMirrored, [12.3, -45.6]) as NonNullable<Writing['move']>, isMirrored },
        ] as const,
    ),
  ),
]

describe.each(WRITINGS)('a set %s', (_, writing) => {
  test('lies where the plan is, and its holes are found', () => {
    const { registration, holes, unplacedReason } = measure({ top: [straight(5)] }, writing)
    expect(unplacedReason).toBeNull()
    expect(registration?.isMirrored).toBe(writing.isMirrored ?? false)
    expect(registration?.isUnique).toBe(true)
    expect(registration?.fitFraction).toBe(1)
    expect(registration?.farthestMm).toBeLessThan(2e-5)
    expect(holes).toEqual([{ holeId: 'via', drawnCount: 1, foundCount: 1, missingAtMm: null }])
  })

  test('has the copper that it has, in each zone and in the bend, by the areas of its strokes', () => {
    const facts = measure({ top: [straight(4, 0.2), straight(6, 0.4)] }, writing)
    const [top] = facts.layers
    // 18 mm of stroke in the left zone and 10 mm in the right one, each with a half circle at its end.
    const expected = (lengthMm: number) => lengthMm * 0.6 + (Math.PI / 8) * (0.2 ** 2 + 0.4 ** 2)
    expect(top?.zones[0]?.copperFraction).toBeCloseTo(expected(18) / 200, 4)
    expect(top?.zones[1]?.copperFraction).toBeCloseTo(expected(10) / 191, 4)
    expect(facts.bands[0]?.layers[0]?.copperFraction).toBeCloseTo(0.6 / 10, 5)
  })

  test('tells lands that a conductor runs into without growing wider', () => {
    const out = (x: number, y: number, widthMm: number): Drawn[] => [
      { pad: [x, y], sizeMm: 0.8 },
      {
        stroke: [
          [x, y],
          [x + 4, y],
        ],
        widthMm,
      },
    ]
    const teardrop: Drawn = {
      area: [
        [25, 5.35],
        [25, 4.65],
        [26, 4.9],
        [26, 5.1],
      ],
    }
    // A conductor as wide as its land has no neck; of one that leaves by an arc nothing is said.
    const leftAlone: Drawn[] = [
      ...out(5, 8, 0.7),
      { pad: [10, 2], sizeMm: 0.8 },
      {
        arc: [
          [10, 2],
          [12, 4],
          [10, 4],
        ],
        widthMm: 0.2,
      },
    ]
    const [top] = measure({ top: [...out(5, 5, 0.2), ...out(25, 5, 0.2), teardrop, ...leftAlone] }, writing).layers
    const [left, right] = top?.zones ?? []
    expect(left?.joinedLands).toMatchObject({ count: 1, bareCount: 1 })
    expect(left?.joinedLands.firstBareAtMm?.map((mm) => Math.round(mm * 1e4) / 1e4)).toEqual([5, 5])
    expect(right?.joinedLands).toEqual({ count: 1, bareCount: 0, firstBareAtMm: null })
  })

  test('tells a slant, its width and the space beside it, at their places', () => {
    const slant: Drawn = {
      stroke: [
        [14, 2],
        [18, 6],
      ],
      widthMm: 0.25,
    }
    const { leastAngle, narrowest, leastSpace } = topInBend(
      { top: [slant, straight(7.5, 0.1), straight(7.7, 0.1)] },
      writing,
    )
    expect(leastAngle?.deg).toBeCloseTo(45, 3)
    expect(leastAngle?.atMm[0]).toBeCloseTo(16, 3)
    expect(leastAngle?.atMm[1]).toBeCloseTo(4, 3)
    expect(narrowest?.widthMm).toBeCloseTo(0.1, 5)
    expect(leastSpace?.mm).toBeCloseTo(0.1, 4)
    expect(leastSpace?.atMm[1]).toBeCloseTo(7.6, 3)
  })

  test('tells a corner, an arc, a step, an end, a junction and a pad in the bend', () => {
    const corner = topInBend(
      {
        top: [
          {
            stroke: [
              [2, 3],
              [16, 3],
            ],
            widthMm: 0.2,
          },
          {
            stroke: [
              [16, 3],
              [30, 8],
            ],
            widthMm: 0.2,
          },
        ],
      },
      writing,
    )
    expect(corner.turnCount).toBe(1)
    expect(corner.largestTurn?.deg).toBeCloseTo((Math.atan2(5, 14) * 180) / Math.PI, 3)
    expect(corner.largestTurn?.atMm.map((mm) => Math.round(mm * 1e3) / 1e3)).toEqual([16, 3])
    const arc = topInBend(
      {
        top: [
          {
            arc: [
              [16, 3],
              [18, 5],
              [16, 5],
            ],
            widthMm: 0.2,
          },
          {
            stroke: [
              [2, 3],
              [16, 3],
            ],
            widthMm: 0.2,
          },
        ],
      },
      writing,
    )
    expect(arc.largestTurn?.deg).toBeGreaterThan(20)
    const step = topInBend(
      {
        top: [
          {
            stroke: [
              [2, 3],
              [16, 3],
            ],
            widthMm: 0.2,
          },
          {
            stroke: [
              [16, 3],
              [30, 3],
            ],
            widthMm: 0.3,
          },
        ],
      },
      writing,
    )
    expect(
      [step.widthChange?.fromMm, step.widthChange?.toMm].map((mm) => Math.round((mm ?? 0) * 1e3) / 1e3).sort(),
    ).toEqual([0.2, 0.3])
    expect(step.turnCount).toBe(0)
    const end = topInBend(
      {
        top: [
          {
            stroke: [
              [2, 3],
              [16, 3],
            ],
            widthMm: 0.2,
          },
        ],
      },
      writing,
    )
    expect(end.ends.count).toBe(1)
    const junction = topInBend(
      {
        top: [
          straight(3),
          {
            stroke: [
              [16, 3],
              [16, 9],
            ],
            widthMm: 0.2,
          },
        ],
      },
      writing,
    )
    expect(junction.junctions.count).toBe(1)
    const pad = topInBend({ top: [straight(3), { pad: [16.9, 3], sizeMm: 0.6 }] }, writing)
    expect(pad.pads.count).toBe(1)
    expect(pad.pads.firstAtMm?.map((mm) => Math.round(mm * 1e3) / 1e3)).toEqual([16.9, 3])
  })

  test('says nothing of straight conductors that run through', () => {
    const found = topInBend({ top: [straight(3), straight(5), { pad: [2, 3], sizeMm: 0.6 }] }, writing)
    expect(found.leastAngle?.deg).toBeCloseTo(90, 6)
    expect([
      found.turnCount,
      found.widthChangeCount,
      found.ends.count,
      found.junctions.count,
      found.pads.count,
    ]).toEqual([0, 0, 0, 0, 0])
  })

  test('tells conductors over each other from staggered ones, and holes in and near the bend', () => {
    const over = measure(
      {
        top: [straight(3)],
        bottom: [straight(3)],
        holes: [
          [15.5, 5],
          [14, 8],
        ],
      },
      writing,
    )
    expect(over.bands[0]?.stacked).toHaveLength(1)
    expect(over.bands[0]?.stacked[0]?.shareFraction).toBeCloseTo(1, 4)
    expect(over.bands[0]?.holes).toMatchObject({ count: 1, platedCount: 1 })
    expect(over.bands[0]?.nearestHole?.mm).toBeCloseTo(0.85, 4)
    expect(over.holes[0]).toMatchObject({ foundCount: 0, missingAtMm: [3, 3] })
    const staggered = measure({ top: [straight(3)], bottom: [straight(4)] }, writing)
    expect(staggered.bands[0]?.stacked[0]?.shareFraction).toBeCloseTo(0, 6)
  })

  test('tells how near copper comes to the outline', () => {
    expect(measure({ top: [straight(9.5, 0.4)] }, writing).layers[0]?.toOutline?.mm).toBeCloseTo(0.3, 3)
    expect(measure({ top: [straight(5)] }, writing).layers[0]?.toOutline).toBeNull()
    expect(
      measure(
        {
          top: [
            {
              stroke: [
                [35, 5],
                [42, 5],
              ],
              widthMm: 0.4,
            },
          ],
        },
        writing,
      ).layers[0]?.toOutline?.mm,
    ).toBe(0)
  })
})

test('a filled plane has no conductors of its own, and strokes that only fill it are none', () => {
  const plane: Drawn = {
    area: [
      [1, 1],
      [36, 1],
      [36, 9],
      [1, 9],
    ],
  }
  const found = topInBend({ top: [plane, straight(5)] })
  expect(found.copperFraction).toBeCloseTo(0.8, 5)
  expect(found.pieceCount).toBe(0)
})

test('an outline that fits in no position is said to fit in none', () => {
  const square = [
    [0, 0],
    [5, 0],
    [5, 5],
    [0, 5],
  ] as const
  const set = readSet([
    drawGerber(
      'profile.gbr',
      'Profile,NP',
      square.map((from, at) => ({ stroke: [from, square[(at + 1) % 4] ?? from], widthMm: 0.1 })),
    ),
  ])
  const facts = measureOnPlan(set, buildCopperStack(set), GROUND)
  expect(facts.unplacedReason).toBe('the outline of the artwork fits the plan in no position')
  expect(facts.bands).toEqual([])
})
