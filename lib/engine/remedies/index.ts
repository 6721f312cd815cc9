export { findRemedies, type RemedyOptions } from './find-remedies'
export { applyDesignPatch } from './patch'
export { doesDominate, listCounts } from './ranking'
export type {
  ForbiddenNeed,
  NeededMaterial,
  Remedy,
  RemedyChange,
  RemedyFamily,
  RemedyReport,
  RemedyState,
} from './remedy'
