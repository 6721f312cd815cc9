/** Relative cost: process steps, the rules that select them, and the index per good part. */
export { type CostBasis, estimateByBasis } from './basis'
export {
  type Cost,
  getPanelCostPerGoodPart,
  type PricedPanel,
  priceConstruction,
  priceOnBestPanel,
} from './price'
export { listRules, selectSteps } from './rules'
export {
  findRegistrationCost,
  makeRates,
  PROCESS_STEPS,
  type ProcessRatesContent,
  processRatesContentSchema,
  type Rates,
  STEP_GROUPS,
  type StepGroup,
  type StepUnit,
} from './steps'
export {
  type ConstructionTraits,
  describeConstruction,
  REGISTRATION_DEMANDS,
  type RegistrationDemand,
} from './traits'
