import { z } from 'zod'
import { arraySchema, assemblySchema, tolerancesSchema } from './assembly-terms'
import { deviationUmSchema, distanceMmSchema, idSchema, lengthMmSchema, temperatureDegCSchema } from './primitives'

/** Flame classes of UL 94: V for a specimen that stands by itself, VTM for one too thin to. `not-asked` is an answer. */
export const FLAME_CLASSES = ['not-asked', 'v-0', 'v-1', 'v-2', 'vtm-0', 'vtm-1', 'vtm-2', 'hb'] as const

/** Who measures; `nobody` is an answer. */
export const MEASURED_BY = ['fabricator', 'own-team', 'independent', 'nobody'] as const

/** What a finish is ordered to. */
export const FINISH_STANDARDS = [
  'ipc-4552',
  'ipc-4553',
  'ipc-4554',
  'ipc-4555',
  'ipc-4556',
  'astm-b488',
  'named-on-order',
] as const

export const MARK_PLACES = ['on-part', 'on-packing', 'none'] as const
export const MARKING_METHODS = ['ink', 'copper', 'laser', 'label'] as const
export const MARKED_AREAS = ['rigid', 'stiffened', 'flex-beside-bends', 'flex-in-bend'] as const

/** What happens before a change at the fabricator takes effect. */
export const CHANGE_RULES = ['approval', 'notice', 'free'] as const
/** What may stand in for a material without asking. */
export const SUBSTITUTE_RULES = ['ask-first', 'same-specification', 'equivalent'] as const
/** What cuts the outline. */
export const OUTLINE_TOOLS = ['laser', 'steel-rule-die', 'hard-die', 'router'] as const

/** Contact of ISO 10993-1 by the time that it lasts in all. */
export const SKIN_CONTACTS = ['none', 'up-to-24-hours', 'up-to-30-days', 'longer'] as const
export const SEALS = ['housing', 'potting', 'coating', 'nothing'] as const
export const CLEANINGS = ['none', 'water', 'saponified-water', 'solvent'] as const
export const DISCHARGE_ENTRIES = ['nowhere', 'connector', 'cut-edge', 'touched-face'] as const
export const DISCHARGE_PATHS = ['chassis', 'guard-conductor', 'suppressor', 'nothing'] as const
export const PULL_FEATURES = ['tab', 'hole', 'nothing'] as const
export const EXPOSURES = ['none', 'splash', 'constant'] as const

const said = z.boolean().nullable()

/** Test and acceptance: numbers and choices that an order or a drawing states. Null is not stated yet. */
const acceptanceSchema = z.strictObject({
  testVoltageVolt: z.number().positive('must be greater than 0 V').max(100_000).nullable(),
  /** Most that a conductor may have from end to end. */
  continuityOhm: z.number().positive('must be greater than 0 Ω').max(1e6).nullable(),
  /** Least between conductors. */
  isolationMegohm: z.number().positive('must be greater than 0 MΩ').max(1e9).nullable(),
  /** Of stiffened and rigid areas, as a share of the length or diagonal. */
  bowAndTwistPct: z.number().min(0, 'must not be negative').max(100, 'must be at most 100 %').nullable(),
  hasSurfaceMountParts: said,
  /** How often a land is soldered, the first time included, and unsoldered. */
  solderingsOnCount: z.int('must be a whole number').min(1).max(100).nullable(),
  solderingsOffCount: z.int('must be a whole number').min(0).max(100).nullable(),
  flameClass: z.enum(FLAME_CLASSES).nullable(),
  /** Does the fabricator hold the class for this very construction? */
  flameClassHeld: said,
  /** Pieces of the first lot that are measured. */
  firstArticleCount: z.int('must be a whole number').min(1).max(100_000).nullable(),
  measuredFlatBy: z.enum(MEASURED_BY).nullable(),
  measuredFoldedBy: z.enum(MEASURED_BY).nullable(),
  sectionsBy: z.enum(MEASURED_BY).nullable(),
})

/** Besides which finish it is. Metals that the finish has not stay empty. */
const finishTermsSchema = z.strictObject({
  standard: z.enum(FINISH_STANDARDS).nullable(),
  /** Of the metal on top: gold, silver, tin or solder. */
  topMetalUm: deviationUmSchema.nullable(),
  nickelUm: deviationUmSchema.nullable(),
  palladiumUm: deviationUmSchema.nullable(),
})

const markingSchema = z.strictObject({
  partNumber: z.enum(MARK_PLACES).nullable(),
  lotOrDate: z.enum(MARK_PLACES).nullable(),
  flameMark: z.enum(MARK_PLACES).nullable(),
  method: z.enum(MARKING_METHODS).nullable(),
  area: z.enum(MARKED_AREAS).nullable(),
  letterHeightMm: lengthMmSchema.nullable(),
  lineWidthMm: lengthMmSchema.nullable(),
  toPadMm: distanceMmSchema.nullable(),
})

