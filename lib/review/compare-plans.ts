import isSame from 'fast-deep-equal'
import { type Design, type FieldNode, findFieldWords, type Plan } from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { formatFieldValue } from './trade-words'

/** One change of the plan, as changes of a design are. */
interface PlanChange {
  readonly area: 'plan'
  readonly path: readonly string[]
  readonly sentence: string
  readonly before: string | null
  readonly after: string | null
}

type Entry = Readonly<Record<string, unknown>>

/** What was drawn otherwise. A path is one thing: a point put in would otherwise read as a change of all those after it. */
export function comparePlans(before: Plan | null, after: Plan | null, names: Design): PlanChange[] {
  if (before === null || after === null) {
    if (before === after) return []
    const word = before === null ? 'added' : 'removed'
    return [
      {
        area: 'plan',
        path: ['plan'],
        sentence: `plan ${word}`,
        before: before === null ? null : 'drawn',
        after: after === null ? null : 'drawn',
      },
    ]
  }
  return Object.keys(after).flatMap((key): PlanChange[] => {
    const list = key as keyof Plan
    const [a, b] = [before[list], after[list]]
    if (isSame(a, b)) return []
    if (list !== 'outline' && Array.isArray(a) && Array.isArray(b))
      return compareLists(list, a as Entry[], b as Entry[], names)
    return [changeOf(['plan', list], '', a, b)]
  })
}

const FEATURE_KEYS = [
  'slits',
  'stiffeners',
  'connectors',
  'coverlayOpenings',
  'holes',
  'pads',
  'components',
  'conductors',
  'outlineCorners',
] as const

const idOf = (entry: Entry): string => String(entry.id)

function compareLists(list: string, before: readonly Entry[], after: readonly Entry[], names: Design): PlanChange[] {
  const { label } = findFieldWords(['plan', list])
  const old = new Map(before.map((entry) => [idOf(entry), entry]))
  const kept = new Set(after.map(idOf))
  const subjectOf = (entry: Entry) => `${label} ${nameEntry(entry, names)}`
  const changed = after.flatMap((entry): PlanChange[] => {
    const previous = old.get(idOf(entry))
    const path = ['plan', list, idOf(entry)]
    if (previous === undefined) {
      return [
        { area: 'plan', path, sentence: `${subjectOf(entry)} added`, before: null, after: nameEntry(entry, names) },
      ]
    }
    return Object.keys(entry).flatMap((key) =>
      isSame(previous[key], entry[key])
        ? []
        : [changeOf([...path, key], subjectOf(previous), previous[key], entry[key])],
    )
  })
  const removed = before
    .filter((entry) => !kept.has(idOf(entry)))
    .map((entry): PlanChange => {
      const path = ['plan', list, idOf(entry)]
      return {
        area: 'plan',
        path,
        sentence: `${subjectOf(entry)} removed`,
        before: nameEntry(entry, names),
        after: null,
      }
    })
  return [...changed, ...removed]
}

/** By its own name, or by that of the part of the design that it draws. */
function nameEntry(entry: Entry, { bends, features, construction }: Design): string {
  if (typeof entry.name === 'string') return entry.name
  if (typeof entry.letter === 'string') return entry.letter
  const reference = Object.entries(entry).find(
    ([key, value]) => /[a-z]Id$/.test(key) && key !== 'layerId' && typeof value === 'string',
  )
  if (reference === undefined) return idOf(entry)
  const lists = [bends, construction.layers, ...FEATURE_KEYS.map((key) => features[key])]
  const named = lists.flatMap((list) => list as readonly { readonly id: string; readonly name: string }[])
  const name = named.find(({ id }) => id === reference[1])?.name ?? String(reference[1])
  return idOf(entry) === reference[1] ? name : `${name} (${idOf(entry)})`
}

function changeOf(path: readonly string[], subject: string, before: unknown, after: unknown): PlanChange {
  const { label, node } = findFieldWords(path)
  const [a, b] = [describe(before, node), describe(after, node)]
  const what = `${subject} ${label}`.trim()
  return { area: 'plan', path, sentence: a === b ? `${what} changed` : `${what} ${a} to ${b}`, before: a, after: b }
}

/** `6 points, 2 arcs`: every point of a path would say less. */
function describe(value: unknown, field: FieldNode | null): string {
  if (Array.isArray(value) && value.every((node) => typeof node === 'object' && node !== null && 'viaMm' in node)) {
    const arcs = value.filter(({ viaMm }) => viaMm !== null).length
    return `${value.length} points${arcs === 0 ? '' : `, ${arcs} of them with an arc`}`
  }
  if (isPoint(value)) return `(${value.map((mm) => digitsAsEntered(mm)).join(', ')}) mm`
  return formatFieldValue(value, field)
}

const isPoint = (value: unknown): value is number[] =>
  Array.isArray(value) && value.length === 2 && value.every((each) => typeof each === 'number')
