export { computeAdhesiveFlow } from './adhesive-flow'
export { computeFinishedCopper } from './finished-copper'
export {
  findMinimumFinishedCopper,
  findStandardFoilWeight,
  MIN_PLATING_UM,
  STANDARD_FOILS,
} from './minimum-finished-copper'
export { simulateThickness, type ThicknessSimulation } from './monte-carlo'
export { computeCapability, type ProcessCapability } from './process-capability'
export {
  computeThicknessRange,
  type ThicknessContributor,
} from './tolerance-stack'
