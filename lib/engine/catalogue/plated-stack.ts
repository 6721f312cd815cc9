import type { ZoneResult } from '../results'
import { hasCopper } from './needs'

/**
 * Thickness that a plated hole passes through, um, over the tolerances of its layers; null with fewer than two layers of copper. From the outermost
 * copper to the outermost copper: masks, covers and stiffeners outside of it pull at no land.
 */
export function findPlatedStack(zone: ZoneResult | null): { low: number; nominal: number; high: number } | null {
  if (zone === null) return null
  const first = zone.layers.findIndex(hasCopper)
  const last = zone.layers.findLastIndex(hasCopper)
  if (first === -1 || first === last) return null
  const stack = { low: 0, nominal: 0, high: 0 }
  for (const { minUm, nominalUm, maxUm } of zone.layers.slice(first, last + 1)) {
    stack.low += minUm
    stack.nominal += nominalUm
    stack.high += maxUm
  }
  return stack
}
