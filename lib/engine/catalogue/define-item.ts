import type { EvaluationContext } from '../context'
import type { ItemSection, MissingInput, Outcome, Verdict } from '../results'
import type { SourceKey } from '../sources'
import type { InputPattern } from './item-inputs'
import type { LimitKey } from './limits'
import type { Monotone } from './monotone'
import type { NeedKey } from './needs'
import type { Severity } from './severity'

/**
 * By when an item can be known, and has to be: `early` from brief, construction and bends; `layout` once features and drawing exist, asked before
 * the fabricators' review is left; `fabricator` once they have looked, asked before anybody signs.
 */
export const DECIDED_WHEN = ['early', 'layout', 'fabricator'] as const
export type DecidedWhen = (typeof DECIDED_WHEN)[number]

/** The same as people read it, after "decided in". */
export const DECIDED_WHEN_WORDS: Readonly<Record<DecidedWhen, string>> = {
  early: 'early review',
  layout: 'layout review',
  fabricator: 'fabricator review',
}
export type AnsweringRole = 'member' | 'lead' | 'fabricator'

export type ItemVerdict = Verdict | 'needs-judgment'
export type Titles = Readonly<Record<ItemVerdict, string>>

/** What a person decides, and the evidence that the answer should rest on. */
export interface Judgment {
  readonly evidence: string
  /** Inputs of the design that must be there to judge; those that are empty are named. */
  readonly findMissing?: (context: EvaluationContext) => readonly MissingInput[]
  /** Facts from outside the design may not be at hand: may a person then answer in place of the calculation? */
  readonly replacesMissing?: boolean
  /** The answer says what somebody saw and not what they think: it names where they looked, and lapses with that file. */
  readonly isStatement?: boolean
}

/** What a person reads about an item besides its question. */
export interface ItemProse {
  readonly why: string
  readonly howToCheck: string
}

interface ItemCommon {
  /** A noun; never changes its meaning. */
  readonly id: string
  readonly section: ItemSection
  readonly severity: Severity
  readonly question: string
  readonly appliesTo: { readonly needs: readonly NeedKey[]; readonly says: string }
  /** Limits of the dictionary that the check asks for. */
  readonly limits: readonly LimitKey[]
  /** Relations and rules that it rests on, besides the sources of its limits. */
  readonly sourceKeys: readonly SourceKey[]
  /** Inputs whose change makes an earlier answer worth another look. */
  readonly restsOn: readonly InputPattern[]
  readonly decidedWhen: DecidedWhen
  readonly answeredBy: readonly AnsweringRole[]
  /** Asked only where a profile that the project follows switches it on: most designs have no use for it. */
  readonly onlyWithProfile?: true
  /** A profile asks it of every design: where it would not apply, a person says why. */
  readonly isForEveryDesign?: boolean
  /** What profiles changed about it, as sentences. */
  readonly becauseOf?: readonly string[]
  /** Inputs that, made worse, never improve the verdict; a property test holds the item to it. Empty where there is none. */
  readonly monotone: readonly Monotone[]
}

interface TitlesGiven {
  readonly meets: string
  readonly fails: string
  readonly 'thin-margin'?: string
}

/**
 * A computed item, a judgment, or both: with both, a calculation that fails or lacks input speaks first, and a
 * person judges the rest.
 */
type ItemInput = ItemCommon & { readonly prose?: Partial<ItemProse> } & (
    | {
        readonly titles: TitlesGiven
        readonly check: (context: EvaluationContext) => readonly Outcome[]
        readonly judgment?: Judgment
      }
    | {
        readonly titles: { readonly judgment: string }
        readonly check?: undefined
        readonly judgment: Judgment
      }
  )

export interface ItemDefinition extends ItemCommon {
  /** A workspace's own words; what it leaves out is as delivered (`prose/`). */
  readonly prose?: Partial<ItemProse>
  readonly titles: Titles
  readonly check: ((context: EvaluationContext) => readonly Outcome[]) | null
  readonly judgment: Judgment | null
}

/** Fills in the titles that follow from the others. */
export function defineItem(input: ItemInput): ItemDefinition {
  const notApplicable = `Applies to ${input.appliesTo.says}`
  if (input.check === undefined) {
    const title = input.titles.judgment
    return {
      ...input,
      check: null,
      titles: {
        meets: title,
        fails: title,
        'thin-margin': title,
        'cannot-tell': title,
        'not-computed': title,
        'not-applicable': notApplicable,
        'needs-judgment': title,
      },
    }
  }
  const { meets, fails } = input.titles
  return {
    ...input,
    judgment: input.judgment ?? null,
    titles: {
      meets,
      fails,
      'thin-margin': input.titles['thin-margin'] ?? `${meets} at nominal, not over the whole range`,
      'cannot-tell': 'Beyond what can be calculated',
      'not-computed': 'An input is missing',
      'not-applicable': notApplicable,
      'needs-judgment':
        input.judgment?.replacesMissing === true
          ? 'A person answers what cannot be computed here'
          : `${meets} as far as can be computed; a person judges the rest`,
    },
  }
}
