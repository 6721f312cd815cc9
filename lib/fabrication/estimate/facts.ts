import type { Design, ReviewFacts } from '@/lib/engine'
import { compareWithAlternatives } from './alternatives'
import { estimate, type FabricatorBasis, findPricedNesting } from './estimate'
import type { Nester } from './nest-cache'

export type ProductionFacts = Pick<ReviewFacts, 'partsPerPanel' | 'panelUtilisationFraction' | 'costOverCheapestRatio'>

/**
 * What panels and rates say of a design, for the review's items. Where several fabricators count, the worst of them does:
 * the part must suit every fabricator that may build it. A field that nothing is known of is left out.
 */
export function gatherProductionFacts(
  design: Design,
  fabricators: readonly FabricatorBasis[],
  nest: Nester,
): ProductionFacts {
  let worst: { count: number; utilisationFraction: number } | null = null
  let ratio: number | null = null
  for (const basis of fabricators) {
    const result = estimate(design, basis, nest)
    if (!result.ok) continue
    const nesting = findPricedNesting(result)?.nesting ?? { count: 0, utilisationFraction: 0 }
    if (worst === null || nesting.utilisationFraction < worst.utilisationFraction) worst = nesting
    const compared = compareWithAlternatives(design, basis, nest)
    if (compared !== null && (ratio === null || compared.ratio > ratio)) ratio = compared.ratio
  }
  return {
    ...(worst === null ? {} : { partsPerPanel: worst.count, panelUtilisationFraction: worst.utilisationFraction }),
    ...(ratio === null ? {} : { costOverCheapestRatio: ratio }),
  }
}
