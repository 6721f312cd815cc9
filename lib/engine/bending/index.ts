export { computeLeafLengthDifference, developedLengthMm } from './developed-length'
export { type BentState, yieldStrainPct } from './elastic-plastic'
export {
  computeHandbookRadius,
  HANDBOOK_DEFORMATION_PCT,
  type HandbookConstruction,
  type HandbookRadius,
  READ_HEAD_DEFORMATION_PCT,
} from './handbook-radius'
export { bendingMomentNmm, computeParallelFaceFold, holdingForceN, type ParallelFaceFold } from './holding'
export { type BendLayer, coverageWeightedModulusGpa, orderInnermostFirst, planeStrainModulusGpa } from './layers'
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
  type RadiusForStrain,
  strainAtDepthPct,
} from './strain'
export {
  type ConductorStrainRange,
  computeStrainRange,
  type FaceRange,
  type TolerancedLayer,
} from './strain-range'
export { thermalCurvaturePerMm } from './thermal-curvature'
