import type { EvaluationContext } from '../../context'
import { findFieldPattern, findFieldWords } from '../../design'
import type { Limit, MissingInput, Outcome } from '../../results'
import { inSentence, type Unit } from '../../units'
import { decide, makeSourceLimit, notComputed } from '../decide'
import { readFieldPlaces } from '../field-places'
import type { RequirementRange } from './range'
import { REQUIREMENT_RANGES } from './ranges'

interface Entry {
  readonly [key: string]: unknown
}

interface Found {
  /** Numbers that somebody stated. */
  stated: number
  /** One of them lies outside of its range, or is blank and asked. */
  isToName: boolean
}

/** Patterns are split once: the item is computed at every stroke of a key. */
const STEPS: readonly (readonly [range: RequirementRange, steps: readonly string[]])[] = REQUIREMENT_RANGES.map(
  (range) => [range, range.pattern.split('.')],
)

/** Outcomes of what lies outside of its range or is asked, and how many figures were held against one. */
export function readRequirements(context: EvaluationContext): {
  readonly outcomes: readonly Outcome[]
  readonly statedCount: number
} {
  const outcomes: Outcome[] = []
  let statedCount = 0
  for (const [range, steps] of STEPS) {
    const found: Found = { stated: 0, isToName: false }
    visit(context.design, steps, 0, null, range, found)
    statedCount += found.stated
    if (found.isToName) outcomes.push(...nameOutside(range, context))
  }
  return { outcomes, statedCount }
}

/** Is a stated figure outside of its range? */
export const isOutside = ({ low, high }: RequirementRange, value: number): boolean => value < low || value > high

function visit(
  at: unknown,
  steps: readonly string[],
  index: number,
  entry: Entry | null,
  range: RequirementRange,
  found: Found,
): void {
  const step = steps[index]
  if (step === undefined) {
    if (entry !== null && range.isFor?.(entry) === false) return
    const value = readNumber(at)
    if (value === null) {
      if (range.isAsked === true) found.isToName = true
      return
    }
    found.stated += 1
    if (isOutside(range, value)) found.isToName = true
    return
  }
  if (step === '*') {
    if (Array.isArray(at)) for (const each of at) visit(each, steps, index + 1, each as Entry, range, found)
    return
  }
  // A record that is not stated (a plan, a window) states nothing in it.
  if (typeof at === 'object' && at !== null) visit((at as Entry)[step], steps, index + 1, entry, range, found)
}

/** A constant of a material stands with its source. */
function readNumber(at: unknown): number | null {
  if (typeof at === 'number') return at
  if (typeof at !== 'object' || at === null || !('value' in at)) return null
  return typeof at.value === 'number' ? at.value : null
}

function nameOutside(range: RequirementRange, context: EvaluationContext): Outcome[] {
  const unit = findFieldPattern(range.pattern)?.node.unit ?? 'count'
  return readFieldPlaces(context, range.pattern).places.flatMap(({ entry, path, places, value }): Outcome[] => {
    if (entry !== null && range.isFor?.(entry) === false) return []
    const what = nameOf(range, path, entry)
    if (value === null && range.isAsked === true) return [notComputed(path, what, places, 'typed')]
    if (typeof value !== 'number' || !isOutside(range, value)) return []
    return [
      decide({
        value,
        limit: limitOf(range, value, unit),
        places,
        what,
        equation: 'as typed, against what the trade states',
        isTyped: true,
        remark: `The trade states ${inSentence(range.low)} to ${inSentence(range.high, unit)}: check the figure and its unit.`,
      }),
    ]
  })
}

/** The end that is passed: rounding is allowed for in proportion to a limit, and the other end may be millions of times as large. */
function limitOf({ low, high }: RequirementRange, value: number, unit: Unit): Limit {
  const end = value < low ? ({ value: low, sense: 'at-least' } as const) : ({ value: high, sense: 'at-most' } as const)
  return makeSourceLimit({ key: 'requirementRange', ...end, unit, sourceKey: 'ownChoice' })
}

function nameOf({ nameSteps = 1 }: RequirementRange, path: MissingInput['path'], entry: Entry | null): string {
  const { label } = findFieldWords(path, nameSteps)
  return typeof entry?.name === 'string' ? `${label} of ${entry.name}` : label
}
