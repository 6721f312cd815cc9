/**
 * The public surface of the engine, listed by hand. Pure: no clock, no randomness without a seed, no I/O; the same
 * code runs in the browser, on the server and from the command line.
 */
export {
  computeTornado,
  DEFAULT_SURVIVAL_PCT,
  type Swing,
  type SwingQuantity,
  simulateZoneThickness,
  type Tornado,
} from './assembly'
export { drawDimensions } from './assembly/drawn'
export { DEFAULT_RATIO_TABLE_ID, RATIO_TABLES } from './bending'
export { CAUTIONS, LIFE_CAUTION, LIFE_CAUTION_SHORT } from './cautions'
export type { ArtworkReviewFacts, LimitOverride, ReviewFacts } from './context'
export * from './design'
export { buildContext, evaluate, evaluateDraft } from './evaluate'
export type { TestedLife } from './flex-tests'
export { DEFAULT_WEIBULL_SLOPE } from './life'
export { findLibraryMaterial, listLibraryMaterials, PLATED_COPPER_ID } from './materials'
// Types alone: remedies are sought on demand, and are a part of the browser's load that a page fetches when it needs it
// (`@/lib/engine/remedies`). So are the starting constructions (`@/lib/engine/starting-constructions`).
export type {
  Remedy,
  RemedyOptions,
  RemedyReport,
  RemedyState,
} from './remedies'
export * from './results'
export { makeResultsDocument } from './results-document'
export { citeRecordedSource, citeSource, SOURCE_KINDS, SOURCES, type Source, type SourceKey } from './sources'
export type { ThicknessSimulation } from './thickness'
export {
  foilWeightOzPerFt2,
  type LengthUnit,
  umFromLength,
} from './units'
export { ENGINE_VERSION } from './version'
