import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  computeBendStrain,
  computeFormedState,
  computeHandbookRadius,
  computeLeafLengthDifference,
  computeMinRadiusForStrain,
  computeRatioRadius,
  computeSection,
  computeSpringback,
  computeStrainRanges,
  curlRisePct,
  developedLengthMm,
  RATIO_TABLES,
  surfaceStrainPctFromRatio,
  thermalCurvaturePerMm,
  yieldStrainPct,
} from '@/lib/engine/bending'
import {
  currentCapacityAmp,
  findLightestFoil,
  requiredAreaMm2,
  resistanceOhm,
  skinDepthUm,
  temperatureRiseDegC,
} from '@/lib/engine/conductors'
import {
  computeAllowableStrain,
  computeBendLife,
  computeDamage,
  computeMedianLife,
  fatigueStrainRangeFraction,
  lifeOverMedianFraction,
} from '@/lib/engine/life'
import {
  computeAdhesiveFlow,
  computeCapability,
  computeFinishedCopper,
  computeThicknessRange,
  simulateThickness,
} from '@/lib/engine/thickness'
import { foilThicknessUm, umFromLength } from '@/lib/engine/units'

/** None of these is a thickness, a modulus, a radius, a life or a current. */
const NEVER = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1]
const NEVER_OR_ZERO = [...NEVER, 0]
const LENGTHS = [...NEVER_OR_ZERO, 1e9]

const expanding = { thicknessUm: 50, modulusGpa: 3, expansionPpmPerC: 20 }
const film: BendLayer = { id: 'film', thicknessUm: 50, modulusGpa: 3, poisson: 0.34 }
const copper: BendLayer = {
  id: 'copper',
  thicknessUm: 18,
  modulusGpa: 110,
  poisson: 0.34,
  conductor: { coverageFraction: 0.5, fillModulusGpa: 1, fillPoisson: 0.4 },
  yieldStrengthMpa: 80,
}
const stack = [film, copper, film]
const section = computeSection(stack)
const foil = { fatigueDuctility: 0.65, tensileStrengthMpa: 172, modulusGpa: 110 }
const toleranced = stack.map((layer) => ({ ...layer, minusUm: 1, plusUm: 1 }))
const contributor = { id: 'film', nominalUm: 50, minusUm: 1, plusUm: 1, spread: 'normal' as const }
const survival = { failureFraction: 0.01, weibullSlope: 2 }

