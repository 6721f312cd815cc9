/** Sheets that a fabricator keeps, and a revision against them. */
import type {
  CapabilityCounts,
  CapabilityVerdict,
  FabricationSheetContent,
  OrderAdvice,
  ShelfCounts,
  ShelfState,
  TableChanges,
  TableSheetKind,
} from '@/lib/fabrication'
import type { Sharing } from '@/lib/review'
import type { CompanyView, PersonView } from './people'

/** One version of a sheet that a fabricator keeps; `version` 0 is before there is one. */
export interface FabricationSheetVersionView {
  readonly version: number
  /** YYYY-MM-DD; the day that the fabricator put on it. */
  readonly issuedOn: string
  readonly note: string
  readonly setBy: PersonView
  readonly setAt: string
}

export interface FabricationSheetView<C> {
  readonly company: CompanyView
  readonly mayEdit: boolean
  /** Earlier versions are for the fabricator's own people. */
  readonly mayOpenVersions: boolean
  /** Null where the fabricator has not said anything yet. */
  readonly current: (FabricationSheetVersionView & { readonly content: C }) | null
}

/** A sheet that is a list of rows, with its kind. */
export type SheetTable = {
  readonly [K in TableSheetKind]: { readonly kind: K; readonly content: FabricationSheetContent<K> }
}[TableSheetKind]

/** One version of a sheet that is a list of rows, held against another one. */
export interface SheetVersionView {
  readonly company: CompanyView
  readonly mayRestore: boolean
  readonly version: FabricationSheetVersionView
  readonly sheet: SheetTable
  readonly newestVersion: number
  /** All others, newest first. */
  readonly others: readonly FabricationSheetVersionView[]
  /** From the earlier of the two to the later; null where there is no other version. */
  readonly comparison: {
    readonly from: number
    readonly to: number
    readonly rows: TableChanges
    /** Of a shelf, where it differs; days, null is not stated. */
    readonly buildTimeDays: { readonly before: number | null; readonly after: number | null } | null
  } | null
}

/** A cell of a file that cannot be taken. */
export interface BadCellView {
  /** Line of the file, counted from 1. */
  readonly line: number
  readonly column: string
  readonly text: string
  readonly reason: string
}

/** What a file would do to a sheet; nothing of it is done. */
export interface SheetFilePreview extends TableChanges {
  readonly fileName: string
  /** The version that it is held against. */
  readonly seenVersion: number
  readonly rowCount: number
  readonly goodRowCount: number
  readonly badRowCount: number
  readonly bad: readonly BadCellView[]
  /** Headings of the file that the sheet does not know, and that are passed over. */
  readonly unknownColumns: readonly string[]
}

/** Where one value of the design falls with one fabricator. */
export interface FitCellView {
  readonly verdict: CapabilityVerdict
  /** What the deciding row states; null where the matrix says nothing. */
  readonly comfortable: string | null
  readonly stretch: string | null
  readonly conditions: string
  readonly note: string
  /** What would have to change. */
  readonly change: string | null
}

export interface FitValueView {
  /** Where it stands, kind and id. */
  readonly at: string
  readonly text: string
  readonly place: string
  readonly foilUm: number | null
  /** One for each fabricator whose matrix is shown or checked against, in their order. */
  readonly cells: readonly FitCellView[]
}

export interface FitParameterView {
  readonly key: string
  readonly group: string
  readonly name: string
  readonly question: string
  readonly measuredAs: string
  readonly values: readonly FitValueView[]
  /** Why there is no value: the design has no such thing, or does not say. */
  readonly without: { readonly kind: 'absent' | 'unknown'; readonly reason: string } | null
}

export interface FitSubstituteView {
  readonly name: string
  readonly moves: readonly string[]
}

export interface FitMaterialView {
  readonly layerId: string
  readonly name: string
  readonly state: ShelfState
  readonly reason: string | null
  readonly form: string
  readonly leadTimeDays: number | null
  readonly minimumOrderM2: number | null
  readonly note: string
  readonly order: OrderAdvice | null
  readonly substitutes: readonly FitSubstituteView[]
  /** On the shelf and tried, and left out since a verdict would get worse. */
  readonly leftOut: readonly { readonly name: string; readonly because: string }[]
}

export interface FabricatorFitView {
  readonly company: CompanyView
  /** What the person who asks may have of its sheets. */
  readonly sharing: Sharing
  readonly matrix: { readonly version: number; readonly issuedOn: string } | null
  readonly counts: CapabilityCounts | null
  readonly shelf: {
    readonly version: number
    readonly issuedOn: string
    readonly buildTimeDays: number | null
    readonly counts: ShelfCounts
    readonly materials: readonly FitMaterialView[]
  } | null
}

/** A revision against what its fabricators can build and hold. A fabricator's holds only its own company. */
export interface FabricationFitView {
  readonly revisionId: string
  readonly label: string
  /** Calendar day that order dates are counted from. */
  readonly today: string
  readonly needDate: string | null
  readonly isFabricator: boolean
  readonly fabricators: readonly FabricatorFitView[]
  readonly parameters: readonly FitParameterView[]
}
