export {
  type CurrentLocation,
  currentCapacityAmp,
  listCurrentCautions,
  requiredAreaMm2,
  temperatureRiseDegC,
} from './current'
export { HATCH_BAR_OVER_PITCH, hatchConductanceFraction, isHatchConductionKnown, MIN_PITCHES_ACROSS } from './hatch'
export { type ConductorNeeds, findLightestFoil } from './lightest-foil'
export {
  IACS_RESISTIVITY_OHM_MM2_PER_M,
  resistanceOhm,
  sectionAreaMm2,
  skinDepthUm,
  voltageDropVolt,
} from './resistance'
export { findKnownSpacing, HAZARD_ABOVE_VOLT } from './voltage-spacing'
