/** Parts per panel and cost of a design at a fabricator, and beside other constructions. */
export {
  ALTERNATIVE_RULE,
  compareWithAlternatives,
  listAlternatives,
  withKnownPart,
} from './alternatives'
export { makeCostBasis } from './cost-basis'
export {
  type Estimate,
  estimate,
  type FabricatorBasis,
  findPricedNesting,
  type NestedFormat,
  priceOverQuantity,
} from './estimate'
export { gatherProductionFacts, type ProductionFacts } from './facts'
export { makeNester, type Nester, NestingMemory } from './nest-cache'
