/** Relative cost: process steps, the rules that select them, and the index per good part. */
export { type CostBasis, estimateByBasis } from './basis'
export {
  type Cost,
  getPanelCostPerGoodPart,
  type PricedPanel,
  priceConstruction,
  priceOnBestPanel,
  type StepCost,
  type YieldStep,
} from './price'
export { listRules, type SelectedStep, selectSteps } from './rules'
export {
  findRegistrationCost,
  makeRates,
  PROCESS_STEPS,
  type ProcessRatesContent,
  type ProcessStep,
  processRatesContentSchema,
  type RatedStep,
  type Rates,
  type RegistrationCost,
  STEP_GROUPS,
  type StepGroup,
  type StepUnit,
} from './steps'
export {
  type ConstructionTraits,
  type CoverlayMethod,
  describeConstruction,
  REGISTRATION_DEMANDS,
  type RegistrationDemand,
} from './traits'
