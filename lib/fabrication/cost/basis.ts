import type { Design } from '@/lib/engine'
import { type PricedPanel, priceOnBestPanel } from './price'
import type { Rates } from './steps'
import { describeConstruction, type RegistrationDemand } from './traits'

/** Everything that a trial's cost needs, as plain data: a remedy moves no outline, so nesting is done beforehand. */
export interface CostBasis {
  readonly rates: Rates
  readonly panels: Readonly<Record<RegistrationDemand, readonly PricedPanel[]>>
}

/** Index and parts per panel of a design by a basis; null where no panel holds the part. Takes some microseconds. */
export function estimateByBasis(
  design: Design,
  { rates, panels }: CostBasis,
): { readonly indexPerGoodPart: number; readonly partsPerPanel: number } | null {
  const traits = describeConstruction(design)
  const cost = priceOnBestPanel(traits, rates, panels[traits.registration], design.brief.quantityPerYear)
  return cost === null ? null : { indexPerGoodPart: cost.indexPerGoodPart, partsPerPanel: cost.panel.partsPerPanel }
}
