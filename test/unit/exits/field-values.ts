import { type Design, getDesignJsonSchema, listFieldPatterns } from '@/lib/engine'
import { full, type Path } from './full-design'

/*
 * Every field of the dictionary with two values to tell apart, in a design in which every other field has a value too: what an exit shows of
 * a field is seen by what changes.
 */

interface JsonSchema {
  readonly type?: string | readonly string[]
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly items?: JsonSchema
  readonly prefixItems?: readonly JsonSchema[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
}

/** A value, another one, and what has to be read where the first stands; null where only the difference tells. */
interface Values {
  readonly one: unknown
  readonly other: unknown
  readonly probe: string | null
}

export interface FieldCase {
  readonly pattern: string
  /** Each kind of entry in which the field can stand. */
  readonly places: readonly (Values & { readonly path: Path })[]
}

type Holder = Record<string | number, unknown>

const NUMBER = 7919
const TEXT = 'Quoll'
/** What is no value of its own: marks, and what lists hold. */
const LEFT_AS_IT_IS: readonly string[] = ['assumed', 'none', 'verticesMm', 'formatVersion', 'format']

const CONDUCTORS = full.construction.layers.filter(({ kind }) => kind === 'conductor').map(({ id }) => id)
const REFERENCES: Readonly<Record<string, readonly string[]>> = {
  layerId: CONDUCTORS,
  fromLayerId: CONDUCTORS,
  toLayerId: CONDUCTORS,
  referenceLayerId: CONDUCTORS,
  netClassId: full.features.netClasses.map(({ id }) => id),
  zoneId: full.construction.zones.map(({ id }) => id),
  bendId: full.bends.map(({ id }) => id),
  materialId: ['polyimide', 'acrylic-adhesive'],
}

function listAlternatives(schema: JsonSchema): readonly JsonSchema[] {
  const inner = [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])]
  if (inner.length > 0) return inner.flatMap(listAlternatives)
  return Array.isArray(schema.type) ? schema.type.map((type: string) => ({ ...schema, type })) : [schema]
}

function findAlternative(schema: JsonSchema, matches: (one: JsonSchema) => boolean): JsonSchema | undefined {
  return listAlternatives(schema).find(matches)
}

/** Two values that the schema takes; the first of several kinds of value. */
function makeValues(schema: JsonSchema, key: string): Values | null {
  const references = REFERENCES[key]
  if (references !== undefined) return { one: references[0], other: references[1], probe: null }
  const options = listAlternatives(schema).filter(({ type }) => type !== 'null')
  const choices = options
    .flatMap((option) => option.enum ?? (option.const === undefined ? [] : [option.const]))
    .filter((choice) => choice !== '' && choice !== null)
  if (choices.length > 0) return { one: choices[0], other: choices[1] ?? null, probe: null }
  const [first] = options
  if (first === undefined) return null
  switch (first.type) {
    case 'number':
    case 'integer':
      return { one: NUMBER, other: 1, probe: String(NUMBER) }
    case 'boolean':
      return { one: true, other: false, probe: null }
    case 'string':
      return /Date$/.test(key)
        ? { one: '2031-05-06', other: '2031-07-08', probe: '2031-05-06' }
        : { one: TEXT, other: 'Bilby', probe: TEXT }
    case 'array': {
      const inner = first.items === undefined ? null : makeValues(first.items, key)
      return inner === null ? null : { one: [inner.one], other: [inner.other], probe: inner.probe }
    }
    default:
      return null
  }
}

/** The value with every gap in it filled by its schema. */
function fill(value: unknown, schema: JsonSchema, key: string): unknown {
  if (LEFT_AS_IT_IS.includes(key)) return value
  const isGap = value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0)
  const list = findAlternative(schema, ({ type }) => type === 'array')
  if (list !== undefined && list.prefixItems === undefined) {
    const items = list.items ?? {}
    const entries = isGap ? [undefined] : (value as unknown[])
    return entries.map((entry) => fill(entry, items, key))
  }
  const kind = (value as { kind?: unknown } | null | undefined)?.kind
  const ofKind = findAlternative(
    schema,
    ({ properties }) =>
      properties !== undefined && (properties.kind?.const === undefined || properties.kind.const === kind),
  )
  const properties = ofKind?.properties
  if (properties !== undefined) {
    const holder = (value ?? {}) as Holder
    return Object.fromEntries(
      Object.entries(properties).map(([name, inner]) => [name, fill(holder[name], inner, name)]),
    )
  }
  if (!isGap) return value
  if (key === 'id') return 'an-id'
  return makeValues(schema, key)?.other ?? value
}

