import { LIFE_CAUTION_SHORT } from '../cautions'
import type { Bend } from '../design'
import { nameOwnTests, type OwnTestsUse, type QuantityRange } from '../results'
import { inSentence } from '../units'
import type { SurvivalDemand } from './bend-allowables'

/** What a reader must know of a life that rests on tests. */
export function listOwnTestCautions(
  uses: readonly OwnTestsUse[],
  { survivalPct, survival }: SurvivalDemand,
  { requiredCycles }: Bend,
  medianLifeCycles: number | null,
): string[] {
  return uses.map((use) => {
    const said = [`${use.layerName}: life from own tests, ${describeFigures(use)}, ${LIFE_CAUTION_SHORT} still.`]
    said.push(`Tested ${describeTestedRange(use)}; figures elsewhere, such as the minimum radius, are extrapolated.`)
    // Median rank of the first of n by Benard's approximation.
    const firstRank = 0.7 / (use.specimens + 0.4)
    if (use.usedSlope !== null && survival.failureFraction < firstRank) {
      said.push(
        `${inSentence(survivalPct, 'pct')} survival lies beyond the first of ${use.specimens} specimens: it is extrapolated along the fitted line.`,
      )
    }
    if (requiredCycles !== null && requiredCycles > use.cycles.high) {
      said.push(
        'More cycles are required than were tested: the tests count where they give a shorter life than the defaults.',
      )
    }
    const isOutside =
      medianLifeCycles !== null && (medianLifeCycles < use.cycles.low || medianLifeCycles > use.cycles.high)
    if (isOutside)
      said.push(`The median life of ${inSentence(medianLifeCycles, 'cycles')} lies outside of the cycles tested.`)
    return said.join(' ')
  })
}

/** `set Hinge 18 of Quillmoor (workspace), n = 12, 9 failed: Weibull slope 1.9 (the worse end of its 90 % bounds; best estimate 2.8)` */
function describeFigures(use: OwnTestsUse): string {
  const { slope, usedSlope, fatigueDuctility, lifeFraction } = use
  const figures = [
    ...(slope === null || usedSlope === null
      ? []
      : [
          `Weibull slope ${inSentence(usedSlope)} (the worse end of its 90 % bounds; best estimate ${inSentence(slope.value)})`,
        ]),
    ...(fatigueDuctility === null
      ? []
      : [
          `fatigue ductility ${inSentence(fatigueDuctility.value)} (90 % bounds ${inSentence(fatigueDuctility.low)} to ${inSentence(fatigueDuctility.high)})`,
        ]),
    ...(lifeFraction === null
      ? []
      : [
          `lives at ${inSentence(100 * lifeFraction, 'pct')} of the fatigue relation's (low 90 % bound of the median tested)`,
        ]),
  ]
  return `${nameOwnTests(use)}: ${figures.join(', ')}`
}

function describeTestedRange({ radiusRatio, strainRangePct, cycles, temperatureDegC }: OwnTestsUse): string {
  const ratio = radiusRatio === null ? [] : [`R/t ${spanOf(radiusRatio)}`]
  const strain = strainRangePct === null ? [] : [`strain range ${spanOf(strainRangePct, 'pct')}`]
  const temperature = temperatureDegC === null ? 'temperature not stated' : `at ${inSentence(temperatureDegC, 'degC')}`
  return `${[...ratio, ...strain, `${spanOf(cycles, 'cycles')}`].join(', ')}, ${temperature}`
}

function spanOf({ low, high }: QuantityRange, unit?: 'pct' | 'cycles'): string {
  return low === high ? inSentence(low, unit) : `${inSentence(low)} to ${inSentence(high, unit)}`
}
