import isSame from 'fast-deep-equal'
import {
  callByName,
  type Design,
  FEATURE_FIELDS,
  type Features,
  type FieldNode,
  findFieldWords,
  getFieldInText,
  listAssumptions,
  nameLayerKind,
  type Outline,
} from '@/lib/engine'
import { tidy } from '@/lib/engine/numerics'
import { asEntered, digitsAsEntered } from '@/lib/engine/units'
import { comparePlans } from './compare-plans'
import { formatFieldValue } from './trade-words'

export type DesignArea = 'name' | 'brief' | 'materials' | 'construction' | 'bends' | 'features' | 'plan'

/** One differing input, in the trade's words. */
export interface DesignChange {
  readonly area: DesignArea
  /** Where in the design document; ids stand for the entries of lists. */
  readonly path: readonly string[]
  /** `L2 foil 35 µm to 18 µm` */
  readonly sentence: string
  readonly before: string | null
  readonly after: string | null
}

type Plain = Readonly<Record<string, unknown>>
type Entity = { readonly id: string; readonly name: string }

/** Differing inputs of two designs, in the order of the document. Equal designs give none. */
export function compareDesigns(before: Design, after: Design): DesignChange[] {
  const changes: DesignChange[] = []
  if (before.name !== after.name) {
    changes.push(makeChange('name', ['name'], 'design', ['name'], before.name, after.name))
  }
  compareFields(changes, { area: 'brief', path: ['brief'], subject: 'brief:' }, before.brief, after.brief)
  compareEntities(
    changes,
    'materials',
    ['materials'],
    before.materials,
    after.materials,
    ({ name }) => `material ${name}`,
  )
  compareConstruction(changes, before, after)
  compareEntities(changes, 'bends', ['bends'], before.bends, after.bends, ({ name }) => callByName('bend', name))
  compareFeatures(changes, before, after)
  changes.push(...comparePlans(before.plan, after.plan, after))
  compareAssumptions(changes, before, after)
  return changes
}

const ASSUMED_AREAS = {
  layers: 'construction',
  zones: 'construction',
  bends: 'bends',
  conductors: 'features',
  pads: 'features',
  widthSteps: 'features',
} as const

/** A value that was confirmed, or that is assumed now: the number may be the same, and what stands behind it is not. */
function compareAssumptions(changes: DesignChange[], before: Design, after: Design): void {
  const add = (design: Design, other: Design, word: string) => {
    for (const { mark, list, id, name, field, label } of listAssumptions(design)) {
      if (other.assumed.includes(mark)) continue
      changes.push({
        area: ASSUMED_AREAS[list],
        path: ['assumed', list, id, field],
        sentence: `${name}: ${label} ${word}`,
        before: word === 'confirmed' ? 'assumed' : 'confirmed',
        after: word === 'confirmed' ? 'confirmed' : 'assumed',
      })
    }
  }
  // What is gone altogether was not confirmed.
  add({ ...after, assumed: before.assumed }, after, 'confirmed')
  add(after, before, 'assumed')
}

interface Where {
  readonly area: DesignArea
  readonly path: readonly string[]
  /** What the fields belong to: `bend Hinge`, `L2`. */
  readonly subject: string
}

function compareFields(
  changes: DesignChange[],
  where: Where,
  before: Plain,
  after: Plain,
  options: { readonly keys?: readonly string[]; readonly skip?: readonly string[] } = {},
): void {
  const keys = options.keys ?? []
  for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
    if (key === 'id' || options.skip?.includes(key)) continue
    const a = before[key]
    const b = after[key]
    const fieldKeys = [...keys, key]
    const path = [...where.path, key]
    if (isPlain(a) && isPlain(b)) {
      compareFields(changes, { ...where, path }, a, b, { keys: fieldKeys })
    } else if (Array.isArray(a) && Array.isArray(b)) {
      compareKeyedLists(changes, { ...where, path }, fieldKeys, a, b)
    } else if (!isSame(a, b)) {
      changes.push(makeChange(where.area, path, where.subject, fieldKeys, a, b))
    }
  }
}

