/** Units of the values that a design states and the engine reports. Value and unit are never apart. */
export type Unit = keyof typeof UNIT_SYMBOLS

/** The one table of symbols, as printed after a number. A ratio and a count have none. */
const UNIT_SYMBOLS = {
  um: 'µm',
  mm: 'mm',
  mil: 'mil',
  in: 'in',
  /** The microinch of plating call-outs. */
  uin: 'µin',
  deg: '°',
  pct: '%',
  fraction: '',
  ratio: '',
  /** Depth of a hole to its diameter: `8 : 1`. */
  'aspect-ratio': ': 1',
  cycles: 'cycles',
  'cycles-per-minute': 'cycles per minute',
  count: '',
  'parts-per-year': 'per year',
  degC: '°C',
  'ppm-per-degC': 'ppm/°C',
  amp: 'A',
  volt: 'V',
  mhz: 'MHz',
  ps: 'ps',
  ohm: 'Ω',
  megohm: 'MΩ',
  'ohm-mm2-per-m': 'Ω·mm²/m',
  gpa: 'GPa',
  mpa: 'MPa',
  'g-per-cm3': 'g/cm³',
  'ug-per-cm2': 'µg/cm²',
  newton: 'N',
  'newton-mm': 'N·mm',
  'newton-mm-per-mm': 'N·mm/mm',
  hours: 'h',
  days: 'days',
  months: 'months',
  'oz-per-ft2': 'oz/ft²',
} as const

export function getUnitSymbol(unit: Unit): string {
  return UNIT_SYMBOLS[unit]
}

/** Units that are words: one of them is not several. */
const SINGULAR: Partial<Record<Unit, string>> = {
  cycles: 'cycle',
  'cycles-per-minute': 'cycle per minute',
  days: 'day',
  months: 'month',
}

/** A number and its unit as they are written together: `8 mm`, `90°`. */
export function withUnit(digits: string, unit: Unit | undefined): string {
  if (unit === undefined) return digits
  const symbol = (digits === '1' ? SINGULAR[unit] : undefined) ?? UNIT_SYMBOLS[unit]
  if (symbol === '') return digits
  return unit === 'deg' ? `${digits}${symbol}` : `${digits} ${symbol}`
}

/** Head of a column or label of a field: `Inside radius, mm`. */
export function withUnitInHead(label: string, unit: Unit | undefined): string {
  const symbol = unit === undefined ? '' : UNIT_SYMBOLS[unit]
  return symbol === '' ? label : `${label}, ${symbol}`
}
