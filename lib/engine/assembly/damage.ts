import type { Bend } from '../design'
import { computeDamage } from '../life'
import type { BendResult, DamageResult } from '../results'

interface LayerDamage {
  readonly contributions: { bendId: string; damage: number }[]
  low: number
  high: number
  ductility: number | null
  capped: number
  least: number
  beyondModel: DamageResult['beyondModel']
}

const NOTHING_USED = { nominal: 0, low: 0, high: 0 }

/**
 * Shares of life that the dynamic bends of a part use up in each conductor layer, taken at the survival percentile.
 *
 * Rule     the conductors of a layer are taken to run through all its bends; a bend that is folded once or flexed a few times counts
 *          nothing here, although a hard fold does more harm than the sum can say. A fold before flexing at the same place counts.
 */
export function computeLayerDamage(bends: readonly Bend[], results: readonly BendResult[]): DamageResult[] {
  const byLayer = new Map<string, LayerDamage>()
  results.forEach((result, position) => {
    const cycles = bends[position]?.requiredCycles ?? null
    if (result.use !== 'dynamic' || cycles === null) return
    for (const conductor of result.conductors) {
      const {
        layerId,
        survivalLifeCycles,
        survivalLifeRangeCycles: range,
        ductilityLifeCycles,
        isLifeAtCap,
      } = conductor
      if (survivalLifeCycles === null || range === null) continue
      const used = conductor.states?.fold?.damageFraction ?? NOTHING_USED
      // The life was given as what an earlier fold leaves of it: here the fold stands as a share of its own.
      const damageOf = (lifeCycles: number, usedShare: number) =>
        usedShare >= 1 ? usedShare : computeDamage([{ cycles, lifeCycles }]).damage * (1 - usedShare) + usedShare
      const damage = damageOf(survivalLifeCycles, used.nominal)
      const layer = byLayer.get(layerId) ?? {
        contributions: [],
        low: 0,
        high: 0,
        ductility: null,
        capped: 0,
        least: 0,
        beyondModel: null,
      }
      layer.contributions.push({ bendId: result.bendId, damage })
      layer.low += damageOf(range.high, used.low)
      layer.high += damageOf(range.low, used.high)
      if (ductilityLifeCycles !== null)
        layer.ductility = (layer.ductility ?? 0) + damageOf(ductilityLifeCycles, used.high)
      if (isLifeAtCap) layer.capped += damage
      const [limit] = result.modelLimits
      if (limit !== undefined) layer.beyondModel ??= { bendId: result.bendId, limit }
      const known =
        limit === undefined ? conductor : result.knownAtLeast?.conductors.find((each) => each.layerId === layerId)
      if (known !== undefined && known.survivalLifeCycles !== null && !known.isLifeAtCap) {
        layer.least += damageOf(known.survivalLifeCycles, used.nominal)
      }
      byLayer.set(layerId, layer)
    }
  })
  return [...byLayer].map(
    ([conductorLayerId, { contributions, low, high, ductility, capped, least, beyondModel }]) => ({
      conductorLayerId,
      damageSum: contributions.reduce((sum, { damage }) => sum + damage, 0),
      damageRange: { low, high },
      ductilityDamageSum: ductility,
      cappedDamageSum: capped,
      leastDamageSum: least,
      beyondModel,
      contributions,
    }),
  )
}
