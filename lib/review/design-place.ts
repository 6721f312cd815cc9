import { FEATURE_WORDS, nameLayers } from './compare-designs'
import { getFieldWords } from './trade-words'

/** A place in a design document, in the trade's words. */
export interface PlaceWords {
  /** What the field belongs to: `L2`, `bend Hinge`. */
  readonly subject: string
  /** With the field: `L2 foil`, `bend Hinge inside radius`. */
  readonly label: string
  readonly unit: string
}

type Plain = Readonly<Record<string, unknown>>

/**
 * Words for a place that a JSON Pointer names.
 *
 * @param document  a design, or what a patch has made of one so far: nothing is taken for granted about its shape
 * @param tokens  of the pointer, without the empty one at its beginning; indices as text
 */
export function describePlace(document: object, tokens: readonly string[]): PlaceWords {
  const [area, ...rest] = tokens
  const root = document as Plain
  switch (area) {
    case 'construction':
      return describeConstruction(root, rest)
    case 'bends':
    case 'materials':
      return describeEntry(area === 'bends' ? 'bend' : 'material', root[area], rest)
    case 'features': {
      const kind = rest[0] ?? ''
      if (!Object.hasOwn(FEATURE_WORDS, kind)) return withField('features', rest)
      const word = FEATURE_WORDS[kind as keyof typeof FEATURE_WORDS]
      return describeEntry(word, readKey(root.features, kind), rest.slice(1))
    }
    case 'brief':
      return withField('brief:', rest)
    default:
      return withField('design', tokens)
  }
}

function describeConstruction(root: Plain, [list, index, ...fields]: readonly string[]): PlaceWords {
  const construction = root.construction
  const layers = readList(readKey(construction, 'layers'))
  const names = nameLayers(layers.filter(isNamedLayer))
  if (list === 'layers') {
    const layer = index === undefined ? undefined : layers[Number(index)]
    if (index === undefined) return withField('layers', [])
    const subject = isNamedLayer(layer) ? (names.get(layer.id) ?? layer.name) : `layer ${Number(index) + 1}`
    const isFoil = isNamedLayer(layer) && layer.kind === 'conductor' && fields.join() === 'thicknessUm'
    return isFoil ? { subject, label: `${subject} foil`, unit: 'µm' } : withField(subject, fields)
  }
  if (list === 'zones') {
    const zone = index === undefined ? undefined : readList(readKey(construction, 'zones'))[Number(index)]
    const subject = `zone ${readName(zone, index)}`
    const [field, at, ...inner] = fields
    if (field !== 'presence') return withField(subject, fields)
    const layerId = readKey(readList(readKey(zone, 'presence'))[Number(at)], 'layerId')
    const layer = typeof layerId === 'string' ? (names.get(layerId) ?? layerId) : 'a layer'
    return withField(at === undefined ? `${subject}: layers` : `${subject}: ${layer}`, inner)
  }
  return withField('construction', list === undefined ? [] : [list])
}

function describeEntry(word: string, list: unknown, [index, ...fields]: readonly string[]): PlaceWords {
  if (index === undefined) return withField(`${word}s`, [])
  return withField(`${word} ${readName(readList(list)[Number(index)], index)}`, fields)
}

function withField(subject: string, fields: readonly string[]): PlaceWords {
  const keys = fields.filter((field) => !/^\d+$/.test(field))
  if (keys.length === 0) return { subject, label: subject, unit: '' }
  const { label, unit } = getFieldWords(keys)
  return { subject, label: `${subject} ${label}`, unit }
}

function isNamedLayer(layer: unknown): layer is { id: string; name: string; kind: string } {
  return ['id', 'name', 'kind'].every((key) => typeof readKey(layer, key) === 'string')
}

function readName(entry: unknown, index: string | undefined): string {
  const name = readKey(entry, 'name')
  return typeof name === 'string' && name !== '' ? name : `number ${Number(index ?? 0) + 1}`
}

function readKey(node: unknown, key: string): unknown {
  return typeof node === 'object' && node !== null ? (node as Plain)[key] : undefined
}

function readList(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : []
}
