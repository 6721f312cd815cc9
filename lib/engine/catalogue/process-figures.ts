import { isWithoutMetal, type SURFACE_FINISHES } from '../design'
import { citeSource, type SourceKey } from '../sources'
import { inSentence } from '../units'

/** Water that polyimide takes up, per cent by weight: in 24 h of immersion, and in air of 20 degC and 50 % humidity. */
export const POLYIMIDE_WATER_PCT = {
  immersed: { low: 0.8, high: 2.9 },
  inRoomAir: 2,
  sourceKey: 'guideMoisture',
} as const

/** Bake profiles as guides print them: they contradict each other, so none is offered as ours. */
export const BAKE_PROFILES_IN_GUIDES = [
  { temperatureDegC: { low: 121, high: 121 }, hours: { low: 2, high: 10 }, solderWithinMinutes: 30 },
  { temperatureDegC: { low: 130, high: 150 }, hours: { low: 2, high: null }, solderWithinMinutes: 480 },
  { temperatureDegC: { low: 65, high: 80 }, hours: null, solderWithinMinutes: null },
] as const

/** Range of temperatures over all profiles. */
export const BAKE_TEMPERATURE_DEGC = {
  low: Math.min(...BAKE_PROFILES_IN_GUIDES.map(({ temperatureDegC }) => temperatureDegC.low)),
  high: Math.max(...BAKE_PROFILES_IN_GUIDES.map(({ temperatureDegC }) => temperatureDegC.high)),
}

/** Bake times that the guides print, in hours, over all profiles. Source guideMoisture. */
export const BAKE_HOURS = { low: 0.75, high: 10 } as const

/** Longest time from oven or pack to soldering that a guide prints, in hours; sooner is never wrong. Source guideMoisture. */
export const HOURS_TO_SOLDER = { low: 0, high: 8 } as const

/** Nickel with which engineers of the trade report no cracks at bends; thin nickel risks weak solder joints. Source ipc4552. */
export const NICKEL_FOR_BENDS_UM = { low: 1, high: 3 } as const

interface Coat {
  readonly metal: 'nickel' | 'palladium' | 'gold' | 'silver' | 'tin'
  readonly lowUm: number
  /** Null where only a minimum is given. */
  readonly highUm: number | null
}

/**
 * Thickness of surface finishes as their standards are quoted, read twice removed: a yardstick for what is typed, never a
 * limit that decides.
 */
export const FINISH_COATS: Partial<
  Record<(typeof SURFACE_FINISHES)[number], { readonly coats: readonly Coat[]; readonly sourceKey: SourceKey }>
> = {
  'immersion-gold-over-electroless-nickel': {
    coats: [
      { metal: 'nickel', lowUm: 3, highUm: 6 },
      { metal: 'gold', lowUm: 0.05, highUm: null },
    ],
    sourceKey: 'ipc4552',
  },
  'immersion-gold-over-palladium-nickel': {
    coats: [
      { metal: 'nickel', lowUm: 3, highUm: 6 },
      { metal: 'palladium', lowUm: 0.05, highUm: 0.15 },
      { metal: 'gold', lowUm: 0.025, highUm: null },
    ],
    sourceKey: 'ipc4556',
  },
  'immersion-silver': { coats: [{ metal: 'silver', lowUm: 0.12, highUm: 0.4 }], sourceKey: 'ipc4553' },
  'immersion-tin': { coats: [{ metal: 'tin', lowUm: 1, highUm: null }], sourceKey: 'ipc4554' },
}

/** Copper in plated holes of flexible circuits: enough, nominal, and for high reliability. */
export const HOLE_PLATING_UM = { enough: 15, nominal: 20, highReliabilityAbove: 25, sourceKey: 'holePlating' } as const

/**
 * How the `coats` of a finish are written in one line.
 *
 * @example describeFinishCoats('immersion-silver') gives 'silver 0.12 to 0.4 um'
 */
export function describeFinishCoats(finish: (typeof SURFACE_FINISHES)[number]): string | null {
  const found = FINISH_COATS[finish]
  if (found === undefined) return null
  return found.coats
    .map(({ metal, lowUm, highUm }) =>
      highUm === null ? `${metal} at least ${lowUm} um` : `${metal} ${lowUm} to ${highUm} um`,
    )
    .join(', ')
}

/**
 * Why a typed finish is not what its name is quoted with, a sentence; null where it agrees, or where nothing is quoted. All its metals count
 * together, over the tolerance.
 *
 * @example explainFinish('immersion-silver', { thicknessUm: 4, toleranceUm: 1 }) names 0.12 to 0.4 um
 */
export function explainFinish(
  finish: (typeof SURFACE_FINISHES)[number] | null,
  typed: { readonly thicknessUm: number; readonly toleranceUm: number },
): string | null {
  if (finish === null) return null
  const said = `${inSentence(typed.thicknessUm, 'um')} of finish on the contacts`
  if (isWithoutMetal(finish)) {
    return typed.thicknessUm > 0
      ? `${said}, while the brief states a finish without metal: one of the two is wrong.`
      : null
  }
  const found = FINISH_COATS[finish]
  if (found === undefined) return null
  const least = found.coats.reduce((sum, { lowUm }) => sum + lowUm, 0)
  const greatest = found.coats.reduce<number | null>(
    (sum, { highUm }) => (sum === null || highUm === null ? null : sum + highUm),
    0,
  )
  const isLess = typed.thicknessUm + typed.toleranceUm < least
  const isMore = greatest !== null && typed.thicknessUm - typed.toleranceUm > greatest
  if (!isLess && !isMore) return null
  return `${said} is ${isLess ? 'less' : 'more'} than its standard is quoted with: ${describeFinishCoats(finish)} (${citeSource(found.sourceKey)}).`
}
