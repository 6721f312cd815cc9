import { expect, test } from 'vitest'
import {
  findChargedFaces,
  findLineLoss,
  findLossBases,
  getLineFigures,
  type LineSection,
  solveSection,
} from '@/lib/engine/signals'

const COPPER = { resistivityOhmMm2PerM: 1 / 58, roughnessUm: 0 }

function makeSection(widthUm: number, heightUm: number, permittivity: number, coverUm = 0): LineSection {
  return {
    slabs: [
      { thicknessUm: heightUm, relativePermittivity: permittivity },
      ...(coverUm === 0 ? [] : [{ thicknessUm: 18 + coverUm, relativePermittivity: permittivity }]),
    ],
    hasPlaneBelow: true,
    hasPlaneAbove: coverUm > 0,
    conductors: [
      { name: 'line', centreUm: 0, bottomUm: heightUm, bottomWidthUm: widthUm, topWidthUm: widthUm, thicknessUm: 18 },
    ],
  }
}

const basisOf = (section: LineSection) => {
  const [basis, ...others] = findLossBases(section)
  if (basis === undefined || others.length > 0) throw new Error('not one line')
  return basis
}

const modesOf = (section: LineSection) => {
  const [odd, even] = findLossBases(section)
  if (odd?.mode !== 'odd' || even?.mode !== 'even') throw new Error('not a pair')
  return { odd, even }
}

/** The same line twice, upright, beside each other. */
function makePair(widthUm: number, spaceUm: number, times = 1): LineSection {
  const section = makeSection(widthUm, 50, 3.4)
  const [line] = section.conductors
  if (line === undefined) throw new Error('no line')
  const at = (name: string, centreUm: number) => ({
    name,
    centreUm: centreUm * times,
    bottomUm: line.bottomUm * times,
    bottomWidthUm: widthUm * times,
    topWidthUm: widthUm * times,
    thicknessUm: line.thicknessUm * times,
  })
  return {
    ...section,
    slabs: section.slabs.map((slab) => ({ ...slab, thicknessUm: slab.thicknessUm * times })),
    conductors: [at('one', 0), at('other', widthUm + spaceUm)],
  }
}

test('a very wide line over a plane has the resistance of two plane faces, 2/w times the surface resistance', () => {
  // Exact for parallel plates; edges of a line of finite width carry a little besides.
  for (const [ratio, slack] of [
    [50, 0.12],
    [200, 0.04],
    [800, 0.015],
  ] as const) {
    const widthUm = ratio * 50
    const { resistanceShape } = basisOf(makeSection(widthUm, 50, 3.4))
    expect(Math.abs((resistanceShape * widthUm * 1e-6) / 2 - 1), `w = ${ratio} h`).toBeLessThan(slack)
  }
})

test('an embedded line has the loss of its dielectric, π f √ε tan δ / c, whatever its shape', () => {
  const basis = basisOf(makeSection(110, 50, 3.4, 50))
  expect(basis.dielectricShare).toBeCloseTo(1, 3)
  // 8.686 · π · 1e9 · √3.4 · 0.01 / 299792458, exact mathematics.
  expect(findLineLoss(basis, 1000, COPPER).dielectricDbPerMPerHundredth).toBeCloseTo(1.6783, 2)
})

test('a bare line has part of its field in air, and loses less there', () => {
  const { dielectricShare } = basisOf(makeSection(110, 50, 3.4))
  expect(dielectricShare).toBeGreaterThan(0.8)
  expect(dielectricShare).toBeLessThan(0.97)
})

test('loss of smooth copper goes with the root of the frequency once skin is thin; rough copper at most doubles it', () => {
  const basis = basisOf(makeSection(110, 50, 3.4))
  const at = (mhz: number, roughnessUm = 0) => findLineLoss(basis, mhz, { ...COPPER, roughnessUm })
  expect(at(40_000).conductorDbPerM / at(10_000).conductorDbPerM).toBeCloseTo(2, 2)
  // Skin depth of the annealed copper standard at 1 GHz: exact mathematics.
  expect(at(1000).skinDepthUm).toBeCloseTo(2.089807, 4)
  expect(at(10_000, 50).conductorDbPerM / at(10_000).conductorDbPerM).toBeCloseTo(2, 2)
  expect(at(0.001).conductorDbPerM).toBeCloseTo(
    ((20 / Math.LN10) * (1 / 58 / (0.11 * 0.018))) / 2 / basis.impedanceOhm,
    3,
  )
})

