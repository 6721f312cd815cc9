export { listAskedRoles } from './asked-of'
export {
  computeMargin,
  decide,
  describeLimit,
  makeDesignLimit,
  makeSourceLimit,
  notComputed,
} from './decide'
export {
  DECIDED_WHEN,
  DECIDED_WHEN_WORDS,
  type DecidedWhen,
  type ItemDefinition,
  type ItemVerdict,
} from './define-item'
export { evaluateCatalogue, evaluateItem } from './evaluate-catalogue'
export { markFollowers } from './find-followers'
export { FIRST_QUESTIONS } from './first-questions'
export { CATALOGUE, findItem, getItem, USUAL_ITEMS } from './items'
export {
  findLimitProblem,
  getDefaultLimit,
  getLimitDefinition,
  isLimitKey,
  LIMIT_KEYS,
  LIMITS,
  type LimitKey,
  makeLimitLookup,
} from './limits'
export { listLineZones } from './line-zones'
export { findDrawnHatch } from './measured'
export {
  DELIVERED_PROFILES,
  layProfileLimits,
  PROFILE_ITEM_IDS,
  type Profile,
} from './profiles'
export { describeRootCause } from './roots'
export { SEVERITIES, type Severity } from './severity'
export { computeStepConcentration, filletRadiusOfTaperMm } from './step-concentration'
export {
  findEarlierQuestion,
  findPresentItemId,
  passLimitsOn,
  passTemplateOn,
} from './successors'
export * from './template'
