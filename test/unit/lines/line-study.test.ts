import { expect, test, vi } from 'vitest'
import { evaluate } from '@/lib/engine'
import { findShareInBand } from '@/lib/engine/line-study/share-in-band'
import { makeLineDesign, studyAll } from './example-lines'

vi.setConfig({ testTimeout: 120_000 })

const DESIGNS = [makeLineDesign('single'), makeLineDesign('pair')]
const studies = DESIGNS.flatMap(studyAll)

test('lines whose impedance is stated are studied, with the impedance of the checklist', () => {
  for (const design of DESIGNS) {
    const outcomes = evaluate(design).items.find(({ itemId }) => itemId === 'impedance-value')?.outcomes ?? []
    const studied = studyAll(design)
    expect(studied.length).toBeGreaterThan(0)
    for (const [{ conductorId, zoneId }, { impedanceOhm }] of studied) {
      const outcome = outcomes.find(({ places }) =>
        [conductorId, zoneId].every((id) => places.some((place) => place.id === id)),
      )
      expect(outcome).toMatchObject({ kind: 'decided' })
      if (outcome?.kind === 'decided') expect(outcome.value.value).toBeCloseTo(impedanceOhm, 6)
    }
  }
})

test('finer pieces change the impedance less and less, the usual ones by less than 0.1 %', () => {
  for (const [, { refinement }] of studies) {
    const finest = refinement.at(-1)?.impedanceOhm ?? Number.NaN
    const offs = refinement.map(({ impedanceOhm }) => Math.abs(impedanceOhm / finest - 1))
    expect(offs[2]).toBeLessThan(1e-3)
    expect(offs[2] ?? 1).toBeLessThanOrEqual((offs[0] ?? 0) + 1e-5)
    const unknowns = refinement.map((each) => each.unknowns)
    expect(unknowns).toEqual(unknowns.toSorted((a, b) => a - b))
  }
})

test('wider lines and thicker covers lower the impedance, and the width for the target lies where the curve says', () => {
  for (const [{ targetOhm }, { overWidth, overCover, widthForTargetMm }] of studies) {
    for (const curve of [overWidth, overCover]) {
      const ohms = curve.map(({ impedanceOhm }) => impedanceOhm)
      // Rough solutions are a few parts in a thousand off.
      ohms.slice(1).forEach((ohm, at) => {
        expect(ohm).toBeLessThan((ohms[at] ?? 0) * 1.003)
      })
    }
    if (widthForTargetMm === null) continue
    const wider = overWidth.find(({ size }) => size >= widthForTargetMm)
    const narrower = overWidth.findLast(({ size }) => size <= widthForTargetMm)
    if (wider !== undefined) expect(wider.impedanceOhm).toBeLessThanOrEqual(targetOhm * 1.005)
    if (narrower !== undefined) expect(narrower.impedanceOhm).toBeGreaterThanOrEqual(targetOhm * 0.995)
  }
})

test('the share within a band grows with the band, from none to all, and its error is stated', () => {
  const [studied] = studies[0] ?? []
  if (studied === undefined) throw new Error('no line')
  const { line, widthMm } = studied
  const share = (low: number, high: number) => findShareInBand(line, widthMm, { low, high })
  const whole = share(0, 1e6)
  if (whole === null) throw new Error('no share')
  expect(whole.shareFraction).toBe(1)
  expect(whole.responseErrorPct).toBeLessThan(3)
  const { meanOhm, sigmaOhm } = whole
  expect(share(meanOhm + 20 * sigmaOhm, 1e6)?.shareFraction).toBe(0)
  const shares = [1, 2, 3].map((sigmas) => share(meanOhm - sigmas * sigmaOhm, meanOhm + sigmas * sigmaOhm))
  // The normal distribution's shares, which a nearly straight response comes near.
  ;[0.6827, 0.9545, 0.9973].forEach((expected, at) => {
    expect(shares[at]?.shareFraction).toBeGreaterThan(expected - 0.03)
    expect(shares[at]?.shareFraction).toBeLessThan(expected + 0.03)
    expect(shares[at]?.lowFraction).toBeLessThanOrEqual(shares[at]?.shareFraction ?? 0)
    expect(shares[at]?.highFraction).toBeGreaterThanOrEqual(shares[at]?.shareFraction ?? 1)
  })
  expect(share(0, 1e6)).toEqual(whole)
})

test('coupling falls with the offset, and losses rise with the frequency', () => {
  for (const [studied, { crosstalk, losses }] of studies) {
    expect(losses.map(({ mode }) => mode)).toEqual(studied.isPair ? ['odd', 'even'] : ['alone'])
    for (const { points } of crosstalk) {
      const near = points.map(({ nearEndFraction }) => nearEndFraction)
      expect(near.at(-1)).toBeLessThan(near[0] ?? 0)
    }
    for (const { points } of losses) {
      points.slice(1).forEach(({ smooth, rough }, at) => {
        const before = points[at]
        expect(smooth.conductorDbPerM).toBeGreaterThan(before?.smooth.conductorDbPerM ?? 0)
        expect(rough.conductorDbPerM).toBeLessThanOrEqual(2 * smooth.conductorDbPerM)
      })
    }
  }
})

test('crosstalk on one layer falls with the space, a grounded guard takes more of it away, and a pair has none', () => {
  for (const [studied, { overSpace }] of studies) {
    if (studied.isPair) {
      expect(overSpace).toEqual([])
      continue
    }
    expect(overSpace.length).toBeGreaterThan(5)
    overSpace.slice(1).forEach(({ nearEndFraction }, at) => {
      expect(nearEndFraction).toBeLessThan(overSpace[at]?.nearEndFraction ?? 0)
    })
    for (const { spaceMm, nearEndFraction, guardedFraction } of overSpace) {
      expect(nearEndFraction).toBeGreaterThan(0)
      if (spaceMm < 1.999 * studied.widthMm) expect(guardedFraction).toBeNull()
      else {
        // A grounded conductor more takes field from both lines and gives none: exact.
        expect(guardedFraction).toBeLessThan(nearEndFraction)
        expect(guardedFraction).toBeGreaterThan(0)
      }
    }
  }
})

test('over a hatched plane no share of parts is told, and a line wide against the wavelength has no losses', () => {
  const hatched = makeLineDesign('single')
  const layer = hatched.construction.layers.find(({ id }) => id === 'l3')
  Object.assign(layer ?? {}, { planePattern: 'hatched' })
  const presence = hatched.construction.zones
    .find(({ id }) => id === 'arm')
    ?.presence.find(({ layerId }) => layerId === 'l3')
  Object.assign(presence ?? {}, { coverageFraction: null, hatch: { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 } })
  const [[studied, study] = []] = studyAll(hatched)
  expect(studied?.line.open).not.toBeNull()
  expect(study?.share).toBeNull()

  const wide = makeLineDesign('single')
  Object.assign(wide.features.conductors[0] ?? {}, { widthMm: 3 })
  const frequencies = studyAll(wide)[0]?.[1].losses[0]?.points.map(({ frequencyMhz }) => frequencyMhz)
  // A tenth of the wavelength at 10 GHz is less than 3 mm in any dielectric; at 1 GHz it is more than 10 mm in these.
  expect(frequencies).toContain(1000)
  expect(frequencies).not.toContain(10_000)
})
