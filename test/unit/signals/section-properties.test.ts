import { describe, expect, test } from 'vitest'
import { createRandomStream } from '@/lib/engine/numerics'
import {
  getLineFigures,
  getPairFigures,
  type LineSection,
  ROUGH_FINENESS,
  type SectionSolution,
  solveSection,
  USUAL_FINENESS,
} from '@/lib/engine/signals'

/*
 * What holds of every section whatever its figures: reciprocity, symmetry, scaling, and the limits far apart, very wide and without a step in permittivity.
 */

const solve = (section: LineSection, fineness = USUAL_FINENESS): SectionSolution => {
  const solution = solveSection(section, fineness)
  if (!solution.ok) throw new Error(solution.faults.join(' '))
  return solution
}

const random = createRandomStream(18)
const between = (low: number, high: number) => low + (high - low) * random.nextUniform()

interface Pair {
  readonly section: LineSection
  readonly name: string
}

/** Two unlike lines, on one layer or on two, bare, covered or between planes. */
function makePair(index: number): Pair {
  const base = between(20, 60)
  const copper = between(9, 35)
  const gap = between(15, 40)
  const cover = between(12, 50)
  const onTwo = index % 2 === 0
  const widths = [between(40, 150), between(40, 150)] as const
  const apart = onTwo ? between(-200, 200) : (widths[0] + widths[1]) / 2 + between(30, 150)
  const line = (name: string, centreUm: number, widthUm: number, bottomUm: number) => ({
    name,
    centreUm,
    bottomUm,
    bottomWidthUm: widthUm,
    topWidthUm: widthUm * between(0.8, 1),
    thicknessUm: copper,
  })
  return {
    name: `${index}: ${onTwo ? 'two layers' : 'one layer'}${index % 3 === 0 ? ', between planes' : ''}`,
    section: {
      slabs: [
        { thicknessUm: base, relativePermittivity: 3.4 },
        { thicknessUm: copper, relativePermittivity: 3.6 },
        { thicknessUm: gap, relativePermittivity: 3.2 },
        { thicknessUm: copper, relativePermittivity: 3.6 },
        { thicknessUm: cover, relativePermittivity: 3.4 },
      ],
      hasPlaneBelow: true,
      hasPlaneAbove: index % 3 === 0,
      conductors: [line('one', 0, widths[0], base), line('two', apart, widths[1], onTwo ? base + copper + gap : base)],
    },
  }
}

const PAIRS = Array.from({ length: 6 }, (_, index) => makePair(index))

describe.each(PAIRS.map(({ name, section }) => [name, section] as const))('%s', (_, section) => {
  const solution = solve(section)
  const [[c11 = 0, c12 = 0] = [], [c21 = 0, c22 = 0] = []] = solution.capacitance

  test('is reciprocal, with signs as capacitances have them', () => {
    expect(Math.abs(c12 - c21)).toBeLessThan(1e-3 * Math.sqrt(c11 * c22))
    expect(c12).toBeLessThan(0)
    expect(c11).toBeGreaterThan(-c12)
    expect(c22).toBeGreaterThan(-c12)
  })

  test('lies between what its least and its greatest permittivity would give throughout', () => {
    const pair = getPairFigures(solution)
    for (const { effectivePermittivity } of [pair.even, pair.odd]) {
      expect(effectivePermittivity).toBeGreaterThan(1)
      expect(effectivePermittivity).toBeLessThan(3.6)
    }
  })

  test('is the same mirrored, and at ten times the size', () => {
    const mirrored = solve({
      ...section,
      conductors: section.conductors.map((each) => ({ ...each, centreUm: -each.centreUm })),
    })
    const larger = solve({
      ...section,
      slabs: section.slabs.map((slab) => ({ ...slab, thicknessUm: 10 * slab.thicknessUm })),
      conductors: section.conductors.map((each) => ({
        ...each,
        centreUm: 10 * each.centreUm,
        bottomUm: 10 * each.bottomUm,
        bottomWidthUm: 10 * each.bottomWidthUm,
        topWidthUm: 10 * each.topWidthUm,
        thicknessUm: 10 * each.thicknessUm,
      })),
    })
    for (const other of [mirrored, larger]) {
      expect(getPairFigures(other).differentialOhm / getPairFigures(solution).differentialOhm).toBeCloseTo(1, 6)
    }
  })

  test('converges: a finer mesh moves it by less than a part in a thousand', () => {
    const finer = solve(section, { cornerShare: 5e-4, growth: 1.8, cornerGrowth: 4, order: 5 })
    const ratio = getPairFigures(solution).differentialOhm / getPairFigures(finer).differentialOhm
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-3)
    const rough = getPairFigures(solve(section, ROUGH_FINENESS)).differentialOhm
    expect(Math.abs(rough / getPairFigures(finer).differentialOhm - 1)).toBeLessThan(5e-3)
  })

  test('turned over, plane above in place of below, it is the same', () => {
    const height = section.slabs.reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
    const turned = solve({
      slabs: section.slabs.toReversed(),
      hasPlaneBelow: section.hasPlaneAbove,
      hasPlaneAbove: true,
      conductors: section.conductors.map((each) => ({
        ...each,
        bottomUm: height - each.bottomUm - each.thicknessUm,
        bottomWidthUm: each.topWidthUm,
        topWidthUm: each.bottomWidthUm,
      })),
    })
    const ratio = getPairFigures(turned).differentialOhm / getPairFigures(solution).differentialOhm
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-5)
  })
})

