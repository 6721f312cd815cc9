import { type Construction, type LengthUnit, lengthFromUm, umFromLength } from '@/lib/engine'
import { formatThickness, getUnitLabel } from '../../thickness-axis'

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
  /** Without the unit, which stands in the column's head. */
  thickness(valueUm: number): string
  deviation(plusUm: number, minusUm: number): string
  plan(valueMm: number | null): string
  /** `Z2`: zones in the construction's order; a zone that is not there by its id. */
  zone(zoneId: string): string
  /** `7`: layers from the top face. */
  layer(layerId: string): string
}

export const NOT_STATED = 'not stated'

export function makeSheetWords(construction: Construction, units: SheetUnits): SheetWords {
  const zoneAt = new Map(construction.zones.map(({ id }, index) => [id, `Z${index + 1}`]))
  const layerAt = new Map(construction.layers.map(({ id }, index) => [id, String(index + 1)]))
  const thickness = (valueUm: number) => formatThickness(valueUm, units.thickness).replace(/\s.*$/u, '')
  return {
    thicknessUnit: getUnitLabel(units.thickness),
    planUnit: getUnitLabel(units.plan),
    thickness,
    deviation: (plusUm, minusUm) =>
      thickness(plusUm) === thickness(minusUm)
        ? `±${thickness(plusUm)}`
        : `+${thickness(plusUm)} −${thickness(minusUm)}`,
    plan: (valueMm) => (valueMm === null ? NOT_STATED : formatPlan(valueMm, units.plan)),
    zone: (zoneId) => zoneAt.get(zoneId) ?? zoneId,
    layer: (layerId) => layerAt.get(layerId) ?? layerId,
  }
}

/** A plan dimension to a micrometre or a hundredth of a mil, without zeros that say nothing. */
function formatPlan(valueMm: number, unit: LengthUnit): string {
  const value = lengthFromUm(umFromLength(valueMm, 'mm'), unit)
  return String(Number(value.toFixed(unit === 'um' ? 0 : unit === 'mil' ? 2 : unit === 'in' ? 5 : 3)))
}

/** A value of an enumeration as people write it. */
export function sayChoice(value: string | null): string {
  if (value === null) return NOT_STATED
  return value.replaceAll('-', ' ').replace(/^use ([a-d])$/u, (_, letter: string) => `use ${letter.toUpperCase()}`)
}

export function sayObserved(value: boolean | null): string {
  return value === null ? NOT_STATED : value ? 'yes' : 'no'
}

/** `2 000 000`; a power of ten from a thousand million on. */
export function sayCount(value: number): string {
  if (value >= 1e9) return value.toExponential(2)
  return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/gu, ' ')
}

/** Digits that a reader can use. */
export function sayNumber(value: number): string {
  return String(Number(value.toPrecision(6)))
}
