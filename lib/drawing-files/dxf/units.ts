/** Units of $INSUNITS that a plan can be drawn in, with their size (DXF reference, header variables). Others are asked about. */
export const DRAWING_UNITS = [
  { key: 'mm', code: 4, name: 'millimetres', mmPerUnit: 1 },
  { key: 'in', code: 1, name: 'inches', mmPerUnit: 25.4 },
  { key: 'mil', code: 9, name: 'mils', mmPerUnit: 0.0254 },
  { key: 'um', code: 13, name: 'micrometres', mmPerUnit: 0.001 },
  { key: 'cm', code: 5, name: 'centimetres', mmPerUnit: 10 },
  { key: 'm', code: 6, name: 'metres', mmPerUnit: 1000 },
] as const

export type DrawingUnit = (typeof DRAWING_UNITS)[number]

/** What a file says of its unit. `unit` is null where it says nothing that holds: then somebody has to. */
export interface StatedUnit {
  readonly unit: DrawingUnit | null
  readonly says: string
}

export function readUnit(header: ReadonlyMap<string, string>): StatedUnit {
  const stated = header.get('$INSUNITS')
  const measurement = header.get('$MEASUREMENT')
  if (stated === undefined) return { unit: null, says: 'The file does not say its unit ($INSUNITS is missing).' }
  const unit = DRAWING_UNITS.find(({ code }) => String(code) === stated) ?? null
  if (unit === null) {
    const says =
      stated === '0'
        ? 'The file says that it has no unit ($INSUNITS 0).'
        : `The file names a unit of which none is drawn here ($INSUNITS ${stated}).`
    return { unit: null, says }
  }
  const isImperial = unit.key === 'in' || unit.key === 'mil'
  if ((measurement === '0' && !isImperial) || (measurement === '1' && isImperial)) {
    return {
      unit: null,
      says: `The file contradicts itself: it is drawn in ${unit.name} ($INSUNITS ${stated}), and ${measurement === '0' ? 'imperial' : 'metric'} ($MEASUREMENT ${measurement}).`,
    }
  }
  return { unit, says: `The file is drawn in ${unit.name}.` }
}
