export { findRemedies, searchRemedies } from './find-remedies'
export { RADIUS_FAMILIES, type RemedyOptions } from './options'
export { applyDesignPatch } from './patch'
export { doesDominate, listCounts } from './ranking'
export type {
  ForbiddenNeed,
  HeldBack,
  NeededMaterial,
  Remedy,
  RemedyArrival,
  RemedyChange,
  RemedyFamily,
  RemedyReport,
  RemedySearch,
  RemedyState,
} from './remedy'
export type { RemedyProgress } from './search'
