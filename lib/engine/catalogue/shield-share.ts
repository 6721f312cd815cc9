import { planeStrainModulusGpa } from '../bending'
import type { EvaluationContext } from '../context'
import type { Bend } from '../design'
import type { BendResult, ZoneResult } from '../results'

/**
 * Share of a bend's rigidity that its shield films bring, 0 to 1.
 *
 * Model   D_i = E'_i t_i ((y_i - y_n)^2 + t_i^2 / 12) about the neutral axis of the leaf that holds the film, over the
 *         sum of the leaves' rigidities
 * Frame   zone depths count from the top face, bend depths from the inside face
 * Source  SOURCES.compositeBeam
 */
export function computeShieldShare(
  context: EvaluationContext,
  bend: Bend,
  result: BendResult,
  zone: ZoneResult,
): number {
  const sectionUm = zone.thicknessUm
  let shieldNmm = 0
  for (const layer of zone.layers) {
    const material = layer.materialId === null ? null : context.findMaterial(layer.materialId)
    if (layer.kind !== 'shield-film' || material === null) continue
    const middleFromTopUm = layer.topDepthUm + layer.nominalUm / 2
    const middleUm = bend.insideFace === 'top' ? middleFromTopUm : sectionUm - middleFromTopUm
    const leaf = result.leaves.find(
      (candidate) => middleUm >= candidate.innerDepthUm && middleUm <= candidate.innerDepthUm + candidate.thicknessUm,
    )
    if (leaf === undefined) continue
    const modulusGpa = planeStrainModulusGpa(material.modulusGpa.value, material.poisson.value)
    const armUm = middleUm - leaf.neutralAxisDepthUm
    // GPa um^3 = 1e-6 N mm2/mm.
    shieldNmm += modulusGpa * layer.nominalUm * (armUm ** 2 + layer.nominalUm ** 2 / 12) * 1e-6
  }
  const totalNmm = result.leaves.reduce((sum, leaf) => sum + leaf.rigidityNmm2PerMm, 0)
  return totalNmm > 0 ? Math.min(shieldNmm / totalNmm, 1) : 0
}
