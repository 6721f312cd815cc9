import type { BondedSection } from '@/lib/engine/bending'
import { findAxisUm, momentNPerMmWidth } from '@/lib/engine/bending/bent-state'

/** A section bent to a curvature of the axis without strain, from flat. */
export function bendToCurvature({ stack }: BondedSection, curvaturePerMm: number) {
  const curvaturePerUm = curvaturePerMm / 1000
  const axisUm = findAxisUm(stack, { curvaturePerUm })
  return { axisUm, curvaturePerMm, momentNPerMmWidth: momentNPerMmWidth(stack, axisUm, curvaturePerUm) }
}
