import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildCopperStack, gatherFacts, readSet } from '@/lib/artwork'
import { findHatch } from '@/lib/artwork/copper/hatch'
import { type Drawn, drawGerber, type Writing } from './draw-set'
import { OTHER_TURNS, turned, WHOLE_TURNS } from './turned'

type Point = readonly [number, number]

const NM = 1e6
const setOf = (objects: readonly Drawn[], writing: Writing) =>
  readSet([drawGerber('top.gbr', 'Copper,L1,Top', objects, writing)])

function hatchOf(objects: readonly Drawn[], writing: Writing = {}) {
  const [layer] = buildCopperStack(setOf(objects, writing)).layers
  if (layer === undefined) throw new Error('no copper')
  return findHatch(
    layer.edges,
    Array.from({ length: layer.edges.count }, (_, at) => at),
  )
}
const etchingOf = (objects: readonly Drawn[], writing: Writing = {}) =>
  gatherFacts(setOf(objects, writing), () => '').files[0]?.copper?.etching ?? null

const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]
const steps = (count: number) => Array.from({ length: count }, (_, at) => at)

/** 9 x 9 openings between bars along both axes, in three ways to draw them. */
const HATCHES: Readonly<Record<string, (barMm: number, pitchMm: number) => Drawn[]>> = {
  strokes: (barMm, pitchMm) =>
    steps(10).flatMap((at): Drawn[] => [
      {
        stroke: [
          [0, at * pitchMm],
          [9 * pitchMm, at * pitchMm],
        ],
        widthMm: barMm,
      },
      {
        stroke: [
          [at * pitchMm, 0],
          [at * pitchMm, 9 * pitchMm],
        ],
        widthMm: barMm,
      },
    ]),
  'areas of bars': (barMm, pitchMm) =>
    steps(10).flatMap((at): Drawn[] => [
      { area: box(-barMm, at * pitchMm - barMm / 2, 9 * pitchMm + barMm, at * pitchMm + barMm / 2) },
      { area: box(at * pitchMm - barMm / 2, -barMm, at * pitchMm + barMm / 2, 9 * pitchMm + barMm) },
    ]),
  'openings in an area': (barMm, pitchMm) => [
    { area: box(-barMm, -barMm, 9 * pitchMm + barMm, 9 * pitchMm + barMm) },
    ...steps(81).map((at): Drawn => {
      const [x, y] = [(at % 9) * pitchMm + barMm / 2, Math.floor(at / 9) * pitchMm + barMm / 2]
      return { area: box(x, y, x + pitchMm - barMm, y + pitchMm - barMm), isClear: true }
    }),
  ],
}
const HATCH_WAYS = Object.entries(HATCHES)

describe.each([...WHOLE_TURNS, ...OTHER_TURNS])('a hatch %s', (_, writing) => {
  test.each(HATCH_WAYS)('drawn by %s has its bar, pitch, angle and openings', (_name, draw) => {
    const found = hatchOf(draw(0.2, 0.5), writing)
    const [ax, ay] = (writing.move ?? ((point: Point) => point))([0, 0])
    const [bx, by] = (writing.move ?? ((point: Point) => point))([1, 0])
    const wanted = (((Math.atan2(by - ay, bx - ax) * 180) / Math.PI) % 90) + 90
    expect((found?.barNm ?? 0) / NM).toBeCloseTo(0.2, 5)
    expect((found?.pitchNm ?? 0) / NM).toBeCloseTo(0.5, 5)
    const off = (((found?.turnDeg ?? 1e3) - wanted + 720) % 90) + 0
    expect(Math.min(off, 90 - off)).toBeLessThan(0.01)
    expect(found?.openFraction).toBeCloseTo(0.36, 4)
  })
})

test('any hatch is read to 2 um and 0.05°, at any turn', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 80, max: 400 }),
      fc.integer({ min: 30, max: 80 }),
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.boolean(),
      fc.constantFrom(...HATCH_WAYS),
      (barUm, openPct, deg, isMirrored, [, draw]) => {
        const barMm = barUm / 1000
        const pitchMm = Math.round((barUm / (1 - openPct / 100)) * 1) / 1000
        const found = hatchOf(draw(barMm, pitchMm), { move: turned(deg, isMirrored, [1, 2]), isMirrored })
        expect(Math.abs((found?.barNm ?? 0) / NM - barMm)).toBeLessThan(0.002)
        expect(Math.abs((found?.pitchNm ?? 0) / NM - pitchMm)).toBeLessThan(0.002)
        const off = ((((isMirrored ? -1 : 1) * 0 + deg - (found?.turnDeg ?? 1e3)) % 90) + 90) % 90
        expect(Math.min(off, 90 - off)).toBeLessThan(0.05)
      },
    ),
    { numRuns: 30 },
  )
})

test('what is no hatch is none: conductors, lands, round holes in a plane, a solid plane, a comb', () => {
  const bus = steps(20).map(
    (at): Drawn => ({
      stroke: [
        [0, at * 0.5],
        [10, at * 0.5],
      ],
      widthMm: 0.2,
    }),
  )
  const lands = steps(81).map(
    (at): Drawn => ({
      area: box((at % 9) * 0.5, Math.floor(at / 9) * 0.5, (at % 9) * 0.5 + 0.3, Math.floor(at / 9) * 0.5 + 0.3),
    }),
  )
  const plane: Drawn = { area: box(-1, -1, 12, 12) }
  const holes = steps(81).map(
    (at): Drawn => ({ pad: [(at % 9) * 0.8, Math.floor(at / 9) * 0.8], sizeMm: 0.5, isClear: true }),
  )
  const comb = [
    ...bus,
    {
      stroke: [
        [0, 0],
        [0, 9.5],
      ],
      widthMm: 0.2,
    } as Drawn,
  ]
  for (const objects of [bus, lands, [plane], [plane, ...holes], comb]) expect(hatchOf(objects)).toBeNull()
})