test('charge on the faces adds up to the capacitance', () => {
  const section = makeSection(110, 50, 3.4)
  const solved = solveSection(section)
  const faces = findChargedFaces(section, [1])
  if (!solved.ok || faces === null) throw new Error('no solution')
  const total = faces.reduce(
    (sum, { fromUm, toUm, density }) => sum + density * Math.hypot(toUm[0] - fromUm[0], toUm[1] - fromUm[1]),
    0,
  )
  expect(total * 8.8541878128e-12).toBeCloseTo(solved.capacitance[0]?.[0] ?? 0, 14)
  expect(getLineFigures(solved).impedanceOhm).toBeGreaterThan(0)
})

test('a line in air over a plane is the same with and without a slab of air', () => {
  const section = makeSection(110, 50, 1)
  const [withSlab, without] = [solveSection(section), solveSection({ ...section, slabs: [] })]
  if (!withSlab.ok || !without.ok) throw new Error('no solution')
  expect(getLineFigures(without).impedanceOhm / getLineFigures(withSlab).impedanceOhm).toBeCloseTo(1, 5)
  expect(getLineFigures(without).effectivePermittivity).toBeCloseTo(1, 9)
})

test('lines of a pair that are far apart have the losses of a line alone in both modes', () => {
  const alone = basisOf(makeSection(110, 50, 3.4))
  const { odd, even } = modesOf(makePair(110, 5000))
  for (const mode of [odd, even]) {
    expect(mode.impedanceOhm / alone.impedanceOhm).toBeCloseTo(1, 3)
    expect(mode.resistanceShape / alone.resistanceShape).toBeCloseTo(1, 2)
    expect(mode.dielectricShare / alone.dielectricShare).toBeCloseTo(1, 3)
    expect(mode.crossSectionMm2).toBe(alone.crossSectionMm2)
  }
})

test('wide lines one above the other have the resistance of the faces between them and the planes', () => {
  // Exact for parallel plates: field between the lines 2/s and to the nearer plane 1/h shares the current out; each face carries its share.
  const [s, h, t] = [60, 100, 18]
  const heightUm = 2 * h + 2 * t + s
  const oddTimesWidth = (4 / s ** 2 + 2 / h ** 2) / (2 / s + 1 / h) ** 2
  // Edges take part of the current of lines driven alike: that falls in proportion to the width.
  for (const [widthUm, evenSlack] of [
    [3000, 0.04],
    [6000, 0.02],
  ] as const) {
    const line = (name: string, bottomUm: number) => ({
      name,
      centreUm: 0,
      bottomUm,
      bottomWidthUm: widthUm,
      topWidthUm: widthUm,
      thicknessUm: t,
    })
    const { odd, even } = modesOf({
      slabs: [{ thicknessUm: heightUm, relativePermittivity: 3.4 }],
      hasPlaneBelow: true,
      hasPlaneAbove: true,
      conductors: [line('lower', h), line('upper', h + t + s)],
    })
    expect(Math.abs((odd.resistanceShape * widthUm * 1e-6) / oddTimesWidth - 1)).toBeLessThan(1e-3)
    expect(Math.abs((even.resistanceShape * widthUm * 1e-6) / 2 - 1)).toBeLessThan(evenSlack)
    expect(odd.dielectricShare).toBeCloseTo(1, 6)
    expect(even.dielectricShare).toBeCloseTo(1, 6)
  }
})

