export { accuracyOfMomentPct, accuracyOfStrainPct, LEAST_RADIUS_RATIO, NARROW_CONDUCTORS_NOTE } from './accuracy'
export { findAxisUm, momentNPerMmWidth, type StripStack } from './bent-state'
export { type LayerConstant, readConstant, withConstant } from './constants'
export { computeLeafLengthDifference, developedLengthMm } from './developed-length'
export {
  computeHandbookRadius,
  HANDBOOK_DEFORMATION_PCT,
  type HandbookConstruction,
  type HandbookRadius,
  READ_HEAD_DEFORMATION_PCT,
} from './handbook-radius'
export {
  explainOutsideHatchTable,
  HATCH_BAR_OVER_PITCH,
  type HatchPattern,
  hatchModulusGpa,
  hatchWidthFraction,
} from './hatch'
export { bendingMomentNmm, computeParallelFaceFold, holdingForceN, type ParallelFaceFold } from './holding'
export {
  type BendLayer,
  coverageWeightedModulusGpa,
  effectiveModulusGpa,
  orderInnermostFirst,
  planeStrainModulusGpa,
} from './layers'
export { computeLeaves, type Leaf, type LeavesInFold } from './leaves'
export {
  computeRatioRadius,
  DEFAULT_RATIO_TABLE_ID,
  findRatioTable,
  RATIO_TABLES,
  type RatioLayers,
  type RatioRadius,
  type RatioTable,
  type RatioUse,
  ratioLayersFor,
  surfaceStrainPctFromRatio,
} from './ratio-tables'
export { computeSection, type Section, type SectionLayer } from './section'
export {
  type BentState,
  computeFormedState,
  computeMomentCurvature,
  computeSpringback,
  type FormedState,
  type Springback,
} from './springback'
export {
  type BendStrain,
  type ConductorStrain,
  computeBendStrain,
  computeMinRadiusForStrain,
  type Face,
  type Loading,
  type RadiusForStrain,
  strainAtDepthPct,
  yieldScaleOf,
} from './strain'
export {
  atEnds,
  type ConductorStrainRange,
  type ConstantSpread,
  computeStrainRange,
  computeStrainRanges,
  type FaceRange,
  type TolerancedLayer,
} from './strain-range'
export { isYieldBeyond, type Strip, stripsOf, yieldStrainPct } from './strips'
export { thermalCurvaturePerMm } from './thermal-curvature'
