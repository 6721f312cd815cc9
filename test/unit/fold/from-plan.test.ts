import { describe, expect, it } from 'vitest'
import { checkFolded } from '@/lib/fold/clash/check-folded'
import { type BendMeasures, flatPartOfPlan } from '@/lib/fold/from-plan/flat-part-of-plan'
import { foldPart } from '@/lib/fold/kinematics/fold-part'
import { EMPTY_PLAN, type Plan, startingShape } from '@/lib/plan'

type Line = readonly [from: readonly [number, number], to: readonly [number, number]]

const path = ([from, to]: Line) => [
  { atMm: [from[0], from[1]] as [number, number], viaMm: null },
  { atMm: [to[0], to[1]] as [number, number], viaMm: null },
]

const HEIGHTS = new Map([
  ['rigid', { bottomMm: -0.3, topMm: 0.3 }],
  ['flex', { bottomMm: -0.05, topMm: 0.05 }],
])

const bendOf = (angleDeg: number, insideMm: number): BendMeasures => ({
  angleDeg,
  lengthMm: ((Math.abs(angleDeg) * Math.PI) / 180) * (insideMm + 0.05),
  neutralMm: 0,
})

interface Drawn {
  readonly shape: Plan
  readonly dividing?: readonly Line[]
  readonly areas: readonly (readonly [zoneId: string, at: readonly [number, number]])[]
  readonly bends: readonly Line[]
}

const draw = ({ shape, dividing = [], areas, bends }: Drawn): Plan => ({
  ...shape,
  dividingLines: dividing.map((line, index) => ({ id: `d${index}`, name: `line ${index}`, nodes: path(line) })),
  areas: areas.map(([zoneId, [x, y]], index) => ({ id: `a${index}`, name: `area ${index}`, zoneId, markMm: [x, y] })),
  bendLines: bends.map(([from, to], index) => ({
    id: `l${index}`,
    bendId: `b${index}`,
    fromMm: [from[0], from[1]],
    toMm: [to[0], to[1]],
  })),
})

const shape = (kind: Parameters<typeof startingShape>[0], lengthMm: number, widthMm: number, armMm: number): Plan => {
  const made = startingShape(kind, { lengthMm, widthMm, armMm, cornerRadiusMm: 1 })
  if (made === null) throw new Error('no such shape')
  return made
}

/** 40 x 10 strip: rigid 10, flex 20, rigid 10, bent in the middle. */
const strip = (bends: readonly Line[]) =>
  draw({
    shape: shape('strip', 40, 10, 10),
    dividing: [
      [
        [10, 0],
        [10, 10],
      ],
      [
        [30, 0],
        [30, 10],
      ],
    ],
    areas: [
      ['rigid', [5, 5]],
      ['flex', [20, 5]],
      ['rigid', [35, 5]],
    ],
    bends,
  })

const build = (plan: Plan, bends: readonly BendMeasures[]) => {
  const result = flatPartOfPlan(plan, HEIGHTS, new Map(bends.map((bend, index) => [`b${index}`, bend])))
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('; '))
  return result.value
}

const issuesOf = (plan: Plan, bends: readonly BendMeasures[]) => {
  const result = flatPartOfPlan(plan, HEIGHTS, new Map(bends.map((bend, index) => [`b${index}`, bend])))
  return result.ok ? [] : result.issues.map(({ code }) => code)
}

const areaOfLoops = (loops: readonly (readonly (readonly [number, number])[])[]) =>
  loops.reduce(
    (sum, loop) =>
      sum +
      loop.reduce((area, [x, y], index) => {
        const [u, v] = loop[(index + 1) % loop.length] ?? [x, y]
        return area + (x * v - u * y) / 2
      }, 0),
    0,
  )

