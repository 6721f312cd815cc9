import { type CostBasis, type Rates, REGISTRATION_DEMANDS } from '../cost'
import type { NestedPart, PanelFormat } from '../panel'
import { nestOnFormats, toPricedPanels } from './estimate'
import type { Nester } from './nest-cache'

/** Nests the part once for each demand on registration that a change could bring about. */
export function makeCostBasis(
  part: NestedPart,
  formats: readonly PanelFormat[],
  rates: Rates,
  nest: Nester,
): CostBasis {
  const panels = Object.fromEntries(
    REGISTRATION_DEMANDS.map((demand) => [demand, toPricedPanels(nestOnFormats(part, formats, rates, demand, nest))]),
  ) as unknown as CostBasis['panels']
  return { rates, panels }
}
