export { computeAdhesiveFlow } from './adhesive-flow'
export { computeFinishedCopper } from './finished-copper'
export {
  findMinimumFinishedCopper,
  STANDARD_FOILS,
} from './minimum-finished-copper'
export { simulateThickness, type ThicknessSimulation } from './monte-carlo'
export { computeCapability, type ProcessCapability, standardDeviationFromToleranceUm } from './process-capability'
export {
  computeThicknessRange,
  type ThicknessContributor,
} from './tolerance-stack'
export { computeWindowMargin } from './window'