describe('a part to fold, from its plan', () => {
  it('a strip with one bend: two plates, one band, and no area is lost', () => {
    const { part } = build(
      strip([
        [
          [20, 0],
          [20, 10],
        ],
      ]),
      [bendOf(180, 1)],
    )
    expect(part.plates).toHaveLength(2)
    expect(part.bands).toHaveLength(1)
    const [band] = part.bands
    expect(band?.lengthMm).toBeCloseTo(Math.PI * 1.05, 12)
    const all = [...part.plates.flatMap(({ solids }) => solids), ...part.bands]
    expect(all.reduce((sum, { loops }) => sum + areaOfLoops(loops), 0)).toBeCloseTo(400, 4)
    // Each side: a rigid area and what of the flexible one lies before the band.
    expect(part.plates.map(({ solids }) => solids.length)).toEqual([2, 2])
    expect(part.plates.flatMap(({ solids }) => solids.map(({ topMm }) => topMm)).sort()).toEqual([0.05, 0.05, 0.3, 0.3])
  })

  it('folds by half a turn: the rigid ends meet where their thickness leaves no room, and do not where it does', () => {
    const plan = strip([
      [
        [20, 0],
        [20, 10],
      ],
    ])
    for (const [insideMm, kinds] of [
      [1, []],
      // Rigid faces stand 0.25 mm over the flexible ones on either side: 0.4 mm between the leaves is not enough.
      [0.2, ['touches']],
    ] as const) {
      const { part } = build(plan, [bendOf(180, insideMm)])
      const [fixed] = part.plates
      const found = checkFolded(part, [], foldPart(part, fixed?.id ?? ''), 0.1)
      expect(
        found.clashes.slice(0, 1).map(({ kind }) => kind),
        `inside radius ${insideMm} mm`,
      ).toEqual(kinds)
    }
  })

  it('the direction in which an axis is drawn, and the entry order of lines, change no distance in the folded part', () => {
    const measure = (plan: Plan) => {
      const { part } = build(plan, [bendOf(120, 1.5), bendOf(-70, 2)])
      const folded = foldPart(part, part.plates[0]?.id ?? '')
      const box = checkFolded(part, [], folded, 0.1)
      return box.least?.lowerMm ?? Number.NaN
    }
    const first: Line = [
      [16, 0],
      [16, 10],
    ]
    const second: Line = [
      [25, 0],
      [25, 10],
    ]
    const turned: Line = [
      [25, 10],
      [25, 0],
    ]
    const plain = measure(strip([first, second]))
    expect(plain).toBeGreaterThan(0)
    expect(measure(strip([first, turned]))).toBeCloseTo(plain, 9)
    const reversed = strip([first, second])
    expect(
      measure({
        ...reversed,
        dividingLines: [...reversed.dividingLines].reverse(),
        areas: [...reversed.areas].reverse(),
      }),
    ).toBeCloseTo(plain, 9)
  })

  it('a bend that begins at the rigid edge shares its border', () => {
    const bend = bendOf(90, 2)
    const { part } = build(
      strip([
        [
          [10 + bend.lengthMm / 2, 0],
          [10 + bend.lengthMm / 2, 10],
        ],
      ]),
      [bend],
    )
    expect([part.plates.length, part.bands.length]).toEqual([2, 1])
  })

  it('two bends side by side share a plate without extent', () => {
    const bend = bendOf(90, 2)
    const at = (x: number): Line => [
      [x, 0],
      [x, 10],
    ]
    const { part } = build(strip([at(15), at(15 + bend.lengthMm)]), [bend, bend])
    expect(part.bands).toHaveLength(2)
    expect(part.plates).toHaveLength(3)
    expect(foldPart(part, part.plates[0]?.id ?? '').closures).toEqual([])
  })

  it('arms of a T and a cross fold each by itself', () => {
    const tee = draw({
      shape: shape('T', 40, 30, 8),
      areas: [['flex', [20, 26]]],
      bends: [
        [
          [20 - 4, 10],
          [20 + 4, 10],
        ],
        [
          [8, 22],
          [8, 30],
        ],
      ],
    })
    const { part } = build(tee, [bendOf(90, 1), bendOf(180, 1)])
    expect([part.plates.length, part.bands.length]).toEqual([3, 2])
  })

  it('refuses, with the bend: bands that overlap, a bend across one arm of a ring alone, an axis outside, what is not known', () => {
    expect(
      issuesOf(
        strip([
          [
            [20, 0],
            [20, 10],
          ],
          [
            [21, 0],
            [21, 10],
          ],
        ]),
        [bendOf(90, 2), bendOf(90, 2)],
      ),
    ).toContain('overlap')
    const ring = draw({
      shape: shape('ring', 40, 30, 6),
      areas: [['flex', [3, 15]]],
      bends: [
        [
          [20, 0],
          [20, 6],
        ],
      ],
    })
    expect(issuesOf(ring, [bendOf(90, 1)])).toEqual(['torn'])
    const both = {
      ...ring,
      bendLines: [
        ...ring.bendLines,
        { id: 'l1', bendId: 'b0', fromMm: [20, 24] as [number, number], toMm: [20, 30] as [number, number] },
      ],
    }
    const { part } = build(both, [bendOf(90, 1)])
    expect(
      foldPart(part, part.plates[0]?.id ?? '').closures.every(
        ({ offsetMm, turnDeg }) => Math.hypot(...offsetMm) < 1e-9 && Math.hypot(...turnDeg) < 1e-9,
      ),
    ).toBe(true)
    expect(
      issuesOf(
        strip([
          [
            [60, 0],
            [60, 10],
          ],
        ]),
        [bendOf(90, 1)],
      ),
    ).toEqual(['no-place'])
    expect(
      issuesOf(
        strip([
          [
            [20, 0],
            [20, 10],
          ],
        ]),
        [],
      ),
    ).toEqual(['bend'])
    expect(issuesOf(EMPTY_PLAN, [])).toEqual(['area'])
  })

  it('a band that is wider than its zone meets the rigid area at its end and is cut off there, which is said', () => {
    const wide = strip([
      [
        [20, 0],
        [20, 10],
      ],
    ])
    expect(issuesOf(wide, [bendOf(180, 8)])).toContain('side')
  })
})

