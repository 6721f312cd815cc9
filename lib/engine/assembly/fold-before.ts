import type { Bend } from '../design'
import type { Survival } from '../life'
import type { FoldBeforeResult, QuantityRange } from '../results'
import { findAllowable, getFatigueFoil } from './bend-allowables'
import { type ConductorLife, computeConductorLife } from './bend-life'
import type { ConductorInBend } from './bend-section'
import { findAllowableRange, listFoilCorners } from './foil-corner'

/** What stands for a life of which an earlier fold leaves nothing: far below one cycle. */
const NO_LIFE_CYCLES = 1e-6

/** Share of life that a fold uses up: at nominal, and at the best and the worst of strain and foil. */
export interface UsedShare {
  readonly nominal: number
  readonly low: number
  readonly high: number
}

/**
 * A fold that was made once before: its strain against what the foil may take in one fold, and the share of life that it uses up.
 *
 * Rule     the fold counts as one whole cycle of its strain, at the survival asked for: 1 / N_fold of the life (Miner). It is half a cycle
 *          and the order of loading is ignored, which works the other way: a hard fold does more harm than the sum says.
 * Source   SOURCES.miner, SOURCES.fatigueDuctility
 */
export function computeFoldBefore(
  part: ConductorInBend,
  bend: Bend,
  survival: Survival,
  strainPct: { readonly nominal: number; readonly range: QuantityRange },
): FoldBeforeResult {
  const once: Bend = { ...bend, use: 'fold-once' }
  const { allowablePct, sourceKey } = findAllowable(part, once, survival, [])
  const life =
    bend.use === 'dynamic'
      ? computeConductorLife(
          getFatigueFoil(part),
          { ...bend, motion: 'one-way' },
          survival,
          strainPct,
          listFoilCorners(part),
        )
      : null
  return {
    strainPct: strainPct.nominal,
    strainRangePct: strainPct.range,
    allowablePct,
    allowableRangePct: findAllowableRange(part, once, survival, allowablePct),
    allowableSourceKey: sourceKey,
    damageFraction:
      life === null
        ? null
        : {
            nominal: shareOf(life.survivalCycles),
            low: shareOf(life.survivalRangeCycles.high),
            high: shareOf(life.survivalRangeCycles.low),
          },
  }
}

const shareOf = (lifeCycles: number): number => 1 / Math.max(lifeCycles, NO_LIFE_CYCLES)

/** The life that a fold before leaves: N (1 - 1 / N_fold). */
export function leaveLife(life: ConductorLife, used: UsedShare | null): ConductorLife {
  if (used === null) return life
  const leave = (cycles: number, share: number): number => Math.max(cycles * (1 - share), NO_LIFE_CYCLES)
  return {
    medianCycles: leave(life.medianCycles, used.nominal),
    survivalCycles: leave(life.survivalCycles, used.nominal),
    survivalRangeCycles: {
      low: leave(life.survivalRangeCycles.low, used.high),
      high: leave(life.survivalRangeCycles.high, used.low),
    },
    isAtCap: life.isAtCap && used.nominal < 1,
    ductilityCycles: leave(life.ductilityCycles, used.high),
  }
}
