'use client'

import { DecidingEndText, LimitText } from '@/app/_components/ui/limit-text'
import { QuantityText, RangeText } from '@/app/_components/ui/quantity'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { DecidedOutcome, Outcome } from '@/lib/engine/results'
import { describeLimitOwner, formatIssuePath, getOutcomeVerdict } from '@/lib/engine/results'

interface OutcomeTableProps {
  outcomes: readonly Outcome[]
  /** Source of a limit or relation by its key, as a citation. */
  citations: Readonly<Record<string, string>>
  caption: string
}

/** What was computed for an item: value, limit, margin, whose limit, equation and source, one row for each place. */
export function OutcomeTable({ outcomes, citations, caption }: OutcomeTableProps) {
  const decided = outcomes.filter((outcome): outcome is DecidedOutcome => outcome.kind === 'decided')
  const others = outcomes.filter((outcome) => outcome.kind !== 'decided')
  const cautions = [...new Set(decided.flatMap((outcome) => outcome.cautions))]
  return (
    <div className="stack">
      {decided.length > 0 && (
        <TableFrame label={caption}>
          <table className="ledger" data-stack>
            <thead>
              <tr>
                <th scope="col">Where</th>
                <th scope="col">Verdict</th>
                <th scope="col" className="num">
                  Value
                </th>
                <th scope="col" className="num">
                  Limit
                </th>
                <th scope="col" className="num">
                  Margin
                </th>
                <th scope="col">Limit set by</th>
                <th scope="col">Relation and source</th>
              </tr>
            </thead>
            <tbody>
              {decided.map((outcome) => (
                <tr key={`${outcome.places.map((place) => `${place.kind} ${place.id}`).join()} ${outcome.summary}`}>
                  <th scope="row">
                    {outcome.places.map((place) => place.name).join(', ') || 'Design'}
                    <p className="small muted font-normal">{outcome.summary}</p>
                  </th>
                  <td>
                    <VerdictMark verdict={outcome.verdict} />
                  </td>
                  <td className="num" data-label="value">
                    <QuantityText quantity={outcome.value} />
                    {outcome.range !== undefined && (
                      <span className="block small">
                        <RangeText range={outcome.range} unit={outcome.value.unit} />
                      </span>
                    )}
                  </td>
                  <td className="num" data-label="limit">
                    <LimitText limit={outcome.limit} />
                    <DecidingEndText limit={outcome.limit} decidingEnd={outcome.decidingEnd} />
                  </td>
                  <td className="num" data-label="margin">
                    <QuantityText quantity={{ ...outcome.value, value: outcome.margin }} />
                    {outcome.decidingEnd !== undefined && outcome.decidingEnd.margin < outcome.margin && (
                      <span className="block small muted">
                        worst{' '}
                        <QuantityText quantity={{ value: outcome.decidingEnd.margin, unit: outcome.limit.unit }} />
                      </span>
                    )}
                  </td>
                  <td data-label="whose limit">{describeLimitOwner(outcome.limit.owner)}</td>
                  <td className="small" data-label="source">
                    {outcome.equation}
                    <span className="block muted">
                      {[...new Set([outcome.limit.sourceKey, outcome.sourceKey])]
                        .map((key) => citations[key] ?? key)
                        .join('; ')}
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
      {others.map((outcome) => (
        <div
          key={`${outcome.places.map((place) => `${place.kind} ${place.id}`).join()} ${outcome.summary}`}
          className="row items-baseline"
        >
          <VerdictMark verdict={getOutcomeVerdict(outcome)} />
          <span>
            {outcome.kind === 'withheld' && outcome.places.length > 0 && (
              <>{outcome.places.map((place) => place.name).join(', ')}: </>
            )}
            {outcome.kind === 'withheld' && outcome.value !== null && (
              <>
                <QuantityText quantity={outcome.value} />.{' '}
              </>
            )}
            {outcome.summary}
            {outcome.kind === 'not-computed' && outcome.missing.length > 0 && (
              <span className="muted">
                {' '}
                Missing: {outcome.missing.map((input) => `${input.label} (${formatIssuePath(input.path)})`).join(', ')}.
              </span>
            )}
          </span>
        </div>
      ))}
      {cautions.length > 0 && (
        <ul className="cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
    </div>
  )
}