describe('an axis that runs over a window', () => {
  const wide = strip([
    [
      [20, 0],
      [20, 10],
    ],
  ])
  const windowed: Plan = {
    ...wide,
    areas: wide.areas.map((area) => ({ ...area, markMm: [area.markMm[0], 1] })),
    cutOuts: [
      {
        id: 'w',
        name: 'Window',
        nodes: [
          { atMm: [14, 3], viaMm: null },
          { atMm: [26, 3], viaMm: null },
          { atMm: [26, 7], viaMm: null },
          { atMm: [14, 7], viaMm: null },
        ],
      },
    ],
  }
  const flat = flatPartOfPlan(windowed, HEIGHTS, new Map([['b0', bendOf(90, 1)]]))

  it('bends the strips on both sides of it as one, which leaves nothing where they meet again', () => {
    if (!flat.ok) throw new Error(flat.issues.map(({ message }) => message).join('; '))
    const { part, pieces } = flat.value
    expect(part.bands).toHaveLength(2)
    expect(part.plates).toHaveLength(2)
    const { closures } = foldPart(part, pieces[0]?.plateId ?? '')
    expect(closures).toHaveLength(1)
    for (const gap of [...(closures[0]?.offsetMm ?? [1]), ...(closures[0]?.turnDeg ?? [1])]) {
      expect(Math.abs(gap)).toBeLessThan(1e-9)
    }
  })

  it('has the same envelope as the strip without a window', () => {
    const whole = flatPartOfPlan(wide, HEIGHTS, new Map([['b0', bendOf(90, 1)]]))
    if (!flat.ok || !whole.ok) throw new Error('not folded')
    const boxes = [flat.value, whole.value].map(
      ({ part, pieces }) => checkFolded(part, [], foldPart(part, pieces[0]?.plateId ?? ''), 0.1).envelope,
    )
    for (const axis of [0, 1, 2] as const) {
      expect(boxes[0]?.low[axis]).toBeCloseTo(boxes[1]?.low[axis] ?? 0, 9)
      expect(boxes[0]?.high[axis]).toBeCloseTo(boxes[1]?.high[axis] ?? 0, 9)
    }
  })
})
