import { describeDue, isOverdue, isPending, type ReviewAction } from './review-actions'

/** What a release may be used for. */
export const RELEASE_PURPOSES = ['prototypes', 'first-articles', 'series'] as const
export type ReleasePurpose = (typeof RELEASE_PURPOSES)[number]

export const RELEASE_PURPOSE_WORDS: Readonly<Record<ReleasePurpose, string>> = {
  prototypes: 'prototypes',
  'first-articles': 'first articles',
  series: 'series production',
}

/** The decision to release: for what, within which limits, in place of what and why. */
export interface ReleaseTerms {
  readonly isConditional: boolean
  /** Null where nobody stated it. */
  readonly purpose: ReleasePurpose | null
  /** For so many parts; null without a limit. */
  readonly quantityLimit: number | null
  /** YYYY-MM-DD: the last day on which it counts; null without an end. */
  readonly validUntil: string | null
  /** In words, beside the limits; empty where there are none. */
  readonly conditions: string
  /** The number of the change order or notice; empty where there is none. */
  readonly changeNumber: string
  /** Why there is this revision. */
  readonly reason: string
  /** From which lot, serial number or date it takes effect. */
  readonly effectivity: string
}

/** Of the waiver, what limits a release that rests on it. */
interface WaiverLimits {
  readonly quantityLimit?: number | null
  readonly validUntil?: string | null
}

/** `for series production`; `for prototypes, at most 50 parts, until 2027-03-31`. Earlier releases state no purpose and get no text. */
export function describeTerms({ purpose, quantityLimit, validUntil }: ReleaseTerms): string {
  return [
    ...(purpose === null ? [] : [`for ${RELEASE_PURPOSE_WORDS[purpose]}`]),
    ...(quantityLimit === null ? [] : [`at most ${quantityLimit} parts`]),
    ...(validUntil === null ? [] : [`until ${validUntil}`]),
  ].join(', ')
}

/** Change number, reason and effectivity in one line; a sentence that somebody ended with a full stop goes on here. */
export function describeChange({ changeNumber, reason, effectivity }: ReleaseTerms): string {
  return [
    changeNumber === '' ? 'no change number' : `change ${changeNumber}`,
    reason === '' ? 'reason not stated' : reason.replace(/\.$/, ''),
    effectivity === '' ? 'effectivity not stated' : `effective ${effectivity}`,
  ].join('; ')
}

/**
 * Why these terms cannot stand, by field; empty where they can. A release reaches no further than the waivers that it rests on, and past an action
 * that is due before its purpose only as a conditional one.
 */
export function findTermIssues(
  terms: ReleaseTerms,
  waivers: readonly WaiverLimits[],
  context: {
    readonly day: string
    readonly replaces: string | null
    readonly actions?: readonly OpenAction[]
  },
): { readonly field: keyof ReleaseTerms; readonly message: string }[] {
  const issues: { field: keyof ReleaseTerms; message: string }[] = []
  const { isConditional, quantityLimit, validUntil, reason } = terms
  if (isConditional && quantityLimit === null && validUntil === null) {
    issues.push({ field: 'quantityLimit', message: 'a conditional release needs a quantity or a last day' })
  }
  if (!isConditional && (quantityLimit !== null || validUntil !== null || terms.conditions !== '')) {
    issues.push({ field: 'isConditional', message: 'a release with limits or conditions is a conditional one' })
  }
  if (validUntil !== null && validUntil < context.day) {
    issues.push({ field: 'validUntil', message: `has passed: today is ${context.day}` })
  }
  if (context.replaces !== null && reason === '') {
    issues.push({ field: 'reason', message: `is empty: state why it replaces revision ${context.replaces}` })
  }
  const quantities = waivers.flatMap((waiver) => waiver.quantityLimit ?? [])
  const days = waivers.flatMap((waiver) => waiver.validUntil ?? [])
  const mostParts = quantities.length === 0 ? null : Math.min(...quantities)
  const lastDay = days.sort()[0] ?? null
  if (mostParts !== null && (quantityLimit === null || quantityLimit > mostParts)) {
    issues.push({ field: 'quantityLimit', message: `a waiver that it rests on is for ${mostParts} parts at most` })
  }
  if (lastDay !== null && (validUntil === null || validUntil > lastDay)) {
    issues.push({ field: 'validUntil', message: `a waiver that it rests on ends on ${lastDay}` })
  }
  const [overtaken] = isConditional
    ? []
    : (context.actions ?? []).filter((action) => isOvertaken(action, terms, context.day))
  if (overtaken !== undefined) {
    issues.push({
      field: 'isConditional',
      message: `action ${overtaken.number}, due ${describeDue(overtaken)}, is not closed: close it, or release conditionally or for less`,
    })
  }
  return issues
}

type OpenAction = Pick<ReviewAction, 'number' | 'state' | 'due' | 'dueOn' | 'isAfterRelease'>

/** Would the release, for its purpose, come before what it has to wait for? */
function isOvertaken(action: OpenAction, { purpose }: ReleaseTerms, day: string): boolean {
  if (!isPending(action) || action.isAfterRelease) return false
  if (action.due === 'before-series' && purpose === 'series') return true
  if (action.due === 'before-first-article' && purpose !== 'prototypes') return true
  return action.due === 'date' && isOverdue(action, day)
}
