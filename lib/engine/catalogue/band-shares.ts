import { SAME_SHARE_FRACTION } from '../artwork-check'
import type { EvaluationContext } from '../context'
import { callByName } from '../design'
import type { Outcome } from '../results'
import { inSentence } from '../units'
import { placeOf } from './checks'
import { decide, makeDesignLimit } from './decide'

/**
 * The copper that drawn routes lay into the band of each bend, held against the share that its section is computed with. Routes are drawn coarsely and
 * seldom all of them: more than the section has contradicts it, less does not.
 */
export function checkRouteShares({ design, drawing, findZoneResult, layersById }: EvaluationContext): Outcome[] {
  return (drawing.measures?.routes.shares ?? []).flatMap(({ bendId, layerId, shareFraction, conductorIds }) => {
    const bend = design.bends.find(({ id }) => id === bendId)
    const layer = layersById.get(layerId)
    const used = findZoneResult(bend?.zoneId ?? '')?.layers.find((each) => each.layerId === layerId)?.coverageFraction
    // A layer that has no copper in the bend is said by the items on crossings.
    if (bend === undefined || layer === undefined || used === undefined || used === null) return []
    const names = conductorIds.flatMap((id) => design.features.conductors.find((each) => each.id === id)?.name ?? [])
    return [
      decide({
        value: shareFraction * 100,
        limit: makeDesignLimit({
          key: 'copperSharePct',
          value: Math.min(1, used + SAME_SHARE_FRACTION) * 100,
          unit: 'pct',
          sense: 'at-most',
          sourceKey: 'ownChoice',
          name: `copper share of the section, ${inSentence(used * 100, 'pct')}, and 5 points`,
        }),
        places: [placeOf('bend', bend), placeOf('layer', layer)],
        what: `copper of the drawn routes on ${layer.name} in the band of ${callByName('bend', bend.name)}`,
        equation: 'area of the routes over the area of the band',
        sourceKey: 'exactArithmetic',
        remark: `Routes: ${names.join(', ')}. The section is computed with ${inSentence(used * 100, 'pct')}.`,
      }),
    ]
  })
}
