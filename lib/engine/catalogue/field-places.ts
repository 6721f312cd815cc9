import type { EvaluationContext } from '../context'
import { type Design, findFieldPattern, getFieldInText, listAssumptions, listStiffeners } from '../design'
import type { MissingInput, Outcome, Place } from '../results'
import { BRIEF_PLACE, DESIGN_PLACE, ROUTING_PLACE } from './checks'
import { notApplicable } from './decide'
import { isOpen } from './given'
import { LISTS, type ListState, readListState } from './listed'

/** One place in the design that a pattern such as `bends.*.insideRadiusMm` leads to. */
export interface FieldPlace {
  readonly path: MissingInput['path']
  readonly places: readonly Place[]
  /** In words, with its owner: `inside radius of Hinge`. */
  readonly label: string
  /** Null where nobody has said it. */
  readonly value: unknown
  /** Has somebody said it? What is open as a term says nothing, and an empty list neither. */
  readonly isStated: boolean
  /** The entry of the innermost list; null outside of lists. */
  readonly entry: Readonly<Record<string, unknown>> | null
  /** Nobody has confirmed the value. */
  readonly isAssumed: boolean
}

/** Narrows a pattern to the entries of one kind: `use` is `dynamic`. */
export interface OnlyWhere {
  readonly field: string
  readonly value: string
}

/** What a rule about a field finds: its places, and outcomes for what cannot be looked at. */
export interface FieldReading {
  readonly places: readonly FieldPlace[]
  /** Of lists that nobody has filled, and of entries of which nobody knows whether the rule is for them. */
  readonly otherwise: readonly Outcome[]
}

interface At {
  readonly value: unknown
  readonly path: readonly (string | number)[]
  readonly place: Place | null
  readonly entry: Readonly<Record<string, unknown>> | null
}

/**
 * Every place of a field in a design. A list without entries is unknown, unless it is marked as empty: nothing is met on what nobody listed.
 * A field that the kind of an entry does not have (the plating of an adhesive) is no place.
 */
export function readFieldPlaces(
  context: EvaluationContext,
  pattern: string,
  where: OnlyWhere | null = null,
): FieldReading {
  const { design } = context
  const field = findFieldPattern(pattern)
  if (field === null) return { places: [], otherwise: [unknownField(pattern)] }
  const words = getFieldInText(field.node)
  const otherwise: Outcome[] = []
  let found: At[] = [{ value: design, path: [], place: null, entry: null }]
  const steps = pattern.split('.')
  const lastList = steps.lastIndexOf('*')
  steps.forEach((step, index) => {
    if (step !== '*') {
      found = found.flatMap((at) => stepInto(at, step))
      return
    }
    const listName = steps[index - 1] ?? ''
    found = found.flatMap((at) => listEntries(at, listName, design))
    if (found.length === 0) otherwise.push(describeEmpty(listName, context))
    if (index === lastList && where !== null) found = keepKind(found, where, otherwise)
  })
  if (otherwise.length === 0 && found.length === 0) {
    otherwise.push(notApplicable(`no part of the design has ${withArticle(words)} to judge`))
  }
  const assumed = new Set(listAssumptions(design).map(({ mark }) => mark))
  const isChoice = field.node.choices !== undefined
  const places = found.map(({ value, path, place, entry }): FieldPlace => {
    const owner = place ?? getOwner(pattern)
    return {
      path,
      places: [owner],
      label: place === null ? words : `${words} of ${place.name}`,
      value: readValue(value),
      isStated: isStated(readValue(value), isChoice),
      entry,
      isAssumed: place !== null && assumed.has(`${getListName(steps)}.${place.id}.${getFieldAfterList(steps)}`),
    }
  })
  return { places, otherwise }
}

/** A choice is stated once it is made, though its word may be one that says nothing where people write: "standard". */
function isStated(value: unknown, isChoice: boolean): boolean {
  if (isChoice ? value === null : isOpen(value)) return false
  if (Array.isArray(value)) return value.length > 0
  return typeof value !== 'number' || Number.isFinite(value)
}

