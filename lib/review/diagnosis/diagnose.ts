import { describeRootCause, type Severity } from '@/lib/engine/catalogue'
import {
  type DecidedOutcome,
  getOutcomeVerdict,
  type ItemBasis,
  type ItemResult,
  type Outcome,
  type Place,
} from '@/lib/engine/results'
import type { AnswerState } from '../snapshot'
import { type Cure, listCures } from './cures'
import { findTheme, THEMES, type Theme } from './themes'

/** An item as the diagnosis reads it. */
export interface DiagnosedItem {
  readonly itemId: string
  readonly result: Pick<ItemResult, 'verdict' | 'basis' | 'outcomes' | 'headline' | 'followsFrom'>
  readonly state: AnswerState
  readonly severity: Severity
  readonly question: string
  /** Parts of the design that it looks at, as patterns. */
  readonly restsOn: readonly string[]
  /** Whom to ask, where that is not the designer. */
  readonly askedOf: readonly string[]
}

/** One item as far as it fails at the place of a cause. */
export interface CauseRow {
  readonly itemId: string
  readonly question: string
  readonly severity: Severity
  readonly basis: ItemBasis
  readonly isWaived: boolean
  readonly askedOf: readonly string[]
  readonly cures: readonly Cure[]
  /** Its failure goes with that of another item of the revision. */
  readonly isFollower: boolean
  /** Those that fail here, the worst first. */
  readonly outcomes: readonly Outcome[]
}

export type CauseAt = 'bend' | 'zone' | 'layer' | 'feature' | 'document' | 'review'

/** What fails at one place for one reason. */
export interface Cause {
  readonly id: string
  readonly title: string
  readonly at: CauseAt
  /** Empty where the whole design is meant. */
  readonly places: readonly Place[]
  /** The worst of what is not waived; null where all of it is. */
  readonly severity: Severity | null
  /** Clauses that name the roots: `copper is plated into the bend`. Empty where no item names one. */
  readonly because: readonly string[]
  /** What says most about it. */
  readonly lead: { readonly itemId: string; readonly outcome: Outcome }
  /** Worst first. */
  readonly rows: readonly CauseRow[]
}

const SEVERITY_RANK: Readonly<Record<Severity, number>> = { blocking: 0, major: 1, minor: 2, advice: 3 }
const AT_RANK: Readonly<Record<CauseAt, number>> = { bend: 0, zone: 1, layer: 2, feature: 3, document: 4, review: 5 }

/** A value that misses a limit of nothing is not a multiple of it. Such an outcome leads only where no other has a figure. */
const LEAST_MULTIPLE = 1

/**
 * What fails, as causes: by place and by what the items speak of, most severe first. A dozen rows that come from one thing at one place are one cause; an
 * item that fails at two bends is a row of both.
 *
 * @param hasPlan  the part is drawn in plan, where what was drawn is changed
 */
export function diagnose(items: readonly DiagnosedItem[], { hasPlan }: { readonly hasPlan: boolean }): Cause[] {
  const groups = new Map<string, Group>()
  for (const item of items) {
    if (item.result.verdict !== 'fails') continue
    for (const outcome of item.result.outcomes.filter(doesFail)) addTo(groups, item, outcome)
  }
  return mergeAlike([...groups.values()])
    .map((group) => toCause(group, hasPlan))
    .sort(compareCauses)
}

interface Group {
  readonly id: string
  readonly themeId: string
  readonly title: string
  readonly at: CauseAt
  readonly places: readonly Place[]
  readonly found: Map<string, { readonly item: DiagnosedItem; readonly outcomes: Outcome[] }>
}

const doesFail = (outcome: Outcome): boolean => getOutcomeVerdict(outcome) === 'fails'

function addTo(groups: Map<string, Group>, item: DiagnosedItem, outcome: Outcome): void {
  const themeId = findTheme(item.itemId)
  const theme: Theme | null = themeId === null ? null : THEMES[themeId]
  const { at, places } = locate(outcome, theme)
  const id = `${themeId ?? item.itemId} ${at} ${places.map((place) => place.id).join(' ')}`.trim()
  let group = groups.get(id)
  if (group === undefined) {
    const title = theme?.title ?? item.question
    group = { id, themeId: themeId ?? item.itemId, title, at, places, found: new Map() }
    groups.set(id, group)
  }
  const row = group.found.get(item.itemId) ?? { item, outcomes: [] }
  row.outcomes.push(outcome)
  group.found.set(item.itemId, row)
}