test('a pair of twice the size has half the resistance at the faces, and the same share in dielectrics', () => {
  const [once, twice] = [modesOf(makePair(110, 60)), modesOf(makePair(110, 60, 2))]
  for (const mode of ['odd', 'even'] as const) {
    expect(once[mode].resistanceShape / twice[mode].resistanceShape).toBeCloseTo(2, 5)
    expect(twice[mode].dielectricShare).toBeCloseTo(once[mode].dielectricShare, 6)
    expect(twice[mode].impedanceOhm).toBeCloseTo(once[mode].impedanceOhm, 5)
  }
})

test('lines close together lose more when driven against each other, and have more of that field in air', () => {
  const { odd, even } = modesOf(makePair(110, 30))
  const [oddLoss, evenLoss] = [odd, even].map((mode) => findLineLoss(mode, 3000, COPPER).conductorDbPerM)
  expect(oddLoss).toBeGreaterThan(evenLoss ?? Number.NaN)
  expect(odd.dielectricShare).toBeLessThan(even.dielectricShare)
})

test('two strips far from any plane have the resistance of their surface currents, ∮J²/I², when driven against each other', () => {
  // In air surface current and surface charge have one distribution, and the return is in the other strip: exact, with no incremental inductance in it.
  const [wideUm, thickUm, centreUm] = [100, 40, 90]
  const section: LineSection = {
    slabs: [{ thicknessUm: 20_000, relativePermittivity: 1 }],
    hasPlaneBelow: true,
    hasPlaneAbove: false,
    conductors: [-centreUm, centreUm].map((at) => ({
      name: `strip at ${at}`,
      centreUm: at,
      bottomUm: 10_000,
      bottomWidthUm: wideUm,
      topWidthUm: wideUm,
      thicknessUm: thickUm,
    })),
  }
  const faces = findChargedFaces(section, [0.5, -0.5])
  if (faces === null) throw new Error('no solution')
  let [current, squares] = [0, 0]
  for (const { fromUm, toUm, conductor, density } of faces) {
    if (conductor !== 0) continue
    const length = Math.hypot(toUm[0] - fromUm[0], toUm[1] - fromUm[1])
    const isUpright = fromUm[0] === toUm[0]
    const fromCorner = ([x, y]: readonly [number, number]) =>
      isUpright ? thickUm / 2 - Math.abs(y - 10_000 - thickUm / 2) : wideUm / 2 - Math.abs(x + centreUm)
    const [near, far] = [fromUm, toUm].map(fromCorner).toSorted((a, b) => a - b) as [number, number]
    // Towards a right-angled corner charge grows as r^(-1/3): the mean of its square over a piece is more than the square of its mean.
    const mean = (1.5 * (far ** (2 / 3) - Math.max(0, near) ** (2 / 3))) / (far - near)
    const meanSquare = (3 * (far ** (1 / 3) - Math.max(0, near) ** (1 / 3))) / (far - near)
    current += density * length
    squares += density ** 2 * length * (far - near < 1e-6 ? 1 : meanSquare / mean ** 2)
  }
  const odd = findLossBases(section).find(({ mode }) => mode === 'odd')
  expect(Math.abs((odd?.resistanceShape ?? 0) / (squares / current ** 2 / 1e-6) - 1)).toBeLessThan(0.015)
})

test('unequal lines, three lines, faults and copper without thickness have no loss', () => {
  const section = makeSection(110, 50, 3.4)
  const [line] = section.conductors
  if (line === undefined) throw new Error('no line')
  const beside = (centreUm: number, widthUm = 110) => ({
    ...line,
    name: `at ${centreUm}`,
    centreUm,
    bottomWidthUm: widthUm,
    topWidthUm: widthUm,
  })
  expect(findLossBases({ ...section, conductors: [line, beside(300, 160)] })).toEqual([])
  expect(findLossBases({ ...section, conductors: [line, beside(300), beside(600)] })).toEqual([])
  expect(findLossBases({ ...section, conductors: [{ ...line, thicknessUm: 0 }] })).toEqual([])
  expect(findLossBases({ ...section, slabs: [{ thicknessUm: 0, relativePermittivity: 3.4 }] })).toEqual([])
})
