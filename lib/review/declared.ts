/** What a fabricator can say of the content. A condition is a line of its own, so that none is counted as a plain yes. */
export const DECLARATION_VERDICTS = ['buildable', 'with-conditions', 'not-buildable'] as const
export type DeclarationVerdict = (typeof DECLARATION_VERDICTS)[number]

/** The one record of what verdicts are called. */
export const DECLARATION_WORDS: Readonly<Record<DeclarationVerdict, string>> = {
  buildable: 'buildable',
  'with-conditions': 'buildable with conditions',
  'not-buildable': 'not buildable',
}

/** What the lead makes of a condition: a change of the design, a refusal, or something to be done by a person. */
export const CONDITION_STATES = ['open', 'taken-over', 'declined', 'action'] as const
export type ConditionState = (typeof CONDITION_STATES)[number]

export const CONDITION_WORDS: Readonly<Record<ConditionState, string>> = {
  open: 'not decided',
  'taken-over': 'taken over',
  declined: 'declined',
  action: 'turned into an action',
}

/** What was done about a condition or a thread, by name: the record reads the same when the thing is renamed later. */
export type Done =
  | { readonly kind: 'fields'; readonly changes: readonly string[] }
  | { readonly kind: 'proposal'; readonly id: string; readonly title: string }
  | { readonly kind: 'file'; readonly fileName: string; readonly sha256: string }
  | { readonly kind: 'action'; readonly id: string; readonly text: string }
  | { readonly kind: 'no-change' }

export const DONE_KINDS = ['fields', 'proposal', 'file', 'action', 'no-change'] as const satisfies Done['kind'][]

export function describeDone(done: Done): string {
  switch (done.kind) {
    case 'fields':
      return `changed in the design: ${done.changes.join('; ')}`
    case 'proposal':
      return `the proposal "${done.title}" was accepted`
    case 'file':
      return `file ${done.fileName}`
    case 'action':
      return `action: ${done.text}`
    case 'no-change':
      return 'no change'
  }
}

/** One thing that must hold for a declaration to be a yes. */
export interface DeclarationCondition {
  readonly id: string
  readonly text: string
  /** Path of the field that it is about, its name then, and what it should be; empty for words alone. */
  readonly field: string
  readonly fieldLabel: string
  readonly value: string
  readonly state: ConditionState
  readonly decidedByName: string | null
  readonly decidedAt: string | null
  readonly decisionNote: string
  readonly done: Done | null
}

/** A fabricator's declaration on one content. */
export interface Declaration {
  readonly id: string
  readonly companyId: string
  readonly companyName: string
  readonly verdict: DeclarationVerdict
  /** Made before conditions were lines of their own: its note may hold one. */
  readonly isFromBefore?: boolean
  readonly note: string
  readonly conditions: readonly DeclarationCondition[]
  readonly madeBy: string
  readonly madeByName: string
  readonly madeAt: string
  /** `hashDeclaredContent` of what was declared on. */
  readonly contentHash: string
}

/** A fabricator that was taken off this release, by name and with a reason. */
export interface TakenOff {
  readonly companyId: string
  readonly companyName: string
  readonly reason: string
  readonly byName: string
  readonly at: string
}

/** A condition as one line: what it says, and the field and value it names. */
export function describeCondition({
  text,
  fieldLabel,
  value,
}: Pick<DeclarationCondition, 'text' | 'fieldLabel' | 'value'>): string {
  if (fieldLabel === '') return text
  return `${text} (${fieldLabel}${value === '' ? '' : `: ${value}`})`
}

/** How a condition was settled, as a sentence's end; empty while it is open. */
export function describeDecision({ state, decisionNote, done }: DeclarationCondition): string {
  if (state === 'open') return ''
  const parts = [CONDITION_WORDS[state]]
  // "Turned into an action" has said what kind of thing was done.
  if (done !== null) parts.push(state === 'action' && done.kind === 'action' ? done.text : describeDone(done))
  if (decisionNote !== '') parts.push(decisionNote)
  return parts.join(': ')
}