function stepInto(at: At, step: string): At[] {
  if (at.value === null) return [{ ...at, path: [...at.path, step] }]
  const value = (at.value as Readonly<Record<string, unknown>>)[step]
  return value === undefined ? [] : [{ ...at, value, path: [...at.path, step] }]
}

function listEntries(at: At, listName: string, design: Design): At[] {
  const entries = listName === 'stiffeners' ? listStiffeners(design) : at.value
  if (!Array.isArray(entries)) return []
  return entries.map((value: unknown, index) => {
    const entry = value as Readonly<Record<string, unknown>>
    const { id, name } = entry
    const place =
      typeof id === 'string' && typeof name === 'string'
        ? { kind: PLACE_KINDS[listName] ?? 'design', id, name }
        : at.place
    return { value, path: [...at.path, index], place, entry }
  })
}

/** Entries of one kind; where the kind itself is unknown, nobody knows whether the rule is for the entry. */
function keepKind(found: readonly At[], { field, value }: OnlyWhere, otherwise: Outcome[]): At[] {
  const kept = found.filter(({ entry, path, place }) => {
    const kind = entry?.[field]
    if (kind === null) {
      const label = `${field} of ${place?.name ?? 'an entry'}`
      otherwise.push({
        kind: 'not-computed',
        missing: [{ path: [...path, field], label }],
        places: place === null ? [] : [place],
        summary: `Not computed: ${label} is missing, so nobody knows whether the rule is for it.`,
        rests: 'typed',
      })
    }
    return kind === value
  })
  if (kept.length === 0 && found.length > 0 && otherwise.length === 0) {
    otherwise.push(notApplicable(`nothing in the design has ${field} "${value}"`))
  }
  return kept
}

/** For a list without entries: whether somebody stated that it is empty. */
function describeEmpty(listName: string, context: EvaluationContext): Outcome {
  const state: ListState =
    listName in LISTS
      ? readListState(listName as keyof typeof LISTS, context)
      : SAID_BY_CONSTRUCTION.includes(listName) && context.design.construction.layers.length > 0
        ? 'none'
        : {
            because: `no entry of ${listName} is listed`,
            missing: { path: [listName], label: `entries of ${listName}` },
          }
  if (typeof state === 'string') return notApplicable('the list is stated to be empty')
  return {
    kind: 'not-computed',
    missing: [state.missing],
    places: [],
    summary: `Not computed: ${state.because}.`,
    rests: 'typed',
  }
}

/** The layers say which there are; a design uses own materials only where it lists them. */
const SAID_BY_CONSTRUCTION: readonly string[] = ['stiffeners', 'materials']

const PLACE_KINDS: Readonly<Record<string, Place['kind']>> = {
  layers: 'layer',
  zones: 'zone',
  bends: 'bend',
  conductors: 'conductor',
  holes: 'hole',
  pads: 'pad',
  outlineCorners: 'corner',
  widthSteps: 'width-step',
  coverlayOpenings: 'coverlay-opening',
  stiffeners: 'stiffener',
  slits: 'slit',
  components: 'component',
  connectors: 'connector',
}

function getOwner(pattern: string): Place {
  if (pattern.startsWith('brief.')) return BRIEF_PLACE
  return pattern.startsWith('features.routing.') ? ROUTING_PLACE : DESIGN_PLACE
}

/** A number of a material stands with its source; the number alone is the value. */
function readValue(value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'value' in value ? value.value : (value ?? null)
}

const getListName = (steps: readonly string[]) => steps[steps.indexOf('*') - 1] ?? ''
const getFieldAfterList = (steps: readonly string[]) => steps[steps.indexOf('*') + 1] ?? ''

const withArticle = (words: string) => `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`

/** A rule may name a field of another version of the program: then nobody can say whether it is kept. */
function unknownField(pattern: string): Outcome {
  return {
    kind: 'not-computed',
    missing: [{ path: [], label: `the field ${pattern}` }],
    places: [],
    summary: `Not computed: the design document has no field ${pattern}.`,
    rests: 'typed',
  }
}
