import type { AnswerState } from '@/lib/review'
import { ANSWER_WORDS } from './words'

const TONES: Record<AnswerState, string> = {
  open: 'open',
  meets: 'meets',
  concern: 'thin',
  waived: 'thin',
  'not-applicable': 'muted',
}

/** What stands inside the ring; the ring itself says that a person answered, as no mark of a verdict has one. */
const SIGNS: Record<AnswerState, string> = {
  open: '',
  meets: 'M4.75 8.25l2.25 2.25 4.25-5',
  concern: 'M8 4.25v4.5M8 10.5v1.5',
  waived: 'M4.5 8.75c1.2-2.2 2.4-2.2 3.5-.75s2.3 1.45 3.5-.75',
  'not-applicable': 'M5 8h6',
}

/** The state of an item as people answered it: a ring with a sign, never a shape that the engine uses. */
export function AnswerMark({ state }: { state: AnswerState }) {
  return (
    <span className="verdict" data-tone={TONES[state]}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
        <g fill="none" stroke="currentColor" strokeWidth="1.5">
          <circle cx="8" cy="8" r="6.75" {...(state === 'open' ? { strokeDasharray: '2.5 2' } : {})} />
          {SIGNS[state] !== '' && <path d={SIGNS[state]} />}
        </g>
      </svg>
      <span>{ANSWER_WORDS[state]}</span>
    </span>
  )
}
