import type { DraftItemResult, Evaluation, ZoneResult } from '@/lib/engine'
import type { FoldStep, RoomSide, ShapeBody } from '@/lib/engine/folding'
import type { Plan } from '@/lib/plan'

/** What stands on a drawing sheet, apart from where. Every text is complete: the layout wraps and never cuts. */
export type SheetBlock =
  | SheetTable
  | SheetNotes
  | CrossSectionBlock
  | SheetPlan
  | SheetDrawnPlan
  | SheetFolded
  | SheetArray

export interface SheetColumn {
  readonly label: string
  /** Narrower than this the column is not set. */
  readonly leastMm: number
  /** Share of the width that is left over; 0 keeps the column as narrow as it may be. */
  readonly growth: number
  readonly isNumeric?: boolean
}

export interface SheetRow {
  /** Identity of the layer, zone, bend ... in the design; unique within the table. */
  readonly id: string
  readonly cells: readonly string[]
}

export interface SheetTable {
  readonly kind: 'table'
  readonly id: string
  readonly title: string
  readonly columns: readonly SheetColumn[]
  /** Leading columns that are repeated where the others do not fit beside each other. */
  readonly keyColumnCount: number
  readonly rows: readonly SheetRow[]
}

export interface SheetNotes {
  readonly kind: 'notes'
  readonly id: string
  readonly title: string
  /** Numbered in their order. */
  readonly notes: readonly { readonly id: string; readonly text: string }[]
  readonly leastMm: number
}

/** Section through one zone, or through several side by side. Thickness to scale. */
export interface CrossSectionBlock {
  readonly kind: 'section'
  readonly id: string
  readonly title: string
  readonly of: 'part' | 'zone'
  readonly zones: readonly ZoneResult[]
  readonly leastMm: number
}

/** Outline in the flat, to a standard scale. */
export interface SheetPlan {
  readonly kind: 'plan'
  readonly id: string
  readonly title: string
  /** Corners in order; x along the part, y upwards. */
  readonly verticesMm: readonly (readonly [xMm: number, yMm: number])[]
  readonly rollingDirection: 'along-x' | 'along-y' | null
  readonly leastMm: number
}

/** The part in plan as it was drawn, to a standard scale. */
export interface SheetDrawnPlan {
  readonly kind: 'drawn-plan'
  readonly id: string
  readonly title: string
  readonly plan: Plan
  readonly leastMm: number
}

/** The part folded by all its bends. */
export interface SheetFolded {
  readonly kind: 'folded'
  readonly id: string
  readonly title: string
  readonly bodies: readonly ShapeBody[]
  readonly steps: readonly FoldStep[]
  readonly room: readonly RoomSide[]
  /** A sentence for each pair of bends that lie over each other. */
  readonly notes: readonly string[]
  readonly leastMm: number
}

/** Parts in the array in which they are delivered. */
export interface SheetArray {
  readonly kind: 'array'
  readonly id: string
  readonly title: string
  readonly plan: Plan
  readonly array: NonNullable<Plan['array']>
  readonly leastMm: number
}

/** What a drawing takes from the results: sections, and how bends lie in them. Verdicts and limits, which differ between viewers, stay out. */
export type SheetResults = Pick<Evaluation, 'zones' | 'bends'> & {
  /** Of the checklist: what it computed of impedances is printed. */
  readonly items?: readonly DraftItemResult[]
}
