import { type MarkedVerdict, VerdictMark } from '@/app/_components/ui/verdict-mark'
import { ANSWER_STATES, type AnswerState } from '@/lib/review'
import { AnswerMark } from './answer-mark'

const VERDICT_MEANINGS: Record<MarkedVerdict, string> = {
  meets: 'the value keeps to the limit, over its whole range',
  'thin-margin': 'the nominal value keeps to the limit; the worst case does not',
  fails: 'the value misses the limit',
  follows: 'another item names the cause; fixing or waiving that item settles this one',
  'cannot-tell': 'the calculation does not cover this case',
  'not-computed': 'an input is missing',
  'needs-judgment': 'nothing to compute: a person decides',
  'not-applicable': 'the design has nothing of this kind',
}

const ANSWER_MEANINGS: Record<AnswerState, string> = {
  open: 'not answered yet',
  meets: 'accepted as it is',
  concern: 'raised, to be changed or waived',
  waived: 'a deviation that was approved',
  'not-applicable': 'does not concern this design',
}

const VERDICTS = Object.keys(VERDICT_MEANINGS) as MarkedVerdict[]

/** What the marks of verdicts and answers mean: on every page that shows them. */
export function MarkLegend() {
  return (
    <details className="legend no-print">
      <summary>Legend: verdicts and answers</summary>
      <div className="legend-parts">
        <div>
          <p className="label">Computed: the bar is the value, the upright line the limit</p>
          <dl className="terms">
            {VERDICTS.map((verdict) => (
              <div key={verdict} className="contents">
                <dt>
                  <VerdictMark verdict={verdict} />
                </dt>
                <dd>{VERDICT_MEANINGS[verdict]}</dd>
              </div>
            ))}
          </dl>
        </div>
        <div>
          <p className="label">State of the item: in a ring</p>
          <dl className="terms">
            {ANSWER_STATES.map((state) => (
              <div key={state} className="contents">
                <dt>
                  <AnswerMark state={state} />
                </dt>
                <dd>{ANSWER_MEANINGS[state]}</dd>
              </div>
            ))}
          </dl>
        </div>
      </div>
    </details>
  )
}