/** Lists inside an entity: entries belong together when they name the same bend or layer. */
function compareKeyedLists(
  changes: DesignChange[],
  where: Where,
  keys: readonly string[],
  before: readonly unknown[],
  after: readonly unknown[],
): void {
  const keyOf = (entry: unknown, index: number) =>
    isPlain(entry) ? String(entry.id ?? entry.bendId ?? entry.layerId ?? entry.materialId ?? index) : String(index)
  const old = new Map(before.map((entry, index) => [keyOf(entry, index), entry]))
  const { label, node } = findFieldWords(where.path, keys.length)
  const entryNode: FieldNode | null = node?.entry === undefined ? null : { label: '', fields: node.entry }
  after.forEach((entry, index) => {
    const key = keyOf(entry, index)
    const previous = old.get(key)
    const path = [...where.path, key]
    old.delete(key)
    if (previous === undefined) {
      const text = formatFieldValue(entry, entryNode)
      changes.push({
        ...pick(where, path),
        sentence: `${where.subject} ${label} added: ${text}`,
        before: null,
        after: text,
      })
    } else if (isPlain(previous) && isPlain(entry)) {
      compareFields(changes, { ...where, path, subject: `${where.subject} ${label} ${key}` }, previous, entry)
    } else if (!isSame(previous, entry)) {
      changes.push(makeChange(where.area, path, where.subject, keys, previous, entry))
    }
  })
  for (const [key, entry] of old) {
    const text = formatFieldValue(entry, entryNode)
    changes.push({
      ...pick(where, [...where.path, key]),
      sentence: `${where.subject} ${label} removed: ${text}`,
      before: text,
      after: null,
    })
  }
}

/** Added, removed and changed entries of a list whose entries have ids. */
function compareEntities<T extends Entity>(
  changes: DesignChange[],
  area: DesignArea,
  path: readonly string[],
  before: readonly T[],
  after: readonly T[],
  nameOf: (entity: T) => string,
): void {
  const old = new Map(before.map((entity) => [entity.id, entity]))
  for (const entity of after) {
    const previous = old.get(entity.id)
    const at = [...path, entity.id]
    if (previous === undefined) {
      changes.push({ area, path: at, sentence: `${nameOf(entity)} added`, before: null, after: entity.name })
    } else {
      compareFields(changes, { area, path: at, subject: nameOf(previous) }, previous, entity)
    }
  }
  const kept = new Set(after.map(({ id }) => id))
  for (const entity of before) {
    if (!kept.has(entity.id)) {
      changes.push({
        area,
        path: [...path, entity.id],
        sentence: `${nameOf(entity)} removed`,
        before: entity.name,
        after: null,
      })
    }
  }
}

function compareConstruction(changes: DesignChange[], before: Design, after: Design): void {
  const area = 'construction' as const
  const path = ['construction', 'layers']
  const old = nameLayers(before.construction.layers)
  const now = nameLayers(after.construction.layers)
  const oldLayers = new Map(before.construction.layers.map((layer) => [layer.id, layer]))
  const newIds = new Set(after.construction.layers.map(({ id }) => id))

  for (const layer of after.construction.layers) {
    const previous = oldLayers.get(layer.id)
    const at = [...path, layer.id]
    if (previous === undefined) {
      const text = asEntered(layer.thicknessUm, 'um')
      changes.push({ area, path: at, sentence: `${now.get(layer.id)} added, ${text}`, before: null, after: text })
      continue
    }
    const where = { area, path: at, subject: old.get(layer.id) ?? layer.name }
    if (previous.kind === 'conductor' && layer.kind === 'conductor' && previous.thicknessUm !== layer.thicknessUm) {
      // The thickness of a conductor layer is its foil's; plating and finished copper are other numbers.
      changes.push(
        makeChange(area, [...at, 'thicknessUm'], `${where.subject} foil`, [], previous.thicknessUm, layer.thicknessUm),
      )
      compareFields(changes, where, previous, layer, { skip: ['thicknessUm'] })
    } else {
      compareFields(changes, where, previous, layer)
    }
  }
  for (const layer of before.construction.layers) {
    if (!newIds.has(layer.id)) {
      const text = asEntered(layer.thicknessUm, 'um')
      changes.push({
        area,
        path: [...path, layer.id],
        sentence: `${old.get(layer.id)} removed, ${text}`,
        before: text,
        after: null,
      })
    }
  }
  compareOrder(changes, before, after, old)
  compareZones(changes, before, after, old, now)
}

