import { type Construction, type FieldNode, getChoiceWord, type LengthUnit, NOT_STATED } from '@/lib/engine'
import { asDeviation, asEntered, digitsOfEnteredLength, digitsOfLength, getUnitSymbol } from '@/lib/engine/units'

/** Units of a sheet: um and mm in a file, on screen those that the reader chose. */
export interface SheetUnits {
  readonly thickness: LengthUnit
  readonly plan: LengthUnit
}

export const FILE_UNITS: SheetUnits = { thickness: 'um', plan: 'mm' }

/** Numbers, references and words that the parts of a sheet share, so that they name the same thing alike. */
export interface SheetWords {
  readonly thicknessUnit: string
  readonly planUnit: string
  /** A computed thickness, without the unit, which stands in the column's head. */
  thickness(valueUm: number): string
  /** A thickness that the design states, exactly. */
  enteredThickness(valueUm: number): string
  /** Tolerances that the design states. */
  deviation(plusUm: number, minusUm: number): string
  computedDeviation(plusUm: number, minusUm: number): string
  /** A plan dimension that the design states, exactly. */
  plan(valueMm: number | null): string
  /** A computed plan dimension. */
  planComputed(valueMm: number): string
  /** `Z2`: zones in the construction's order; a zone that is not there by its id. */
  zone(zoneId: string): string
  /** `7`: layers from the top face. */
  layer(layerId: string): string
}

export function makeSheetWords(construction: Construction, units: SheetUnits): SheetWords {
  const zoneAt = new Map(construction.zones.map(({ id }, index) => [id, `Z${index + 1}`]))
  const layerAt = new Map(construction.layers.map(({ id }, index) => [id, String(index + 1)]))
  const thickness = (valueUm: number) => digitsOfLength(valueUm, units.thickness)
  const enteredThickness = (valueUm: number) => digitsOfEnteredLength(valueUm, 'um', units.thickness)
  return {
    thicknessUnit: getUnitSymbol(units.thickness),
    planUnit: getUnitSymbol(units.plan),
    thickness,
    enteredThickness,
    deviation: (plusUm, minusUm) => asDeviation(enteredThickness(plusUm), enteredThickness(minusUm)),
    computedDeviation: (plusUm, minusUm) => asDeviation(thickness(plusUm), thickness(minusUm)),
    plan: (valueMm) => (valueMm === null ? NOT_STATED : digitsOfEnteredLength(valueMm, 'mm', units.plan)),
    planComputed: (valueMm) => digitsOfLength(valueMm * 1000, units.plan, 'plan'),
    zone: (zoneId) => zoneAt.get(zoneId) ?? zoneId,
    layer: (layerId) => layerAt.get(layerId) ?? layerId,
  }
}

export function formatObserved(value: boolean | null): string {
  return value === null ? NOT_STATED : value ? 'yes' : 'no'
}

/** A value of the design with its unit, lengths in those of the sheet; a record by its fields. */
export function formatField(value: unknown, node: FieldNode, words: SheetWords): string {
  if (value === null || typeof value === 'boolean') return formatObserved(value)
  if (typeof value === 'object' && node.fields !== undefined) {
    return listStatedFields(value, node.fields, words).join('; ') || NOT_STATED
  }
  if (typeof value === 'number') {
    if (node.unit === 'mm') return `${words.plan(value)} ${words.planUnit}`
    if (node.unit === 'um') return `${words.enteredThickness(value)} ${words.thicknessUnit}`
    return asEntered(value, node.unit)
  }
  return node.choices === undefined ? String(value) : getChoiceWord(node, String(value))
}

/**
 * `Label: value` of each field that is stated; what is not stated is asked, not written.
 * @param title  that stands before them: a field of the same label is its value alone
 */
export function listStatedFields(
  record: object,
  fields: Readonly<Record<string, FieldNode>>,
  words: SheetWords,
  title = '',
): string[] {
  const values = record as Readonly<Record<string, unknown>>
  return Object.entries(fields).flatMap(([key, node]) => {
    const value = values[key] ?? null
    if (value === null || value === '') return []
    const text = formatField(value, node, words)
    return [node.label === title ? text : `${node.label}: ${text}`]
  })
}
