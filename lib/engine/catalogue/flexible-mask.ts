import type { EvaluationContext } from '../context'
import type { Bend } from '../design'
import type { ZoneLayerResult } from '../results'
import { isDynamic } from './checks'

/** Classes of IPC-SM-840 for masks on flexible circuits: a record that names none counts as brittle. */
const FLEXIBLE_CLASS = /\bF[HT]\b/

/** A mask whose record says that it is made for flexible circuits. */
export function isFlexibleMask(context: EvaluationContext, layerId: string): boolean {
  const layer = context.layersById.get(layerId)
  if (layer === undefined || layer.kind !== 'solder-mask') return false
  return FLEXIBLE_CLASS.test(context.findMaterial(layer.materialId)?.specification ?? '')
}

/**
 * A flexible mask may stay on a bend that stands still and is wide, and covers its copper there.
 *
 * @param insideRadiusMm  at nominal, or at an end of its tolerance
 */
export function mayMaskStay(
  context: EvaluationContext,
  bend: Bend,
  { layerId }: Pick<ZoneLayerResult, 'layerId'>,
  insideRadiusMm: number,
): boolean {
  return (
    !isDynamic(bend) &&
    isFlexibleMask(context, layerId) &&
    insideRadiusMm >= context.getLimit('flexibleMaskRadiusMm').value
  )
}
