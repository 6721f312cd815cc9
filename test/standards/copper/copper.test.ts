import { describe, expect, it } from 'vitest'
import { computeAdhesiveFlow, computeFinishedCopper, findMinimumFinishedCopper } from '@/lib/engine/thickness'
import { foilThicknessUm, lengthFromUm, umFromLength } from '@/lib/engine/units'
import { type CheckCase, checkTopic, expectNear, expectValue, input } from '../check-values'

function weightOz(check: CheckCase): number {
  const [numerator = Number.NaN, denominator = 1] = String(check.inputs.weightOz).split('/').map(Number)
  return numerator / denominator
}

/** Ounce and foot are exact by definition: 28.349523125 g, 0.3048 m. */
const massGPerM2 = (weightOzPerFt2: number): number => (weightOzPerFt2 * 28.349523125) / 0.3048 ** 2

checkTopic('1 copper weight and thickness', [
  [
    /^cu-oz-rho/,
    (check) => {
      const weight = input(check, 'weightOzPerFt2')
      // (g/m2) / (g/cm3) is um.
      const thicknessUm = massGPerM2(weight) / input(check, 'densityGPerCm3')
      expectValue(check, 'arealMassGPerM2', massGPerM2(weight))
      expectValue(check, 'thicknessUm', thicknessUm)
      expectValue(check, 'thicknessMil', lengthFromUm(thicknessUm, 'mil'))
    },
  ],
  [
    /^cu-oz-34.3-mil/,
    (check) => {
      expect(foilThicknessUm(1)).toBe(input(check, 'thicknessUm'))
      expectValue(check, 'thicknessMil', lengthFromUm(foilThicknessUm(1), 'mil'))
    },
  ],
  [/^cu-oz-35-mil/, (check) => expectValue(check, 'thicknessMil', lengthFromUm(input(check, 'thicknessUm'), 'mil'))],
  [/^cu-oz-1.4mil/, (check) => expectValue(check, 'thicknessUm', umFromLength(input(check, 'thicknessMil'), 'mil'))],
  [
    /^cu-internal-/,
    (check) => {
      const row = findMinimumFinishedCopper({ weightOzPerFt2: weightOz(check), location: 'internal', productClass: 3 })
      expect(row).toMatchObject({
        nominalFoilUm: input(check, 'nominalFoilUm'),
        minFoilUm: input(check, 'absoluteMinFoilUm'),
        maxReductionUm: input(check, 'maxProcessingReductionUm'),
        minPlatingUm: 0,
        source: check.sourceKind === 'memory' ? 'minimumCopperRecalled' : 'ipc6012',
      })
      expectValue(check, 'minFinishedInternalUm', row?.minFinishedUm ?? Number.NaN)
    },
  ],
  [
    /^cu-external-/,
    (check) => {
      const rowFor = (productClass: 1 | 2 | 3) =>
        findMinimumFinishedCopper({ weightOzPerFt2: weightOz(check), location: 'external', productClass })
      expect(rowFor(2)).toMatchObject({
        minFoilUm: input(check, 'absoluteMinFoilUm'),
        minPlatingUm: input(check, 'minPlatingClass1And2Um'),
        maxReductionUm: input(check, 'maxProcessingReductionUm'),
      })
      expect(rowFor(1)).toEqual(rowFor(2))
      expect(rowFor(3)?.minPlatingUm).toBe(input(check, 'minPlatingClass3Um'))
      expectValue(check, 'minFinishedExternalClass2Um', rowFor(2)?.minFinishedUm ?? Number.NaN)
      expectValue(check, 'minFinishedExternalClass3Um', rowFor(3)?.minFinishedUm ?? Number.NaN)
    },
  ],
  [
    /^cu-plating-1mil/,
    (check) => expectValue(check, 'addedPlatingUm', umFromLength(input(check, 'addedPlatingMil'), 'mil')),
  ],
  [
    /^cu-plating-984uin/,
    (check) => expectValue(check, 'platingUm', umFromLength(input(check, 'platingMicroInch'), 'uin')),
  ],
])

describe('finished copper and adhesive', () => {
  it('one ounce foil with a mil of panel plating is 59.7 um [common practice, no published source]', () => {
    const { finishedThicknessUm } = computeFinishedCopper({
      foilThicknessUm: foilThicknessUm(1),
      platingThicknessUm: umFromLength(1, 'mil'),
      processingLossUm: 0,
    })
    expectNear(finishedThicknessUm, 59.7, { rel: 1e-12 })
  })

  it('25 um adhesive over 35 um copper of half coverage keeps 7.5 um [exact: conservation of volume]', () => {
    const flow = computeAdhesiveFlow({
      adhesiveThicknessUm: 25,
      conductorThicknessUm: 35,
      coverageFraction: 0.5,
      requiredOverConductorUm: 5,
    })
    expect(flow).toEqual({
      gapFillUm: 17.5,
      overConductorUm: 7.5,
      laminatedThicknessUm: 42.5,
      gapFilledFraction: 1,
      encapsulationMarginUm: 2.5,
      encapsulates: true,
    })
  })

  it('a mil of adhesive does not encapsulate sparse 59.7 um copper [exact: conservation of volume]', () => {
    const flow = computeAdhesiveFlow({
      adhesiveThicknessUm: 25.4,
      conductorThicknessUm: 59.7,
      coverageFraction: 0.2,
      requiredOverConductorUm: 0,
    })
    expect(flow.encapsulates).toBe(false)
    expectNear(flow.gapFilledFraction, 25.4 / (0.8 * 59.7), { rel: 1e-12 })
    expectNear(flow.encapsulationMarginUm, 25.4 - 0.8 * 59.7, { rel: 1e-12 })
    expect(flow.laminatedThicknessUm).toBe(59.7)
  })
})
