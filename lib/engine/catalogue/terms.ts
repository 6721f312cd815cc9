import type { EvaluationContext } from '../context'
import { type BRIEF_TERMS, type Brief, findFieldWords, getChoiceWord } from '../design'
import type { MissingInput, Outcome, SaidOutcome } from '../results'
import type { SourceKey } from '../sources'
import { asEntered } from '../units'
import { BRIEF_PLACE, checkObserved } from './checks'

/** Records of the brief that hold terms. */
type TermRecord = keyof typeof BRIEF_TERMS
type TermOf<R extends TermRecord> = string & keyof Brief[R]

/** Terms of a record that nobody has stated, by the words of the dictionary. */
export function findUnstated<R extends TermRecord>(
  { design }: EvaluationContext,
  record: R,
  fields: readonly TermOf<R>[],
): MissingInput[] {
  const { [record]: terms } = design.brief
  return fields.flatMap((field) =>
    terms[field] === null ? [{ path: ['brief', record, field], label: nameTerm(record, field) }] : [],
  )
}

function nameTerm<R extends TermRecord>(record: R, field: TermOf<R>): string {
  return findFieldWords(['brief', record, field]).label
}

/** Not computed for want of terms that somebody would type; nothing where all are stated. */
export function askFor(missing: readonly MissingInput[]): Outcome[] {
  if (missing.length === 0) return []
  const labels = missing.map(({ label }) => label).join(', ')
  return [
    {
      kind: 'not-computed',
      missing,
      places: [BRIEF_PLACE],
      summary: `Not computed: ${labels} ${missing.length === 1 ? 'is' : 'are'} missing.`,
      rests: 'typed',
    },
  ]
}

/** A term of the design as it is written, which decides. */
export function makeTermOutcome(verdict: SaidOutcome['verdict'], summary: string, sourceKey: SourceKey): SaidOutcome {
  return { kind: 'said', verdict, rests: 'typed', sourceKey, places: [BRIEF_PLACE], summary }
}

/** `test voltage 250 V, isolation limit 100 MΩ`: what is stated of these terms. */
export function listTerms<R extends TermRecord>(
  { design }: EvaluationContext,
  record: R,
  fields: readonly TermOf<R>[],
): string {
  const { [record]: terms } = design.brief
  return fields
    .map((field) => {
      const { label, node } = findFieldWords(['brief', record, field])
      const value = terms[field] as string | number | boolean | null
      if (typeof value === 'number') return `${label} ${asEntered(value, node?.unit)}`
      if (typeof value === 'boolean') return `${label}: ${value ? 'yes' : 'no'}`
      return `${label}: ${getChoiceWord(node ?? { label }, value)}`
    })
    .join(', ')
}

/** A yes or no of a record that somebody stands by. */
export function checkSeen<R extends TermRecord>(
  { design }: EvaluationContext,
  record: R,
  field: TermOf<R>,
  words: { readonly whenRight: string; readonly whenWrong: string; readonly sourceKey: SourceKey },
): Outcome {
  const { [record]: terms } = design.brief
  return checkObserved({
    ...words,
    observed: terms[field] as boolean | null,
    wanted: true,
    path: ['brief', record, field],
    label: nameTerm(record, field),
    places: [BRIEF_PLACE],
  })
}