/** Name that the error must begin with, the values that must be refused, and the call. */
const refusals: [name: string, values: readonly number[], call: (value: number) => unknown][] = [
  ['layers[1].thicknessUm', LENGTHS, (v) => computeSection([film, { ...copper, thicknessUm: v }])],
  ['layers[1].modulusGpa', LENGTHS, (v) => computeSection([film, { ...copper, modulusGpa: v }])],
  ['layers[0].poisson', [...NEVER, 0.5], (v) => computeSection([{ ...film, poisson: v }])],
  [
    'layers[0].coverageFraction',
    [...NEVER, 1.01],
    (v) => computeSection([{ ...copper, conductor: { coverageFraction: v, fillModulusGpa: 1, fillPoisson: 0 } }]),
  ],
  [
    'layers[0].fillModulusGpa',
    NEVER,
    (v) => computeSection([{ ...copper, conductor: { coverageFraction: 0.5, fillModulusGpa: v, fillPoisson: 0 } }]),
  ],
  ['insideRadiusMm', [...NEVER, 1e9], (v) => computeBendStrain(section, v)],
  ['insideRadiusMm', [...NEVER, 1e9], (v) => computeFormedState(section, v)],
  ['insideRadiusMm', [...NEVER, 1e9], (v) => computeSpringback(section, v, 90)],
  ['angleDeg', LENGTHS, (v) => computeSpringback(section, 1, v)],
  ['allowableStrainPct', LENGTHS, (v) => computeMinRadiusForStrain(section, v)],
  [
    'layers[0].yieldStrengthMpa',
    LENGTHS,
    (v) => computeFormedState(computeSection([{ ...copper, yieldStrengthMpa: v }]), 1),
  ],
  ['yieldStrengthMpa', LENGTHS, (v) => yieldStrainPct({ yieldStrengthMpa: v, modulusGpa: 110, poisson: 0.3 })],
  [
    'layers[0].tangentModulusGpa',
    [...NEVER, 110],
    (v) => computeFormedState(computeSection([{ ...copper, tangentModulusGpa: v }]), 1),
  ],
  [
    'layers[1].minusUm',
    [...NEVER, 18],
    (v) =>
      computeStrainRanges({
        layers: toleranced.map((layer, index) => (index === 1 ? { ...layer, minusUm: v } : layer)),
        insideRadiusMm: 1,
        radiusMinusMm: 0,
        radiusPlusMm: 0,
      }),
  ],
  [
    'radiusMinusMm',
    [...NEVER, 1.1],
    (v) => computeStrainRanges({ layers: toleranced, insideRadiusMm: 1, radiusMinusMm: v, radiusPlusMm: 0 }),
  ],
  ['angleDeg', LENGTHS, (v) => developedLengthMm({ insideRadiusMm: 1, neutralAxisUm: 50, angleDeg: v })],
  ['axisPitchUm', [...NEVER, 1e9], (v) => computeLeafLengthDifference(v, 90)],
  [
    'copperThicknessUm',
    LENGTHS,
    (v) => computeHandbookRadius({ sides: 'single', copperThicknessUm: v, coverThicknessUm: 50 }, 0.3),
  ],
  [
    'allowableDeformationPct',
    [...NEVER_OR_ZERO, 100],
    (v) => computeHandbookRadius({ sides: 'single', copperThicknessUm: 18, coverThicknessUm: 50 }, v),
  ],
  ['ratio', NEVER, (v) => surfaceStrainPctFromRatio(v)],
  [
    'totalThicknessUm',
    LENGTHS,
    (v) =>
      RATIO_TABLES.map((table) =>
        computeRatioRadius({ table, use: 'static', conductorLayerCount: 1, totalThicknessUm: v }),
      ),
  ],
  ['temperatureChangeDegC', [Number.NaN, 1e9], (v) => thermalCurvaturePerMm([expanding], v)],
  ['layers[0].thicknessUm', NEVER_OR_ZERO, (v) => thermalCurvaturePerMm([{ ...expanding, thicknessUm: v }], 1)],
  ['layers[0].modulusGpa', NEVER_OR_ZERO, (v) => thermalCurvaturePerMm([{ ...expanding, modulusGpa: v }], 1)],
  ['lengthMm', LENGTHS, (v) => curlRisePct(0.01, v)],
  ['curvaturePerMm', [Number.NaN], (v) => curlRisePct(v, 10)],
  [
    'layers[0].expansionPpmPerC',
    [Number.NaN],
    (v) => thermalCurvaturePerMm([{ ...expanding, expansionPpmPerC: v }], 10),
  ],
  ['strainRangeFraction', LENGTHS, (v) => computeMedianLife(foil, v)],
  ['fatigueDuctility', LENGTHS, (v) => computeMedianLife({ ...foil, fatigueDuctility: v }, 0.01)],
  ['modulusGpa', LENGTHS, (v) => computeMedianLife({ ...foil, modulusGpa: v }, 0.01)],
  ['cycles', [...NEVER_OR_ZERO, 1e13], (v) => fatigueStrainRangeFraction(foil, v)],
  ['strainPct', LENGTHS, (v) => computeBendLife({ foil, strainPct: v, motion: 'one-way', survival })],
  [
    'requiredCycles',
    [...NEVER_OR_ZERO, 1e13],
    (v) => computeAllowableStrain({ foil, requiredCycles: v, motion: 'one-way', survival }),
  ],
  ['failureFraction', [...NEVER_OR_ZERO, 1], (v) => lifeOverMedianFraction(v, 2)],
  ['weibullSlope', LENGTHS, (v) => lifeOverMedianFraction(0.01, v)],
  ['blocks[0].lifeCycles', NEVER_OR_ZERO, (v) => computeDamage([{ cycles: 1, lifeCycles: v }])],
  [
    'foilThicknessUm',
    LENGTHS,
    (v) => computeFinishedCopper({ foilThicknessUm: v, platingThicknessUm: 0, processingLossUm: 0 }),
  ],
  [
    'processingLossUm',
    [...NEVER, 18],
    (v) => computeFinishedCopper({ foilThicknessUm: 18, platingThicknessUm: 0, processingLossUm: v }),
  ],
  [
    'adhesiveThicknessUm',
    LENGTHS,
    (v) =>
      computeAdhesiveFlow({
        adhesiveThicknessUm: v,
        conductorThicknessUm: 18,
        coverageFraction: 0.5,
        requiredOverConductorUm: 0,
      }),
  ],
  ['contributors[0].nominalUm', [...NEVER, 1e9], (v) => computeThicknessRange([{ ...contributor, nominalUm: v }])],
  ['contributors[0].minusUm', [...NEVER, 51], (v) => computeThicknessRange([{ ...contributor, minusUm: v }])],
  ['contributors[0].plusUm', [...NEVER, 1e9], (v) => computeThicknessRange([{ ...contributor, plusUm: v }])],
  [
    'draws',
    [...NEVER_OR_ZERO, 1000.5, 1e9],
    (v) => simulateThickness({ contributors: [contributor], seed: 1, draws: v }),
  ],
  ['seed', [...NEVER, 0.5, 2 ** 32], (v) => simulateThickness({ contributors: [contributor], seed: v })],
  [
    'standardDeviationUm',
    NEVER_OR_ZERO,
    (v) => computeCapability({ meanUm: 0, standardDeviationUm: v, lowerUm: -1, upperUm: 1 }),
  ],
  ['weightOzPerFt2', LENGTHS, (v) => foilThicknessUm(v)],
  ['value', [Number.NaN, Number.POSITIVE_INFINITY], (v) => umFromLength(v, 'mm')],
  [
    'runs[0].lengthMm',
    LENGTHS,
    (v) => resistanceOhm({ runs: [{ lengthMm: v, widthMm: 1, thicknessUm: 18 }], temperatureDegC: 20 }),
  ],
  [
    'thicknessUm',
    LENGTHS,
    (v) => resistanceOhm({ runs: [{ lengthMm: 1, widthMm: 1, thicknessUm: v }], temperatureDegC: 20 }),
  ],
  [
    'temperatureDegC',
    [Number.NaN, -300, 1e9],
    (v) => resistanceOhm({ runs: [{ lengthMm: 1, widthMm: 1, thicknessUm: 18 }], temperatureDegC: v }),
  ],
  [
    'temperatureRiseDegC',
    LENGTHS,
    (v) => currentCapacityAmp({ widthMm: 1, thicknessUm: 18 }, { temperatureRiseDegC: v, location: 'internal' }),
  ],
  ['currentAmp', LENGTHS, (v) => requiredAreaMm2({ currentAmp: v, temperatureRiseDegC: 10, location: 'external' })],
  ['currentAmp', LENGTHS, (v) => temperatureRiseDegC({ widthMm: 1, thicknessUm: 18 }, v, 'external')],
  ['widthMm', LENGTHS, (v) => findLightestFoil({ widthMm: v }, { platingThicknessUm: 0, processingLossUm: 0 })],
  ['frequencyHz', NEVER_OR_ZERO, (v) => skinDepthUm(v)],
]

describe('a bad number is refused by name, never turned into NaN', () => {
  it.each(refusals.flatMap(([name, values, call]) => values.map((value) => ({ name, value, call }))))(
    '$name $value',
    ({ name, value, call }) => {
      let thrown: unknown
      try {
        call(value)
      } catch (error) {
        thrown = error
      }
      expect(thrown).toBeInstanceOf(RangeError)
      expect((thrown as RangeError).message.startsWith(`${name} must be `), String(thrown)).toBe(true)
    },
  )

  it('so are a section without layers, a layer without stiffness and a stack without contributors', () => {
    expect(() => computeSection([])).toThrow(/layers must hold at least one layer/)
    expect(() =>
      computeSection([{ ...copper, conductor: { coverageFraction: 0, fillModulusGpa: 0, fillPoisson: 0 } }]),
    ).toThrow(/layers\[0\] has neither copper nor fill/)
    expect(() => computeThicknessRange([])).toThrow(/contributors must hold at least one/)
    expect(() => resistanceOhm({ runs: [], temperatureDegC: 20 })).toThrow(/runs must hold at least one/)
  })
})