/** Says once which order the layers have, when layers that stayed changed places. */
function compareOrder(
  changes: DesignChange[],
  before: Design,
  after: Design,
  names: ReadonlyMap<string, string>,
): void {
  const common = (design: Design, other: Design) => {
    const ids = new Set(other.construction.layers.map(({ id }) => id))
    return design.construction.layers.map(({ id }) => id).filter((id) => ids.has(id))
  }
  const a = common(before, after)
  const b = common(after, before)
  if (a.every((id, index) => id === b[index])) return
  const list = (ids: readonly string[]) => ids.map((id) => names.get(id) ?? id).join(', ')
  changes.push({
    area: 'construction',
    path: ['construction', 'layers'],
    sentence: `order of layers from the top face: ${list(a)} to ${list(b)}`,
    before: list(a),
    after: list(b),
  })
}

function compareZones(
  changes: DesignChange[],
  before: Design,
  after: Design,
  oldNames: ReadonlyMap<string, string>,
  newNames: ReadonlyMap<string, string>,
): void {
  const area = 'construction' as const
  const old = new Map(before.construction.zones.map((zone) => [zone.id, zone]))
  const withoutPresence = (design: Design) => design.construction.zones.map(({ presence: _, ...zone }) => zone)
  compareEntities(
    changes,
    area,
    ['construction', 'zones'],
    withoutPresence(before),
    withoutPresence(after),
    ({ name }) => callByName('zone', name),
  )
  for (const zone of after.construction.zones) {
    const previous = old.get(zone.id)
    if (previous === undefined) continue
    const path = ['construction', 'zones', zone.id, 'presence']
    const had = new Map(previous.presence.map((presence) => [presence.layerId, presence]))
    for (const presence of zone.presence) {
      const name = newNames.get(presence.layerId) ?? presence.layerId
      const earlier = had.get(presence.layerId)
      had.delete(presence.layerId)
      const at = [...path, presence.layerId]
      if (earlier === undefined) {
        changes.push({
          area,
          path: at,
          sentence: `${callByName('zone', zone.name)}: ${name} added`,
          before: null,
          after: name,
        })
      } else {
        const { layerId: _, ...fields } = presence
        const { layerId: __, ...before } = earlier
        compareFields(changes, { area, path: at, subject: `${callByName('zone', zone.name)}: ${name}` }, before, fields)
      }
    }
    for (const layerId of had.keys()) {
      const name = oldNames.get(layerId) ?? layerId
      changes.push({
        area,
        path: [...path, layerId],
        sentence: `${callByName('zone', zone.name)}: ${name} removed`,
        before: name,
        after: null,
      })
    }
  }
}

/** Lists of features, by the keys of the design. */
export const FEATURE_LISTS = [
  'netClasses',
  'conductors',
  'holes',
  'pads',
  'outlineCorners',
  'widthSteps',
  'coverlayOpenings',
  'stiffeners',
  'slits',
  'components',
  'connectors',
  'registrations',
] as const satisfies readonly (keyof Features)[]

