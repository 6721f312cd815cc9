import { FEATURE_FIELDS, type FieldNode, findFieldWords, getFieldInText } from '@/lib/engine'
import { FEATURE_LISTS, nameLayers } from './compare-designs'

/** A place in a design document, in the trade's words. */
export interface PlaceWords {
  /** What the field belongs to: `L2`, `bend Hinge`. */
  readonly subject: string
  /** With the field: `L2 foil`, `bend Hinge inside radius`. */
  readonly label: string
  /** Its entry in the dictionary of fields. */
  readonly field: FieldNode | null
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
  const withField = (subject: string, fields: readonly string[]) => nameField(subject, tokens, fields)
  switch (area) {
    case 'construction':
      return describeConstruction(root, rest, withField)
    case 'bends':
    case 'materials':
      return describeEntry(area === 'bends' ? 'bend' : 'material', root[area], rest, withField)
    case 'features': {
      const list = FEATURE_LISTS.find((key) => key === rest[0])
      if (list === undefined) return withField('features', rest)
      return describeEntry(getFieldInText(FEATURE_FIELDS[list]), readKey(root.features, list), rest.slice(1), withField)
    }
    case 'plan':
      return describePlanPlace(root, rest, withField)
    case 'brief':
      return withField('brief:', rest)
    default:
      return withField('design', tokens)
  }
}

type NameField = (subject: string, fields: readonly string[]) => PlaceWords

function describeConstruction(
  root: Plain,
  [list, index, ...fields]: readonly string[],
  withField: NameField,
): PlaceWords {
  const construction = root.construction
  const layers = readList(readKey(construction, 'layers'))
  const names = nameLayers(layers.filter(isNamedLayer))
  if (list === 'layers') {
    const layer = index === undefined ? undefined : layers[Number(index)]
    if (index === undefined) return withField('layers', [])
    const subject = isNamedLayer(layer) ? (names.get(layer.id) ?? layer.name) : `layer ${Number(index) + 1}`
    const isFoil = isNamedLayer(layer) && layer.kind === 'conductor' && fields.join() === 'thicknessUm'
    return isFoil ? { ...withField(subject, fields), label: `${subject} foil` } : withField(subject, fields)
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

/** Entries of the plan's lists have names, or are told by their ids. */
function describePlanPlace(root: Plain, [list, index, ...fields]: readonly string[], withField: NameField): PlaceWords {
  if (list === undefined) return withField('plan', [])
  const entry = readList(readKey(root.plan, list))[Number(index)]
  const { label } = findFieldWords(['plan', list])
  if (index === undefined || readKey(entry, 'id') === undefined) return withField('plan', [list])
  const name = readKey(entry, 'name') ?? readKey(entry, 'letter') ?? readKey(entry, 'id')
  return withField(`${label} ${String(name)}`, fields)
}

function describeEntry(
  word: string,
  list: unknown,
  [index, ...fields]: readonly string[],
  withField: NameField,
): PlaceWords {
  if (index === undefined) return withField(`${word}s`, [])
  return withField(`${word} ${readName(readList(list)[Number(index)], index)}`, fields)
}

function nameField(subject: string, tokens: readonly string[], fields: readonly string[]): PlaceWords {
  const { label, node } = findFieldWords(tokens, fields.length)
  return fields.length === 0 || label === ''
    ? { subject, label: subject, field: fields.length === 0 ? null : node }
    : { subject, label: `${subject} ${label}`, field: node }
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
