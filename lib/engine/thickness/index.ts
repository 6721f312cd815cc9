export { type AdhesiveFlow, computeAdhesiveFlow } from './adhesive-flow'
export { computeFinishedCopper, type FinishedCopper } from './finished-copper'
export {
  type ConductorLocation,
  findMinimumFinishedCopper,
  type MinimumFinishedCopper,
  type ProductClass,
  STANDARD_FOILS,
} from './minimum-finished-copper'
export { simulateThickness, type ThicknessSimulation } from './monte-carlo'
export { computeCapability, type ProcessCapability, standardDeviationFromToleranceUm } from './process-capability'
export {
  computeThicknessRange,
  type Range,
  type Spread,
  type ThicknessContributor,
  type ThicknessRange,
} from './tolerance-stack'
export { computeWindowMargin, type WindowMargin } from './window'