function compareFeatures(changes: DesignChange[], before: Design, after: Design): void {
  for (const key of FEATURE_LISTS) {
    compareEntities<Entity>(
      changes,
      'features',
      ['features', key],
      before.features[key],
      after.features[key],
      ({ name }) => `${getFieldInText(FEATURE_FIELDS[key])} ${name}`,
    )
  }
  compareFields(
    changes,
    { area: 'features', path: ['features'], subject: 'features:' },
    before.features,
    after.features,
    {
      skip: [...FEATURE_LISTS, 'outline'],
    },
  )
  compareOutlines(changes, before.features.outline, after.features.outline)
}

/** The outline is one thing: a vertex put in would otherwise read as a change of all those after it. */
function compareOutlines(changes: DesignChange[], before: Outline | null, after: Outline | null): void {
  const [a, b] = [before, after].map((outline) => (outline === null ? 'not stated' : describeOutline(outline)))
  const isOtherShape = !isSame(before?.verticesMm, after?.verticesMm)
  if (isOtherShape) {
    const moved = listMovedCorners(before, after)
    const sentence = a === b ? `outline: ${b}` : `outline ${a} to ${b}`
    changes.push({
      area: 'features',
      path: ['features', 'outline', 'verticesMm'],
      sentence: moved === '' ? sentence : `${sentence}; ${moved}`,
      before: a ?? null,
      after: b ?? null,
    })
  }
  const [was, is] = [before?.rollingDirection ?? null, after?.rollingDirection ?? null]
  if (was === is) return
  changes.push(
    makeChange('features', ['features', 'outline', 'rollingDirection'], 'outline', ['rollingDirection'], was, is),
  )
}

/** Beyond this many a list of corners says less than the size of the outline. */
const MOST_CORNERS_NAMED = 6

/** `corner 3 from (10, 5) to (10, 5.5)`; empty where corners came or went, or where too many moved. */
function listMovedCorners(before: Outline | null, after: Outline | null): string {
  if (before === null || after === null || before.verticesMm.length !== after.verticesMm.length) return ''
  const write = ([x, y]: readonly [number, number]) => `(${digitsAsEntered(x)}, ${digitsAsEntered(y)})`
  const moved = after.verticesMm.flatMap((corner, index) => {
    const was = before.verticesMm[index]
    return was === undefined || isSame(was, corner)
      ? []
      : [`corner ${index + 1} from ${write(was)} to ${write(corner)} mm`]
  })
  return moved.length > MOST_CORNERS_NAMED ? `${moved.length} corners moved` : moved.join(', ')
}

/** `6 vertices, 80 × 60 mm` */
function describeOutline({ verticesMm }: Outline): string {
  const spanOf = (axis: 0 | 1) => {
    const along = verticesMm.map((vertex) => vertex[axis])
    return tidy(Math.max(...along) - Math.min(...along))
  }
  return `${verticesMm.length} vertices, ${digitsAsEntered(spanOf(0))} × ${asEntered(spanOf(1), 'mm')}`
}

/** `L2` for conductor layers by position from the top face; kind and name for the others. */
export function nameLayers(
  layers: readonly { readonly id: string; readonly name: string; readonly kind: string }[],
): Map<string, string> {
  let count = 0
  return new Map(
    layers.map((layer) => {
      if (layer.kind !== 'conductor') return [layer.id, `${nameLayerKind(layer.kind).toLowerCase()} ${layer.name}`]
      count += 1
      return [layer.id, `L${count}`]
    }),
  )
}

function makeChange(
  area: DesignArea,
  path: readonly string[],
  subject: string,
  keys: readonly string[],
  before: unknown,
  after: unknown,
): DesignChange {
  const words = findFieldWords(path, keys.length)
  const a = formatFieldValue(before, words.node)
  const b = formatFieldValue(after, words.node)
  const label = words.label === '' ? subject : `${subject} ${words.label}`
  // Long texts may differ beyond what is shown of them.
  const sentence = a === b ? `${label} changed` : `${label} ${a} to ${b}`
  return { area, path, sentence, before: a, after: b }
}

function pick(where: Where, path: readonly string[]): Pick<DesignChange, 'area' | 'path'> {
  return { area: where.area, path }
}

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
