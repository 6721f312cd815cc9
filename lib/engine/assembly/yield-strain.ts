import type { Material } from '../design'

/** Where a record states no yield: our choice, as the library has it. Glass and metal sheet bend little, and stay elastic. */
const DEFAULT_YIELD_STRAIN_PCT: Partial<Record<Material['kind'], number>> = {
  'polymer-film': 3,
  adhesive: 5,
}

/**
 * Strain past which a film or adhesive yields; null where the material is taken as elastic.
 *
 * @param cautions  receives a sentence where a default stands in
 */
export function findYieldStrainPct(material: Material, cautions: Set<string>): number | null {
  if (material.yieldStrainPct !== null) return material.yieldStrainPct.value
  const yieldStrainPct = DEFAULT_YIELD_STRAIN_PCT[material.kind] ?? null
  if (yieldStrainPct !== null) {
    cautions.add(`The record of ${material.name} states no yield strain: ${yieldStrainPct} % is taken, our choice.`)
  }
  return yieldStrainPct
}
