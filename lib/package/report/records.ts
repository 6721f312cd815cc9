import { type Design, type FieldNode, findMaterial, getFieldInText } from '@/lib/engine'
import { formatFieldValue } from '@/lib/review'

/*
 * Records of the design as lines of the report, by the dictionary of fields: a field that is added to the design stands here without a line
 * of code.
 */

type Holder = Readonly<Record<string, unknown>>

const REFERENCES: Readonly<Record<string, (design: Design, id: string) => string | undefined>> = {
  layerId: nameLayer,
  fromLayerId: nameLayer,
  toLayerId: nameLayer,
  referenceLayerId: nameLayer,
  zoneId: ({ construction }, id) => construction.zones.find((zone) => zone.id === id)?.name,
  bendId: ({ bends }, id) => bends.find((bend) => bend.id === id)?.name,
  materialId: (design, id) => findMaterial(design, id)?.name,
}

function nameLayer({ construction }: Design, id: string): string | undefined {
  return construction.layers.find((layer) => layer.id === id)?.name
}

/** Ids mean nothing on paper: the value with names in their place, however deep they lie. */
function withNames(design: Design, key: string, value: unknown): unknown {
  if (typeof value === 'string') return REFERENCES[key]?.(design, value) ?? value
  if (Array.isArray(value)) return value.map((each) => withNames(design, key, each))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, withNames(design, name, inner)]))
}

interface StatedField {
  readonly words: FieldNode
  readonly text: string
  /** Nobody filled it in, nor any part of it. */
  readonly isOpen: boolean
}

/** Fields of a record with their values, those that are not stated included, in the order of the record. */
export function listFieldTexts(
  design: Design,
  record: object,
  fields: Readonly<Record<string, FieldNode>>,
  skip: readonly string[] = [],
): StatedField[] {
  return Object.entries(record as Holder).flatMap(([key, value]) => {
    const words = fields[key]
    if (words === undefined || key === 'id' || skip.includes(key)) return []
    return [{ words, text: formatFieldValue(withNames(design, key, value), words), isOpen: isOpen(value) }]
  })
}

function isOpen(value: unknown): boolean {
  if (value === null || value === undefined || value === '') return true
  if (typeof value !== 'object' || Array.isArray(value)) return false
  const parts = Object.values(value)
  return parts.length > 0 && parts.every(isOpen)
}

/** The same in one line, what nobody stated at its end: `Bead: called out; Bead width: 1 mm. Not stated: bead height`. */
export function describeRecord(...given: Parameters<typeof listFieldTexts>): string {
  const fields = listFieldTexts(...given)
  const stated = fields
    .filter((field) => !field.isOpen)
    .map(({ words, text }) => `${words.label}: ${text}`)
    .join('; ')
    .replaceAll('Nearest bend: bend: ', 'Nearest bend: ')
  const open = fields.filter((field) => field.isOpen).map(({ words }) => getFieldInText(words))
  if (open.length === 0) return stated
  return [...(stated === '' ? [] : [stated]), `Not stated: ${[...new Set(open)].join(', ')}`].join('. ')
}