const single = (widthUm: number, slabUm = 50, permittivity = 3.4): LineSection => ({
  slabs: [{ thicknessUm: slabUm, relativePermittivity: permittivity }],
  hasPlaneBelow: true,
  hasPlaneAbove: false,
  conductors: [
    { name: 'line', centreUm: 0, bottomUm: 50, bottomWidthUm: widthUm, topWidthUm: widthUm, thicknessUm: 18 },
  ],
})

describe('limits', () => {
  test('far apart, a pair is two lines', () => {
    const alone = getLineFigures(solve(single(100))).impedanceOhm
    const [line] = single(100).conductors
    if (line === undefined) throw new Error('no line')
    const apart = solve({ ...single(100), conductors: [line, { ...line, name: 'other', centreUm: 3000 }] })
    const pair = getPairFigures(apart)
    expect(Math.abs(pair.differentialOhm / (2 * alone) - 1)).toBeLessThan(1e-3)
    expect(Math.abs(pair.couplingCoefficient)).toBeLessThan(1e-3)
  })

  test('very wide, a line is a plate: its impedance times its width over the gap goes to the plate capacitor', () => {
    const widths = [2000, 4000]
    const ohms = widths.map((width) => getLineFigures(solve(single(width))).impedanceOhm)
    // The fringe adds a constant width to the plate: from two widths it falls out.
    const [one = 0, two = 0] = ohms
    const slope = (1 / two - 1 / one) / 2000
    const plate = Math.sqrt(3.4) / (376.730313668 * 50)
    expect(Math.abs(slope / plate - 1)).toBeLessThan(0.01)
  })

  test('without a step in permittivity the lines travel as in that dielectric', () => {
    const closed = solve({ ...single(100, 118), hasPlaneAbove: true })
    expect(getLineFigures(closed).effectivePermittivity).toBeCloseTo(3.4, 9)
    const air = solve(single(100, 50, 1))
    expect(getLineFigures(air).effectivePermittivity).toBeCloseTo(1, 9)
  })

  test('a wider line, a thinner dielectric and a cover each lower the impedance', () => {
    const ohm = (section: LineSection) => getLineFigures(solve(section)).impedanceOhm
    expect(ohm(single(110))).toBeLessThan(ohm(single(100)))
    expect(ohm(single(100, 93))).toBeLessThan(ohm(single(100)))
  })

  test('coplanar: a line between two grounded conductors in air, by two meshes, and by the exact thin form', () => {
    // K(k)/K'(k) by arithmetic and geometric means; thin coplanar line with wide sides: Z = η/4 K'(k)/K(k), k = w/(w+2s). Exact for endless sides.
    const mean = (a: number, b: number): number => (Math.abs(a - b) < 1e-14 ? a : mean((a + b) / 2, Math.sqrt(a * b)))
    const [w, s, side] = [100, 60, 20_000]
    const strip = (name: string, centreUm: number, widthUm: number, isGrounded: boolean) => ({
      name,
      centreUm,
      bottomUm: 0,
      bottomWidthUm: widthUm,
      topWidthUm: widthUm,
      thicknessUm: 0,
      isGrounded,
    })
    const section: LineSection = {
      slabs: [],
      hasPlaneBelow: false,
      hasPlaneAbove: false,
      conductors: [
        strip('line', 0, w, false),
        strip('left', -(w / 2 + s + side / 2), side, true),
        strip('right', w / 2 + s + side / 2, side, true),
      ],
    }
    const k = w / (w + 2 * s)
    const exact = (376.730313668 / 4) * (mean(1, Math.sqrt(1 - k * k)) / mean(1, k))
    const found = [1e-4, 1e-6].map(
      (cornerShare) =>
        getLineFigures(solve(section, { cornerShare, growth: 1.5, cornerGrowth: 2, order: 6 })).impedanceOhm,
    )
    expect(Math.abs((found[0] ?? 0) / (found[1] ?? 1) - 1)).toBeLessThan(1e-3)
    expect(Math.abs((found[1] ?? 0) / exact - 1)).toBeLessThan(2e-3)
  })
})

