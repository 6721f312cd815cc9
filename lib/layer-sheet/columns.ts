import { LAYER_FIELDS } from '@/lib/engine'

const PLATING = LAYER_FIELDS.plating.fields
const { process: PLATING_PROCESS } = PLATING
/** Processes of plating by name. */
export const PLATING_NAMES = PLATING_PROCESS.choices

/** A column's key, its title, names under which other tables know it, and how it looks. */
interface ColumnFacts {
  readonly title: string
  /** In small letters, for headings of pasted tables. General words of the trade. */
  readonly otherNames: readonly string[]
  readonly isLength: boolean
  readonly isNumeric: boolean
  readonly isRequired: boolean
  readonly widthRem: number
}

const column = (title: string, widthRem: number, more: Partial<ColumnFacts> = {}): ColumnFacts => ({
  title,
  otherNames: [],
  isLength: false,
  isNumeric: more.isLength === true,
  isRequired: false,
  widthRem,
  ...more,
})

/** What each row states of its layer, in the order of the columns. */
export const LAYER_COLUMNS = {
  name: column('Layer', 13, { otherNames: ['name', 'layer name', 'description'], isRequired: true }),
  kind: column(LAYER_FIELDS.kind.label, 8, { otherNames: ['type', 'layer type'], isRequired: true }),
  materialId: column(LAYER_FIELDS.materialId.label, 12),
  thicknessUm: column(LAYER_FIELDS.thicknessUm.label, 5.5, { isLength: true, otherNames: ['copper weight'] }),
  tolerancePlusUm: column(LAYER_FIELDS.tolerancePlusUm.head, 5, { isLength: true, otherNames: ['tolerance over'] }),
  toleranceMinusUm: column(LAYER_FIELDS.toleranceMinusUm.head, 5, { isLength: true, otherNames: ['tolerance under'] }),
  role: column(LAYER_FIELDS.role.label, 6),
  planePattern: column(LAYER_FIELDS.planePattern.label, 5),
  coverageFraction: column(LAYER_FIELDS.coverageFraction.label, 5, {
    isNumeric: true,
    otherNames: ['copper coverage'],
  }),
  plating: column(PLATING_PROCESS.label, 6),
  platingUm: column(PLATING.thicknessUm.head, 5, { isLength: true }),
  platingToleranceUm: column(PLATING.toleranceUm.head, 5, { isLength: true }),
  processingLossUm: column(LAYER_FIELDS.processingLossUm.head, 6, { isLength: true }),
} as const satisfies Readonly<Record<string, ColumnFacts>>

export type LayerColumn = keyof typeof LAYER_COLUMNS
export const LAYER_COLUMN_KEYS = Object.keys(LAYER_COLUMNS) as readonly LayerColumn[]

export const nameZoneColumn = (at: number): string => `zone ${at}`
