export {
  computeAllowableStrain,
  computeBendLife,
  type Survival,
  survivalOverRelation,
} from './allowable'
export { ductilityLifeCycles, ductilityStrainRangeFraction } from './branch'
export {
  type BendMotion,
  computeMedianLife,
  EXTRAPOLATION_CYCLES,
  type FatigueFoil,
  fatigueStrainRangeFraction,
  findFatigueDuctility,
  MAX_CYCLES,
  MAX_TEST_CYCLES,
  MIN_CYCLES,
  mandrelStrainRangeFraction,
  RANKING_LIMIT_CYCLES,
  strainRangeOfMotion,
} from './fatigue'
export { rankFailures } from './median-ranks'
export {
  computeBarrelStrain,
  type PlatingQuality,
  strainMultiplier,
  WALL_WEIBULL_SLOPE,
} from './plated-hole'
export {
  computeDamage,
  DAMAGE_SUM_AT_FAILURE,
  DEFAULT_WEIBULL_SLOPE,
  lifeOverMedianFraction,
} from './survival'
export {
  type BoundedEstimate,
  type CommonSlopeFit,
  fitCommonSlope,
  fitLifeAtFraction,
  fitWeibull,
  type LifeSpecimen,
} from './weibull-fit'
