export { accuracyOfMomentPct, accuracyOfStrainPct, LEAST_RADIUS_RATIO, NARROW_CONDUCTORS_NOTE } from './accuracy'
export { findAxisUm, momentNPerMmWidth } from './bent-state'
export { type LayerConstant, readConstant, withConstant } from './constants'
export { computeLeafLengthDifference, developedLengthMm } from './developed-length'
export { equivalentRadiusMm, type FlatterEnd, flatterRadiusMm, tighterRadiusMm } from './flatter-end'
export {
  computeHandbookRadius,
  HANDBOOK_DEFORMATION_PCT,
  type HandbookConstruction,
  type HandbookRadius,
} from './handbook-radius'
export {
  explainOutsideHatchTable,
  HATCH_BAR_OVER_PITCH,
  type HatchPattern,
  hatchModulusGpa,
  hatchWidthFraction,
} from './hatch'
export { computeHeldLeaf, stretchingNPerMm } from './held-leaf'
export { computeParallelFaceFold, ELASTICA_FACTOR, holdingForceN } from './holding'
export {
  type BendLayer,
  effectiveModulusGpa,
} from './layers'
export { computeLeaves, type Leaf } from './leaves'
export { boundPullStrainPct, computePullStrainPct, MOST_PULL_STRAIN_PCT } from './pull'
export {
  computeRatioRadius,
  DEFAULT_RATIO_TABLE_ID,
  findRatioTable,
  RATIO_TABLES,
  type RatioTable,
  type RatioUse,
  ratioLayersFor,
  surfaceStrainPctFromRatio,
} from './ratio-tables'
export { type BondedSection, computeSection, type PlacedLayer } from './section'
export {
  computeFormedState,
  computeSpringback,
  type Springback,
} from './springback'
export {
  type BendStrain,
  type ConductorStrain,
  computeBendStrain,
  computeMinRadiusForStrain,
  type Loading,
  yieldScaleOf,
} from './strain'
export {
  atEnds,
  type ConductorStrainRange,
  type ConstantSpread,
  computeStrainRanges,
  type FaceRange,
  type TolerancedLayer,
} from './strain-range'
export { isYieldBeyond, type Strip, stripsOf, yieldStrainPct } from './strips'
export { curlRisePct, type ExpandingLayer, thermalCurvaturePerMm } from './thermal-curvature'
export {
  computeStripTwist,
  equivalentStrainPct,
  explainOutsideTwist,
  MOST_EDGE_STRAIN_RATIO,
  mostTwistRatePerMm,
  twistShearPct,
} from './twist'
