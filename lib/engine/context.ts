import type { ArtworkFacts, OnPlanFacts, OnPlanHatch } from '@/lib/artwork'
import type { Design, Drawing, Layer, Material, Zone } from './design'
import type { BendResult, ConductorResult, DamageResult, Limit, LimitOwner, ZoneResult } from './results'

/** A limit that a workspace or a fabricator sets in place of the dictionary's. Later entries of a list win. */
export interface LimitOverride {
  /** Key of the dictionary of limits; an unknown key is ignored, since a catalogue may be older than the list. */
  readonly key: string
  readonly value: number
  /** Upper end of a limit whose sense is `within`. */
  readonly upperValue?: number
  readonly owner: LimitOwner
  /** Key of SOURCES where the value has a source of its own; else the dictionary's stands beside it. */
  readonly sourceKey?: string
}

/**
 * What the review knows and the design document does not. Every field is optional: an absent one is "not known", and
 * the items that need it say "not computed" and name it. The clock comes in here as data.
 */
export interface ReviewFacts {
  /** Calendar day on which the evaluation is made, ISO 8601. */
  readonly evaluatedOn?: string
  /** Fabricators invited to the project. */
  readonly fabricatorsInvited?: number
  readonly openEngineeringQueries?: number
  readonly openMustChangeThreads?: number
  /** Days since a fabricator last looked at this revision; null when none has looked yet. */
  readonly daysSinceFabricatorLooked?: number | null
  /** Fields of the design that changed since a fabricator last looked; null when none has looked yet. */
  readonly changesSinceFabricatorLooked?: number | null
  /** Does a fabricator's "buildable" declaration stand on the present content? */
  readonly buildableDeclarationStands?: boolean
  /** What the drawing sheet that is made from the design does not state, by name and column; empty lists where it states all. */
  readonly sheetLacks?: {
    readonly layers: readonly string[]
    readonly bends: readonly string[]
    readonly coverlay: readonly string[]
    readonly stiffeners: readonly string[]
  }
  readonly artworkFileCount?: number
  /** Names of the artwork files, as they were uploaded. */
  readonly artworkFileNames?: readonly string[]
  /** Label of the revision under review. */
  readonly revisionLabel?: string
  /** What the artwork files say; null until they have been read. */
  readonly artwork?: ArtworkFacts | null
  /** What copper and holes of the artwork do on the plan; null until they have been laid over it. */
  readonly onPlan?: OnPlanFacts | null
  /** How many dimensions and materials fall where in the fabricator's matrix. */
  readonly capability?: {
    readonly comfortable: number
    readonly stretch: number
    readonly outside: number
    readonly notStated: number
    /** Names of the trade parameters behind both counts, each once. */
    readonly stretchEntries?: readonly string[]
    readonly notStatedEntries?: readonly string[]
  }
  /** How many of the construction's materials the fabricator holds. */
  readonly stock?: { readonly onShelf: number; readonly toOrder: number; readonly unknown: number }
  /** Lightest foil that every fabricator with shelf stock holds, as bought. */
  readonly lightestHeldFoilUm?: number
  /** Days from the evaluation to the latest order date of what is not on the shelf. */
  readonly orderSlackDays?: number
  readonly partsPerPanel?: number
  /** Area of the parts over that of the panel, 0 to 1. */
  readonly panelUtilisationFraction?: number
  /** Cost of this construction over that of the cheapest alternative that meets the need. */
  readonly costOverCheapestRatio?: number
}

/** What is known from the artwork alone. It holds for a draft too, as far as the draft is the design that the artwork was laid over. */
export type ArtworkReviewFacts = Pick<ReviewFacts, 'artworkFileCount' | 'artworkFileNames' | 'artwork' | 'onPlan'>

/**
 * Everything that the catalogue's items look at, computed once per evaluation. Lists keep the order of the design.
 */
export interface EvaluationContext {
  /** With what its plan draws in place of what was stated. */
  readonly design: Design
  readonly drawing: Drawing
  /** The design's own material first, then the library's. */
  readonly findMaterial: (materialId: string) => Material | null
  /** What stands between the conductors of a layer in a zone; null is air. */
  readonly findFill: (zoneId: string, layerId: string) => Material | null
  /** The hatch that artwork draws on a layer in a zone; null where none was measured on the plan as it is. */
  readonly findDrawnHatch: (zoneId: string, layerId: string) => OnPlanHatch | null
  readonly layersById: ReadonlyMap<string, Layer>
  readonly zonesById: ReadonlyMap<string, Zone>
  readonly zones: readonly ZoneResult[]
  readonly bends: readonly BendResult[]
  readonly conductors: readonly ConductorResult[]
  readonly damage: readonly DamageResult[]
  readonly findZoneResult: (zoneId: string) => ZoneResult | null
  readonly findBendResult: (bendId: string) => BendResult | null
  /** The limit in force and whose it is. Throws RangeError for a key that the dictionary lacks. */
  readonly getLimit: (key: string) => Limit
  readonly facts: ReviewFacts
}
