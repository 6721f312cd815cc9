export { findRemedies, searchRemedies } from './find-remedies'
export { RADIUS_FAMILIES, type RemedyOptions } from './options'
export { applyDesignPatch } from './patch'
export { doesDominate, listCounts } from './ranking'
export type {
  Remedy,
  RemedyFamily,
  RemedyReport,
  RemedyState,
} from './remedy'
export { searchWayOut } from './way-out/search-way-out'
export type { WayOut } from './way-out/way-out'
