import type { Unit } from '../results'

const SYMBOLS: Record<Unit, string> = {
  um: ' µm',
  mm: ' mm',
  deg: '°',
  pct: ' %',
  fraction: '',
  ratio: '',
  cycles: ' cycles',
  count: '',
  degC: ' °C',
  amp: ' A',
  volt: ' V',
  ohm: ' Ω',
  gpa: ' GPa',
  mpa: ' MPa',
  newton: ' N',
  'newton-mm': ' N·mm',
  'newton-mm-per-mm': ' N·mm/mm',
  days: ' days',
  'oz-per-ft2': ' oz/ft²',
}

/**
 * A number as it stands in a sentence: three significant figures, whole numbers whole, large counts as 2.1e6.
 * Screens format the quantities themselves; sentences need one form that never changes.
 */
export function formatValue(value: number, unit?: Unit): string {
  const symbol = unit === undefined ? '' : SYMBOLS[unit]
  const size = Math.abs(value)
  if (size !== 0 && (size >= 1e5 || size < 1e-3)) return `${value.toExponential(1).replace('e+', 'e')}${symbol}`
  if (Number.isInteger(value)) return `${value}${symbol}`
  // Rounding by scale: several times faster than toFixed, and an evaluation writes hundreds of numbers.
  const scale = size >= 100 ? 1 : size >= 10 ? 10 : size >= 1 ? 100 : 1000
  const rounded = Math.round(value * scale) / scale
  // "99.9999 %" must not read as certainty: every nine is kept.
  return unit === 'pct' && size < 100 && Math.abs(rounded) === 100
    ? `${keepNines(value)}${symbol}`
    : `${rounded}${symbol}`
}

/** A share just below the whole, down to the first digit that tells it from the whole. */
function keepNines(pct: number): number {
  const digits = Math.min(12, Math.ceil(-Math.log10(100 - Math.abs(pct))) + 1)
  const short = Number(pct.toFixed(digits))
  return Math.abs(short) === 100 ? pct : short
}
