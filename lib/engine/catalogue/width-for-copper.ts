import type { EvaluationContext } from '../context'
import type { Limit } from '../results'
import { inSentence } from '../units'
import { makeSourceLimit } from './decide'
import { hasCopper } from './needs'

/**
 * Least width and space by nominal finished copper: what is etched is the foil with its plating. Our choice, within what fabricator guides print
 * (0.05 to 0.1 mm on the thinnest copper, 0.15 to 0.25 mm on the heaviest); no published source.
 */
const WIDTH_STEPS: readonly { readonly upToUm: number; readonly leastMm: number }[] = [
  { upToUm: 15, leastMm: 0.075 },
  { upToUm: 25, leastMm: 0.1 },
  { upToUm: 45, leastMm: 0.125 },
  { upToUm: 70, leastMm: 0.2 },
  { upToUm: Number.POSITIVE_INFINITY, leastMm: 0.25 },
]

export function findLeastWidthMm(finishedUm: number): number {
  // The last step has no upper end.
  return WIDTH_STEPS.find(({ upToUm }) => finishedUm <= upToUm + ROUNDING_UM)?.leastMm ?? 0
}

/** Sums of layers that differ from a step by rounding in binary count as on it. */
const ROUNDING_UM = 1e-6

/** Thickest finished copper of a layer over the zones in which it has any; null where it has none. */
function findThickestCopper({ zones }: EvaluationContext, layerId: string): { um: number; zone: string } | null {
  let thickest: { um: number; zone: string } | null = null
  for (const { layers, name } of zones) {
    const layer = layers.find((each) => each.layerId === layerId)
    if (layer === undefined || !hasCopper(layer)) continue
    if (thickest === null || layer.nominalUm > thickest.um) thickest = { um: layer.nominalUm, zone: name }
  }
  return thickest
}

/**
 * What the conductors of each layer are held to: the step of its thickest finished copper, or the limit in force where that is larger. Null where a
 * layer has no copper in any zone. Each layer is looked through once.
 *
 * @param key  of the limit where the step decides
 */
export function makeWidthLimits(
  context: EvaluationContext,
  inForce: Limit,
  key: string,
): (layerId: string) => { readonly limit: Limit; readonly remark: string } | null {
  const known = new Map<string, { readonly limit: Limit; readonly remark: string } | null>()
  return (layerId) => {
    const found = known.get(layerId)
    if (found !== undefined) return found
    const thickest = findThickestCopper(context, layerId)
    const made = thickest === null ? null : makeWidthLimit(thickest, inForce, key)
    known.set(layerId, made)
    return made
  }
}

function makeWidthLimit({ um, zone }: { um: number; zone: string }, inForce: Limit, key: string) {
  const leastMm = findLeastWidthMm(um)
  const remark = `The finished copper is ${inSentence(um, 'um')} in ${zone}.`
  if (leastMm <= inForce.value) return { limit: inForce, remark }
  return {
    limit: makeSourceLimit({ key, value: leastMm, unit: 'mm', sense: 'at-least', sourceKey: 'ownChoice' }),
    remark,
  }
}