/** What is agreed with the fabricator beside the drawing. */
const agreementsSchema = z.strictObject({
  orderOrDrawing: z.enum(['order', 'drawing']).nullable(),
  drawingOrArtwork: z.enum(['drawing', 'artwork']).nullable(),
  drawingOrStandard: z.enum(['drawing', 'standard']).nullable(),
  materialChange: z.enum(CHANGE_RULES).nullable(),
  processChange: z.enum(CHANGE_RULES).nullable(),
  siteChange: z.enum(CHANGE_RULES).nullable(),
  panelChange: z.enum(CHANGE_RULES).nullable(),
  copperSubstitute: z.enum(SUBSTITUTE_RULES).nullable(),
  filmSubstitute: z.enum(SUBSTITUTE_RULES).nullable(),
  adhesiveSubstitute: z.enum(SUBSTITUTE_RULES).nullable(),
  boardSubstitute: z.enum(SUBSTITUTE_RULES).nullable(),
  prototypeTool: z.enum(OUTLINE_TOOLS).nullable(),
  seriesTool: z.enum(OUTLINE_TOOLS).nullable(),
  limitsHoldForSeries: said,
  hasPredecessor: said,
  lessonsReviewed: said,
  isRestricted: said,
  isDeclared: said,
  isHalogenFree: said,
})

/** What the part meets in service. Asked where a profile of the project asks for it. */
const exposureSchema = z.strictObject({
  skinContact: z.enum(SKIN_CONTACTS).nullable(),
  touchedFace: z.enum(['top', 'bottom', 'both']).nullable(),
  openFinishCovered: said,
  skinMaterialsEvaluated: said,
  hasWetEdges: said,
  sealedBy: z.enum(SEALS).nullable(),
  /** Sodium chloride equivalent. */
  ionicLimitUgPerCm2: z.number().positive('must be greater than 0 µg/cm²').max(1000).nullable(),
  cleaning: z.enum(CLEANINGS).nullable(),
  dryingDegC: temperatureDegCSchema.nullable(),
  dryingHours: z.number().positive('must be greater than 0 h').max(1000).nullable(),
  hasAntenna: said,
  antennaKeepOutMm: lengthMmSchema.nullable(),
  /** Nearest metal in the folded state. */
  antennaToMetalMm: distanceMmSchema.nullable(),
  dischargeEntry: z.enum(DISCHARGE_ENTRIES).nullable(),
  dischargePath: z.enum(DISCHARGE_PATHS).nullable(),
  /** 0 where nobody pulls. */
  pullForceNewton: z.number().min(0, 'must not be negative').max(10_000).nullable(),
  pullFeature: z.enum(PULL_FEATURES).nullable(),
  movesWhenCold: said,
  coldTestDegC: temperatureDegCSchema.nullable(),
  oils: z.enum(EXPOSURES).nullable(),
  coolants: z.enum(EXPOSURES).nullable(),
  cleaners: z.enum(EXPOSURES).nullable(),
  light: z.enum(EXPOSURES).nullable(),
  fluidsWithstood: said,
})

/** As measured on the very material, in the trade's two figures: total mass loss and what condenses. */
const outgassingSchema = z.strictObject({
  materialId: idSchema,
  totalLossPct: z.number().min(0, 'must not be negative').max(100, 'must be at most 100 %').nullable(),
  condensablePct: z.number().min(0, 'must not be negative').max(100, 'must be at most 100 %').nullable(),
})

/** Terms of the brief, in records of what belongs together. */
export const BRIEF_TERMS = {
  assembly: assemblySchema,
  tolerances: tolerancesSchema,
  array: arraySchema,
  acceptance: acceptanceSchema,
  finishTerms: finishTermsSchema,
  marking: markingSchema,
  agreements: agreementsSchema,
  exposure: exposureSchema,
} as const

export const outgassingListSchema = z.array(outgassingSchema).max(200)

type TermRecords = { readonly [K in keyof typeof BRIEF_TERMS]: z.infer<(typeof BRIEF_TERMS)[K]> }

const unknownOf = <K extends keyof TermRecords>(record: K): TermRecords[K] =>
  Object.fromEntries(Object.keys(BRIEF_TERMS[record].shape).map((key) => [key, null])) as TermRecords[K]

/** Nothing is stated yet. A fresh copy at every call. */
export function makeUnknownTerms() {
  return {
    assembly: unknownOf('assembly'),
    tolerances: unknownOf('tolerances'),
    array: unknownOf('array'),
    acceptance: unknownOf('acceptance'),
    finishTerms: unknownOf('finishTerms'),
    marking: unknownOf('marking'),
    agreements: unknownOf('agreements'),
    exposure: unknownOf('exposure'),
    outgassing: [],
  }
}
