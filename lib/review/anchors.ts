import { callByName, type Design, FEATURE_FIELDS, getFieldInText } from '@/lib/engine'
import { TRADE_PARAMETERS } from '@/lib/fabrication'
import type { ThreadAnchor } from './anchor-kinds'
import { FEATURE_LISTS } from './compare-designs'
import { describePlace } from './design-place'

const CONSTRUCTION_LISTS = ['layers', 'zones'] as const

/** Lists of the design whose entries have values that are asked about one by one. */
const VALUE_LISTS = { layers: ['construction', 'layers'], zones: ['construction', 'zones'], bends: ['bends'] } as const

/** Every place in a design that can be asked about: parts with names first, then their values, then rows of the matrix. */
export function listDesignAnchors(design: Design): readonly ThreadAnchor[] {
  const { construction, bends } = design
  return [
    ...bends.map(({ id, name }) => ({ kind: 'bend' as const, id, label: name })),
    ...construction.zones.map(({ id, name }) => ({ kind: 'zone' as const, id, label: name })),
    ...construction.layers.map(({ id, name }) => ({ kind: 'layer' as const, id, label: name })),
    ...listFeatures(design),
    ...(design.plan?.notes ?? []).map(({ id, text }) => ({
      kind: 'note' as const,
      id,
      label: `note “${shorten(text)}”`,
    })),
    ...listValues(design),
    ...TRADE_PARAMETERS.map(({ key, name }) => ({ kind: 'parameter' as const, id: key, label: `matrix: ${name}` })),
  ]
}

/** How a place stands in a list of places: its kind is said, so that a search for `bend` finds it. */
export function nameInList({ kind, label }: ThreadAnchor): string {
  return kind === 'bend' || kind === 'zone' || kind === 'layer' ? callByName(kind, label) : label
}

function listFeatures({ features }: Design): ThreadAnchor[] {
  return FEATURE_LISTS.flatMap((list) =>
    features[list].map(({ id, name }) => ({
      kind: 'feature' as const,
      id: `${list}/${id}`,
      label: `${getFieldInText(FEATURE_FIELDS[list])} ${name}`,
    })),
  )
}

function listValues(design: Design): ThreadAnchor[] {
  const ofBrief = listLeaves(design.brief).map((path) => makeValue(design, ['brief', ...path], ['brief', ...path]))
  const ofLists = [...CONSTRUCTION_LISTS, 'bends' as const].flatMap((list) => {
    const entries = list === 'bends' ? design.bends : design.construction[list]
    return entries.flatMap((entry, index) =>
      listLeaves(entry)
        .filter(([key]) => key !== 'id' && key !== 'name' && key !== 'presence')
        .map((path) => makeValue(design, [list, entry.id, ...path], [...VALUE_LISTS[list], String(index), ...path])),
    )
  })
  return [...ofBrief, ...ofLists].flatMap((found) => found ?? [])
}

/** Values of a record and of the records in it; lists are none. */
function listLeaves(record: object): string[][] {
  return Object.entries(record).flatMap(([key, value]: [string, unknown]) => {
    if (Array.isArray(value)) return []
    if (typeof value === 'object' && value !== null) return listLeaves(value).map((path) => [key, ...path])
    return [[key]]
  })
}

/** Null where the dictionary of fields has no words for it: nobody sees such a value on a screen. */
function makeValue(design: Design, id: readonly string[], place: readonly string[]): ThreadAnchor | null {
  const { label, field } = describePlace(design, place)
  return field === null ? null : { kind: 'value', id: id.join('/'), label }
}

const MOST_LETTERS = 60
const shorten = (text: string): string => {
  const line = text.trim().replace(/\s+/g, ' ')
  return line.length <= MOST_LETTERS ? line : `${line.slice(0, MOST_LETTERS - 1).trimEnd()}…`
}