const SCHEMA = getDesignJsonSchema() as JsonSchema

/** No field of it is empty. Its numbers need not fit each other: exits write what is there. */
export const complete = makeComplete()

/** Its own material is a film and a foil, and is used as both. One entry of each list of places lies far from every bend. */
function makeComplete(): Design {
  const design = fill(structuredClone(full), SCHEMA, '') as Design
  for (const list of ['holes', 'pads', 'widthSteps', 'coverlayOpenings', 'components'] as const) {
    const [first] = design.features[list]
    if (first !== undefined)
      (design.features[list] as object[]).push({ ...first, id: 'far', name: 'Far', nearestBend: null })
  }
  const cover = design.construction.layers.find(({ kind }) => kind === 'coverlay-film')
  if (cover !== undefined) {
    design.construction.layers.push({
      ...structuredClone(cover),
      id: 'shield',
      name: 'Shield',
      kind: 'shield-film',
    } as typeof cover)
  }
  const id = design.materials[0]?.id ?? ''
  const [foil, film] = ['conductor', 'coverlay-film'].map((kind) =>
    design.construction.layers.find((layer) => layer.kind === kind),
  )
  for (const layer of [foil, film]) Object.assign(layer ?? {}, { materialId: id })
  return design
}

function findSchemas(pattern: string): readonly JsonSchema[] {
  let found: readonly JsonSchema[] = [SCHEMA]
  for (const part of pattern.split('.')) {
    found = found
      .flatMap(listAlternatives)
      .flatMap(({ properties, items }) => (part === '*' ? (items ?? []) : (properties?.[part] ?? [])))
  }
  return found
}

function findPaths(pattern: string): Path[] {
  let found: { path: Path; value: unknown }[] = [{ path: [], value: complete }]
  for (const part of pattern.split('.')) {
    found = found.flatMap(({ path, value }) =>
      part === '*'
        ? (Array.isArray(value) ? value : []).map((entry: unknown, index) => ({ path: [...path, index], value: entry }))
        : typeof value === 'object' && value !== null && Object.hasOwn(value, part)
          ? [{ path: [...path, part], value: (value as Holder)[part] }]
          : [],
    )
  }
  return found.map(({ path }) => path)
}

/** A sourced number is a record about one value. */
const isSourced = (schema: JsonSchema) =>
  listAlternatives(schema).some(({ properties }) => properties?.sourceKey !== undefined)

export function withValue(path: Path, value: unknown): Design {
  const design = structuredClone(complete)
  const holder = path.slice(0, -1).reduce<unknown>((node, key) => (node as Holder)[key], design)
  ;(holder as Holder)[path.at(-1) ?? ''] = value
  return design
}

/** Of films alone: a conductor layer has other fields than they have. */
const FILM_PATHS: readonly Path[] = complete.construction.layers.flatMap(({ kind }, index) =>
  kind === 'adhesive' || kind === 'coverlay-film' ? [['construction', 'layers', index, 'kind']] : [],
)
const CORNERS = [
  [0, 0],
  [10, 0],
  [10, 5],
]
const BY_HAND: Readonly<Record<string, FieldCase['places']>> = {
  'construction.layers.*.kind': FILM_PATHS.map((path) => ({ path, one: 'bondply', other: 'adhesive', probe: null })),
  'features.outline.verticesMm': [
    {
      path: ['features', 'outline', 'verticesMm'],
      one: [...CORNERS, [0, NUMBER]],
      other: CORNERS,
      probe: String(NUMBER),
    },
  ],
}

/** The plan is drawn and compared as shapes, never field by field: exits of shapes have tests of their own. */
export const TYPED_PATTERNS = listFieldPatterns().filter(({ pattern }) => !pattern.startsWith('plan.'))

/** Every field at the end of a path, by the dictionary. */
export const FIELD_CASES: readonly FieldCase[] = TYPED_PATTERNS.map(({ pattern }) => {
  const places = BY_HAND[pattern]
  if (places !== undefined) return { pattern, places }
  const schema = { anyOf: findSchemas(pattern) }
  const sourced = isSourced(schema)
  const values = sourced
    ? { one: NUMBER, other: 1, probe: String(NUMBER) }
    : makeValues(schema, pattern.split('.').at(-1) ?? '')
  return {
    pattern,
    places:
      values === null
        ? []
        : findPaths(pattern).map((path) => ({ ...values, path: sourced ? [...path, 'value'] : path })),
  }
})
