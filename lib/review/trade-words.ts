import { type FieldNode, getChoiceWord, getFieldInText } from '@/lib/engine'
import { asEntered, digitsAsEntered, getUnitSymbol } from '@/lib/engine/units'

const LONGEST_TEXT = 60
const LONGEST_LIST = 400

/** A value of the design as people write it. `field` is its entry in the dictionary of fields, null where there is none. */
export function formatFieldValue(value: unknown, field: FieldNode | null): string {
  if (value === null || value === undefined || value === '') return 'not stated'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') return asEntered(value, field?.unit)
  if (typeof value === 'string') {
    if (field?.choices !== undefined) return getChoiceWord(field, value)
    const text = value.replaceAll(/\s+/g, ' ')
    return text.length > LONGEST_TEXT ? `"${text.slice(0, LONGEST_TEXT)}…"` : text
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return 'none'
    const points = value.map(formatPoint)
    const unit = field?.unit === undefined ? '' : ` ${getUnitSymbol(field.unit)}`
    if (points.every((point) => point !== null)) return shortenList(`${points.join(', ')}${unit}`, value.length)
    const entry: FieldNode | null = field?.entry === undefined ? field : { label: '', fields: field.entry }
    return shortenList(value.map((each) => formatFieldValue(each, entry)).join(' / '), value.length)
  }
  if (typeof value === 'object') {
    return Object.entries(value)
      .map(([key, inner]) => {
        // A sourced number says its value first; its parts have the unit of the whole.
        const node = field?.fields?.[key] ?? null
        const unit = field?.unit === undefined ? {} : { unit: field.unit }
        const words = node === null ? key : getFieldInText(node)
        return `${words}: ${formatFieldValue(inner, node ?? { label: key, ...unit })}`
      })
      .join(', ')
  }
  return String(value)
}

function shortenList(text: string, count: number): string {
  return text.length > LONGEST_LIST ? `${count} entries` : text
}

/** `(52, 8)`; null where it is no point in plan. */
function formatPoint(value: unknown): string | null {
  if (!Array.isArray(value) || value.length !== 2) return null
  const [x, y] = value as readonly unknown[]
  return typeof x === 'number' && typeof y === 'number' ? `(${digitsAsEntered(x)}, ${digitsAsEntered(y)})` : null
}
