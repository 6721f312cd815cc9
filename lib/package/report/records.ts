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
    return [{ words, text: formatFieldValue(withNames(design, key, value), words) }]
  })
}

/** The same in one line: `bead called out; bead width 1 mm`. */
export function describeRecord(...given: Parameters<typeof listFieldTexts>): string {
  return listFieldTexts(...given)
    .map(({ words, text }) => `${getFieldInText(words)} ${text}`)
    .join('; ')
    .replaceAll('nearest bend bend ', 'nearest bend ')
}
