import type { Bend } from '../design'
import { computeDamage } from '../life'
import type { BendResult, DamageResult } from '../results'

/**
 * Shares of life that the dynamic bends of a part use up in each conductor layer, taken at the survival percentile.
 *
 * Rule     the conductors of a layer are taken to run through all its bends; a fold made once or a few times counts
 *          nothing here, although a hard fold does more harm than the sum can say.
 */
export function computeLayerDamage(bends: readonly Bend[], results: readonly BendResult[]): DamageResult[] {
  const byLayer = new Map<string, { bendId: string; damage: number }[]>()
  results.forEach((result, position) => {
    const cycles = bends[position]?.requiredCycles ?? null
    if (result.use !== 'dynamic' || cycles === null) return
    for (const { layerId, survivalLifeCycles } of result.conductors) {
      if (survivalLifeCycles === null) continue
      const { damage } = computeDamage([{ cycles, lifeCycles: survivalLifeCycles }])
      const contributions = byLayer.get(layerId) ?? []
      contributions.push({ bendId: result.bendId, damage })
      byLayer.set(layerId, contributions)
    }
  })
  return [...byLayer].map(([conductorLayerId, contributions]) => ({
    conductorLayerId,
    damageSum: contributions.reduce((sum, { damage }) => sum + damage, 0),
    contributions,
  }))
}
