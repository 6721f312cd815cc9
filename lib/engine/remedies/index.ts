export { findRemedies, type RemedyOptions } from './find-remedies'
export { applyDesignPatch } from './patch'
export { doesDominate, listCounts } from './ranking'
export {
  type ForbiddenNeed,
  type NeededMaterial,
  REMEDY_FAMILIES,
  type Remedy,
  type RemedyChange,
  type RemedyFamily,
  type RemedyReport,
  type RemedyState,
} from './remedy'