describe('refused, with a reason', () => {
  const line = single(100).conductors[0]
  if (line === undefined) throw new Error('no line')
  test.each([
    ['no plane and no grounded conductor', { ...single(100), hasPlaneBelow: false }, /Nothing carries the return/],
    ['a line on the plane', { ...single(100), conductors: [{ ...line, bottomUm: 0 }] }, /touches the plane below/],
    [
      'lines that overlap',
      { ...single(100), conductors: [line, { ...line, name: 'other', centreUm: 80 }] },
      /overlap or touch/,
    ],
    [
      'lines that touch',
      { ...single(100), conductors: [line, { ...line, name: 'other', centreUm: 100 }] },
      /overlap or touch/,
    ],
    ['a line through two dielectrics', { ...single(100), conductors: [{ ...line, bottomUm: 40 }] }, /two dielectrics/],
    ['etched away', { ...single(100), conductors: [{ ...line, topWidthUm: 0 }] }, /leaves no conductor/],
    ['no width', { ...single(100), conductors: [{ ...line, bottomWidthUm: Number.NaN }] }, /not a number/],
    ['a dielectric of no thickness', single(100, 0), /no thickness/],
    ['a permittivity below 1', single(100, 50, 0.5), /at least 1/],
    ['no line', { ...single(100), conductors: [] }, /no line/],
  ] as const)('%s', (_, section, reason) => {
    const answer = solveSection(section)
    expect(answer.ok).toBe(false)
    expect(answer.ok ? '' : answer.faults.join(' ')).toMatch(reason)
  })
})

describe('guards beside lines', () => {
  const COVERED: LineSection['slabs'] = [
    { thicknessUm: 50, relativePermittivity: 3.4 },
    { thicknessUm: 18, relativePermittivity: 3.6 },
    { thicknessUm: 25, relativePermittivity: 3.4 },
  ]
  const line = (centreUm: number, widthUm = 110, isGrounded = false) => ({
    name: `at ${centreUm}`,
    centreUm,
    bottomUm: 50,
    bottomWidthUm: widthUm,
    topWidthUm: 0.9 * widthUm,
    thicknessUm: 18,
    ...(isGrounded ? { isGrounded } : {}),
  })
  const make = (conductors: LineSection['conductors'], hasPlaneAbove = false): LineSection => ({
    slabs: hasPlaneAbove ? [...COVERED, { thicknessUm: 50, relativePermittivity: 3.4 }] : COVERED,
    hasPlaneBelow: true,
    hasPlaneAbove,
    conductors,
  })

  test.each([
    ['one between two lines', (off: number) => make([line(0), line(220, 110 + off, true), line(440)])],
    [
      'one on either side of a pair',
      (off: number) => make([line(-220, 90, true), line(0), line(220), line(440, 90 + off, true)]),
    ],
    ['one on either side of a line', (off: number) => make([line(-220, 90, true), line(0), line(220, 90 + off, true)])],
    [
      'one between two lines, between planes',
      (off: number) => make([line(0), line(220, 110 + off, true), line(440)], true),
    ],
  ] as const)('%s: by halves and whole give the same', (_, makeWith) => {
    // A nanometre of width takes the symmetry away, and with it the halves.
    const [halves, whole] = [solve(makeWith(0)), solve(makeWith(1e-3))]
    expect(halves.names).toEqual(whole.names)
    for (const matrix of ['capacitance', 'capacitanceInAir'] as const) {
      const scale = Math.max(...whole[matrix].flat().map(Math.abs))
      for (const [row, values] of whole[matrix].entries())
        for (const [column, value] of values.entries())
          expect(Math.abs((halves[matrix][row]?.[column] ?? Number.NaN) - value) / scale).toBeLessThan(2e-4)
    }
  })

  test('take crosstalk away, and capacitance to the planes up', () => {
    const coupling = (solution: SectionSolution) => {
      const [[c11 = 0, c12 = 0] = []] = solution.capacitance
      return { mutual: -c12 / c11, own: c11 }
    }
    const open = coupling(solve(make([line(0), line(440)])))
    const guarded = coupling(solve(make([line(0), line(220, 110, true), line(440)])))
    // A conductor more that is grounded takes field from the others, and gives none: exact, however it lies.
    expect(guarded.mutual).toBeLessThan(open.mutual)
    expect(guarded.own).toBeGreaterThan(open.own)
  })
})

test('a line so wide for its height that its solution would take minutes is refused with that reason', () => {
  const makeWide = (widthUm: number): LineSection => ({
    slabs: [{ thicknessUm: 118, relativePermittivity: 3.4 }],
    hasPlaneBelow: true,
    hasPlaneAbove: true,
    conductors: [
      { name: 'line', centreUm: 0, bottomUm: 50, bottomWidthUm: widthUm, topWidthUm: widthUm, thicknessUm: 18 },
    ],
  })
  const refused = solveSection(makeWide(100_000))
  expect(refused.ok ? [] : refused.faults.join(' ')).toContain('too wide for its height')
  expect(solveSection(makeWide(5_000)).ok).toBe(true)
})