describe.each([...WHOLE_TURNS, ...OTHER_TURNS])('copper %s', (_, writing) => {
  const even: Drawn[] = [
    { area: box(0, 0, 5, 5) },
    {
      stroke: [
        [5, 2],
        [12, 2],
      ],
      widthMm: 0.3,
    },
    {
      arc: [
        [12, 2],
        [14, 4],
        [12, 4],
      ],
      widthMm: 0.3,
    },
    { pad: [14, 4], sizeMm: 0.8 },
  ]

  test('that etches evenly has no sliver, no slit and no sharp corner', () => {
    const found = etchingOf(even, writing)
    expect(found?.leastCopper).toBeNull()
    expect(found?.leastSlot).toBeNull()
    expect(found?.sharpestTip).toBeNull()
    expect(found?.sharpestGap?.deg ?? 90).toBeGreaterThan(60)
  })

  test('has a sliver between two openings, straight and round, at its place', () => {
    const straight = etchingOf(
      [...even, { area: box(1, 1, 2, 2), isClear: true }, { area: box(2.06, 1, 3, 2), isClear: true }],
      writing,
    )
    expect(straight?.leastCopper?.mm).toBeCloseTo(0.06, 4)
    const round = etchingOf(
      [...even, { pad: [1, 1], sizeMm: 1, isClear: true }, { pad: [1.864, 1.648], sizeMm: 1, isClear: true }],
      writing,
    )
    expect(Math.abs((round?.leastCopper?.mm ?? 0) - 0.08)).toBeLessThan(0.002)
    const [x, y] = (writing.move ?? ((point: Point) => point))([1.432, 1.324])
    expect(round?.leastCopper?.atMm[0]).toBeCloseTo(x, 1)
    expect(round?.leastCopper?.atMm[1]).toBeCloseTo(y, 1)
  })

  test('has a dot that is too small, and one that is not', () => {
    expect(etchingOf([...even, { pad: [20, 1], sizeMm: 0.05 }], writing)?.leastCopper?.mm).toBeCloseTo(0.05, 2)
    expect(etchingOf([...even, { pad: [20, 1], sizeMm: 0.3 }], writing)?.leastCopper).toBeNull()
  })

  test('has a slit within one piece, and none between two', () => {
    const slit = etchingOf([...even, { area: box(1, 1, 1.05, 4), isClear: true }], writing)
    expect(slit?.leastSlot?.mm).toBeCloseTo(0.05, 4)
    expect(etchingOf([...even, { area: box(5.05, 3, 8, 5) }], writing)?.leastSlot).toBeNull()
  })

  test('has a point, and a wedge where two conductors part', () => {
    const tip = etchingOf(
      [
        ...even,
        {
          area: [
            [0, 8],
            [6, 8],
            [6, 9],
          ],
        },
      ],
      writing,
    )
    expect(Math.abs((tip?.sharpestTip?.deg ?? 0) - (Math.atan2(1, 6) * 180) / Math.PI)).toBeLessThan(1)
    const rad = (25 * Math.PI) / 180
    const wedge = etchingOf(
      [
        {
          stroke: [
            [0, 0],
            [10, 0],
          ],
          widthMm: 0.2,
        },
        {
          stroke: [
            [0, 0],
            [10 * Math.cos(rad), 10 * Math.sin(rad)],
          ],
          widthMm: 0.2,
        },
      ],
      writing,
    )
    expect(Math.abs((wedge?.sharpestGap?.deg ?? 0) - 25)).toBeLessThan(1)
    const square = etchingOf(
      [
        {
          stroke: [
            [0, 0],
            [10, 0],
          ],
          widthMm: 0.2,
        },
        {
          stroke: [
            [5, 0],
            [5, 4],
          ],
          widthMm: 0.2,
        },
      ],
      writing,
    )
    expect(square?.sharpestGap).toBeNull()
  })
})

test('tiles change nothing: a sliver, a slit and a wedge among hundreds of conductors are found alike when the set is turned', () => {
  const many = steps(600).map((at): Drawn => {
    const [x, y] = [(at % 25) * 2, Math.floor(at / 25) * 1]
    return {
      stroke: [
        [x, y],
        [x + 1.6, y],
      ],
      widthMm: 0.3,
    }
  })
  const odd: Drawn[] = [
    {
      stroke: [
        [30, 25.5],
        [50, 25.5],
      ],
      widthMm: 0.06,
    },
    {
      area: [
        [0, 60],
        [40, 60],
        [40, 70],
        [0, 70],
      ],
    },
    { area: box(10, 62, 30, 62.04), isClear: true },
    {
      stroke: [
        [50, 60],
        [70, 60],
      ],
      widthMm: 0.3,
    },
    {
      stroke: [
        [50, 60],
        [70, 65],
      ],
      widthMm: 0.3,
    },
  ]
  const ways = [...WHOLE_TURNS.filter((_, at) => at % 3 === 0), ...OTHER_TURNS.slice(0, 2)]
  const figures = ways.map(([, writing]) => {
    const found = etchingOf([...many, ...odd], writing)
    return [found?.leastCopper?.mm, found?.leastSlot?.mm, found?.sharpestGap?.deg].map((value) => value ?? 0)
  })
  for (const [copper = 0, slot = 0, gap = 0] of figures) {
    expect(copper).toBeCloseTo(0.06, 3)
    expect(slot).toBeCloseTo(0.04, 3)
    expect(Math.abs(gap - (Math.atan2(5, 20) * 180) / Math.PI)).toBeLessThan(1)
  }
})
