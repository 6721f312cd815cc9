'use client'

import { DecidingEndText, LimitText } from '@/app/_components/ui/limit-text'
import { QuantityText } from '@/app/_components/ui/quantity'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { describeLimitOrigin, getOutcomeVerdict, getShownVerdict } from '@/lib/engine'
import type { PlacedOutcome } from './outcomes'

/**
 * What the checklist says about one thing. What is met or does not apply is folded away, so that what asks for a
 * decision stands alone.
 */
export function OutcomeList({ outcomes, emptyText }: { outcomes: readonly PlacedOutcome[]; emptyText: string }) {
  if (outcomes.length === 0) return <p className="empty">{emptyText}</p>
  const isQuiet = ({ outcome }: PlacedOutcome) => {
    const verdict = getOutcomeVerdict(outcome)
    return verdict === 'meets' || verdict === 'not-applicable'
  }
  const quiet = outcomes.filter(isQuiet)
  return (
    <>
      {quiet.length === outcomes.length ? (
        <p className="small">Nothing here fails or lacks an input.</p>
      ) : (
        <Outcomes outcomes={outcomes.filter((each) => !isQuiet(each))} />
      )}
      {quiet.length > 0 && (
        <details>
          <summary className="small">{quiet.length} met or not applicable</summary>
          <Outcomes outcomes={quiet} />
        </details>
      )}
    </>
  )
}

/** Verdicts with value, limit, whose limit, and source: the sentence first, because it says most. */
function Outcomes({ outcomes }: { outcomes: readonly PlacedOutcome[] }) {
  return (
    <ul className="outcomes">
      {outcomes.map(({ itemIds, outcome }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: one item may have several outcomes at one place, in stable order.
        <li key={`${itemIds[0]} ${index}`}>
          <VerdictMark verdict={getShownVerdict(outcome)} />
          <div>
            <p>{outcome.summary}</p>
            {itemIds.length > 1 && <p className="small muted">The same for {itemIds.length} items of the checklist.</p>}
            {outcome.kind === 'decided' && (
              <p className="small muted">
                <QuantityText quantity={outcome.value} /> against <LimitText limit={outcome.limit} /> (
                {describeLimitOrigin(outcome.limit)})
                <DecidingEndText limit={outcome.limit} decidingEnd={outcome.decidingEnd} />
              </p>
            )}
            {outcome.kind === 'withheld' && outcome.value !== null && (
              <p className="small muted">
                <QuantityText quantity={outcome.value} />
              </p>
            )}
            {outcome.kind === 'not-computed' &&
              !outcome.missing.every(({ label }) => outcome.summary.includes(label)) && (
                <p className="small muted">Missing: {outcome.missing.map((missing) => missing.label).join('; ')}</p>
              )}
            {outcome.kind === 'decided' &&
              outcome.cautions.map((caution) => (
                <p key={caution} className="small">
                  Caution: {caution}
                </p>
              ))}
          </div>
        </li>
      ))}
    </ul>
  )
}
