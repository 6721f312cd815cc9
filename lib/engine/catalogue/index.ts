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
  type AnsweringRole,
  DECIDED_WHEN_WORDS,
  type DecidedWhen,
  type ItemDefinition,
  type ItemProse,
  type ItemVerdict,
  type Judgment,
  SECTIONS,
  type Section,
  type Titles,
} from './define-item'
export { evaluateCatalogue, evaluateItem } from './evaluate-catalogue'
export { FIRST_QUESTIONS } from './first-questions'
export { CATALOGUE, findItem, getItem } from './items'
export type { LimitDefinition } from './limit-definition'
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
export { SEVERITIES, type Severity } from './severity'
export { computeStepConcentration, filletRadiusOfTaperMm, type StepConcentration } from './step-concentration'
export * from './template'