/** A bend before a zone before a layer before a feature: what a person would go and look at. */
function locate({ places }: Outcome, theme: Theme | null): { at: CauseAt; places: readonly Place[] } {
  if (theme?.at !== undefined) return { at: theme.at, places: [] }
  for (const kind of ['bend', 'zone', 'layer'] as const) {
    const found = places.filter((place) => place.kind === kind)
    if (found.length > 0) return { at: kind, places: found }
  }
  const features = places.filter(({ kind }) => !WHOLE.has(kind))
  return features.length > 0 ? { at: 'feature', places: features } : { at: 'document', places: [] }
}

const WHOLE: ReadonlySet<Place['kind']> = new Set(['brief', 'routing', 'design'])

/** Two zones in which the same items fail are one cause at two places; two bends stay two, since each has remedies of its own. */
function mergeAlike(groups: readonly Group[]): Group[] {
  const merged = new Map<string, Group>()
  for (const group of groups) {
    const key =
      group.at === 'bend' ? group.id : `${group.themeId} ${group.at} ${[...group.found.keys()].sort().join(' ')}`
    const known = merged.get(key)
    if (known === undefined) {
      merged.set(key, group)
      continue
    }
    for (const [itemId, { outcomes }] of group.found) known.found.get(itemId)?.outcomes.push(...outcomes)
    const ids = new Set(known.places.map(({ id }) => id))
    merged.set(key, { ...known, places: [...known.places, ...group.places.filter(({ id }) => !ids.has(id))] })
  }
  return [...merged.values()]
}

function toCause({ id, title, at, places, found }: Group, hasPlan: boolean): Cause {
  const rows = [...found.values()].map(
    ({ item, outcomes }): CauseRow => ({
      itemId: item.itemId,
      question: item.question,
      severity: item.severity,
      basis: item.result.basis,
      isWaived: item.state === 'waived',
      askedOf: item.askedOf,
      cures: listCures(item, outcomes, hasPlan),
      isFollower: (item.result.followsFrom ?? []).length > 0,
      outcomes: outcomes.toSorted((a, b) => readMultiple(b) - readMultiple(a)),
    }),
  )
  rows.sort(compareRows)
  const [first] = rows
  const lead = first?.outcomes[0]
  // A group holds at least the outcome that it was made for.
  if (first === undefined || lead === undefined) throw new RangeError('a cause without an outcome')
  const because = new Set(
    rows.flatMap(({ itemId, isFollower }) => (isFollower ? [] : (describeRootCause(itemId) ?? []))),
  )
  return {
    id,
    title,
    at,
    places,
    severity: rows.find(({ isWaived }) => !isWaived)?.severity ?? null,
    because: [...because],
    lead: { itemId: first.itemId, outcome: lead },
    rows,
  }
}

/** By how many times the value misses its limit. */
function readMultiple(outcome: Outcome): number {
  if (outcome.kind !== 'decided') return 0
  return multipleOf(outcome)
}

function multipleOf({ value, limit, decidingEnd }: DecidedOutcome): number {
  const [is, held] = decidingEnd === undefined ? [value.value, limit.value] : [decidingEnd.value, decidingEnd.limit]
  const isLow = decidingEnd === undefined ? limit.sense === 'at-least' : decidingEnd.end === 'lower'
  const multiple = isLow ? held / is : is / held
  return Number.isFinite(multiple) && multiple > LEAST_MULTIPLE ? multiple : LEAST_MULTIPLE
}

/** What is waived comes last, then by severity; what stands by itself before what follows from it; then by how far it misses. */
function compareRows(a: CauseRow, b: CauseRow): number {
  return (
    Number(a.isWaived) - Number(b.isWaived) ||
    SEVERITY_RANK[a.severity] - SEVERITY_RANK[b.severity] ||
    Number(a.isFollower) - Number(b.isFollower) ||
    missOf(b) - missOf(a)
  )
}

const missOf = ({ outcomes: [worst] }: CauseRow): number => (worst === undefined ? 0 : readMultiple(worst))

function compareCauses(a: Cause, b: Cause): number {
  return (
    rankOf(a) - rankOf(b) || AT_RANK[a.at] - AT_RANK[b.at] || b.rows.length - a.rows.length || (a.id < b.id ? -1 : 1)
  )
}

const rankOf = ({ severity }: Cause): number => (severity === null ? Number.POSITIVE_INFINITY : SEVERITY_RANK[severity])
