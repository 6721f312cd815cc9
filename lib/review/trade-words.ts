import { digitsAsEntered } from '@/lib/engine/units'

/** Words and units of the design document's fields, for sentences about what changed. */

/** Units by the ending of a field's name, longest first. */
const UNIT_ENDINGS: readonly (readonly [ending: string, unit: string])[] = [
  ['OhmMm2PerM', 'Ω·mm²/m'],
  ['GPerCm3', 'g/cm³'],
  ['Fraction', ''],
  ['Cycles', 'cycles'],
  ['PerYear', 'per year'],
  ['PerMinute', 'per minute'],
  ['PpmPerC', 'ppm/°C'],
  ['DegC', '°C'],
  ['Volt', 'V'],
  ['Deg', '°'],
  ['Gpa', 'GPa'],
  ['Mpa', 'MPa'],
  ['Pct', '%'],
  ['Ohm', 'Ω'],
  ['Amp', 'A'],
  ['Um', 'µm'],
  ['Mm', 'mm'],
]

/** Fields whose words do not follow from their name. */
const LABELS: Readonly<Record<string, string>> = {
  operatingMinDegC: 'lowest operating temperature',
  operatingMaxDegC: 'highest operating temperature',
  whoToAsk: 'who is asked when in doubt',
  installationUse: 'use',
  lifeSurvivalPct: 'survival percentile',
  lifeWeibullSlope: 'Weibull slope',
  ratioTableKey: 'radius-to-thickness table',
  materialId: 'material',
  layerId: 'layer',
  zoneId: 'zone',
  bendId: 'bend',
  tolerancePlusUm: 'upper tolerance',
  toleranceMinusUm: 'lower tolerance',
  axisLengthMm: 'length along the axis',
  insideFace: 'side on the inside of the bend',
  radiusHeldBy: 'what holds the radius',
  distanceToRigidMm: 'distance to the rigid edge',
  triedOnModel: 'tried on a model',
  connectorWindow: 'connector window',
  'connectorWindow.minUm': 'connector window, smallest thickness',
  'connectorWindow.maxUm': 'connector window, largest thickness',
  angleToAxisDeg: 'angle to the bend axis',
  poisson: "Poisson's ratio",
  modulusGpa: 'modulus',
  sourceKey: 'source',
  expansionPpmPerC: 'thermal expansion',
  platedCopper: 'plated copper',
  contactFinish: 'finish on contacts',
  flexTest: 'flex test',
  barMm: 'bar',
  pitchMm: 'pitch',
}

export interface FieldWords {
  readonly label: string
  readonly unit: string
}

/** `insideRadiusMm` gives `inside radius`, `mm`; nested fields are named by the path of their keys. */
export function getFieldWords(keys: readonly string[]): FieldWords {
  const last = keys.at(-1) ?? ''
  const ending = UNIT_ENDINGS.find(([suffix]) => last.endsWith(suffix) && last.length > suffix.length)
  // A sourced number is `{ value, sourceKey }`: its unit is in the name of the field that holds it.
  const holder = last === 'value' ? keys.at(-2) : undefined
  if (holder !== undefined) return getFieldWords(keys.slice(0, -1))
  const whole = LABELS[keys.join('.')]
  if (whole !== undefined) return { label: whole, unit: ending?.[1] ?? '' }
  const words = keys.map((key) => LABELS[key] ?? toWords(key)).join(' ')
  return { label: words, unit: ending?.[1] ?? '' }
}

function toWords(key: string): string {
  const ending = UNIT_ENDINGS.find(([suffix]) => key.endsWith(suffix) && key.length > suffix.length)
  const bare =
    ending === undefined || ending[0] === 'PerYear' || ending[0] === 'PerMinute' ? key : key.slice(0, -ending[0].length)
  return bare.replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase()
}

const LONGEST_TEXT = 60
const LONGEST_LIST = 400

/** A value as people write it. */
export function formatFieldValue(value: unknown, unit: string): string {
  if (value === null || value === undefined || value === '') return 'not stated'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') {
    const digits = digitsAsEntered(value)
    if (unit === '') return digits
    return unit === '°' ? `${digits}°` : `${digits} ${unit}`
  }
  if (typeof value === 'string') {
    // Words of a list are joined by hyphens; a calendar date keeps them.
    const isChoice = /^[a-z][a-z0-9]*(-[a-z0-9]+)+$/.test(value)
    const text = isChoice ? value.replaceAll('-', ' ') : value.replaceAll(/\s+/g, ' ')
    return text.length > LONGEST_TEXT ? `"${text.slice(0, LONGEST_TEXT)}…"` : text
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return 'none'
    const entries = value.map((entry) => formatFieldValue(entry, unit)).join(' / ')
    return entries.length > LONGEST_LIST ? `${value.length} entries` : entries
  }
  if (typeof value === 'object') {
    return Object.entries(value)
      .map(([key, inner]) => {
        const words = getFieldWords([key])
        return `${words.label} ${formatFieldValue(inner, words.unit)}`
      })
      .join(', ')
  }
  return String(value)
}
