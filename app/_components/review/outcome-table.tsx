'use client'

import Link from 'next/link'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { DecidingEndText, LimitText } from '@/app/_components/ui/limit-text'
import { QuantityText, RangeText } from '@/app/_components/ui/quantity'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { ArtworkSpot, DecidedOutcome, Outcome } from '@/lib/engine/results'
import { describeLimitOwner, formatIssuePath, getShownVerdict } from '@/lib/engine/results'

interface OutcomeTableProps {
  outcomes: readonly Outcome[]
  /** Source of a limit or relation by its key, as a citation. */
  citations: Readonly<Record<string, string>>
  caption: string
  /** Where a place in the artwork is shown. */
  hrefOfSpot: (spot: ArtworkSpot) => string
}

const COLUMNS = {
  where: { head: 'Where', isRowHead: true },
  verdict: { head: 'Verdict' },
  value: { head: 'Value', isNumeric: true },
  limit: { head: 'Limit', isNumeric: true },
  margin: { head: 'Margin', isNumeric: true },
  limitSetBy: { head: 'Limit set by' },
  relation: { head: 'Relation and source', className: 'small' },
} satisfies Columns

/** What was computed for an item: value, limit, margin, whose limit, equation and source, one row for each place. */
export function OutcomeTable({ outcomes, citations, caption, hrefOfSpot }: OutcomeTableProps) {
  const decided = outcomes.filter((outcome): outcome is DecidedOutcome => outcome.kind === 'decided')
  const others = outcomes.filter((outcome) => outcome.kind !== 'decided')
  const cautions = [...new Set(decided.flatMap((outcome) => outcome.cautions))]
  return (
    <div className="stack">
      {decided.length > 0 && (
        <DataTable label={caption} columns={COLUMNS}>
          {decided.map((outcome) => (
            <DataRow
              key={`${outcome.places.map((place) => `${place.kind} ${place.id}`).join()} ${outcome.summary}`}
              columns={COLUMNS}
              cells={{
                where: (
                  <>
                    {outcome.places.map((place) => place.name).join(', ') || 'Design'}
                    <p className="small muted font-normal">{outcome.summary}</p>
                    <SpotLink outcome={outcome} hrefOfSpot={hrefOfSpot} />
                  </>
                ),
                verdict: <VerdictMark verdict={outcome.verdict} />,
                value: (
                  <>
                    <QuantityText quantity={outcome.value} />
                    {outcome.range !== undefined && (
                      <span className="block small">
                        <RangeText range={outcome.range} unit={outcome.value.unit} />
                      </span>
                    )}
                  </>
                ),
                limit: (
                  <>
                    <LimitText limit={outcome.limit} />
                    <DecidingEndText limit={outcome.limit} decidingEnd={outcome.decidingEnd} />
                  </>
                ),
                margin: (
                  <>
                    <QuantityText quantity={{ ...outcome.value, value: outcome.margin }} />
                    {outcome.decidingEnd !== undefined && outcome.decidingEnd.margin < outcome.margin && (
                      <span className="block small muted">
                        worst{' '}
                        <QuantityText quantity={{ value: outcome.decidingEnd.margin, unit: outcome.limit.unit }} />
                      </span>
                    )}
                  </>
                ),
                limitSetBy: describeLimitOwner(outcome.limit.owner),
                relation: (
                  <>
                    {outcome.equation}
                    <span className="block muted">
                      {[...new Set([outcome.limit.sourceKey, outcome.sourceKey])]
                        .map((key) => citations[key] ?? key)
                        .join('; ')}
                    </span>
                  </>
                ),
              }}
            />
          ))}
        </DataTable>
      )}
      {others.map((outcome) => (
        <div
          key={`${outcome.places.map((place) => `${place.kind} ${place.id}`).join()} ${outcome.summary}`}
          className="row row-baseline"
        >
          <VerdictMark verdict={getShownVerdict(outcome)} />
          <span>
            {outcome.kind === 'withheld' && outcome.places.length > 0 && (
              <>{outcome.places.map((place) => place.name).join(', ')}: </>
            )}
            {outcome.kind === 'withheld' && outcome.value !== null && (
              <>
                <QuantityText quantity={outcome.value} />.{' '}
              </>
            )}
            {outcome.summary} <SpotLink outcome={outcome} hrefOfSpot={hrefOfSpot} />
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

function SpotLink({ outcome, hrefOfSpot }: { outcome: Outcome } & Pick<OutcomeTableProps, 'hrefOfSpot'>) {
  if (outcome.artworkAt === undefined) return null
  return (
    <Link className="small font-normal" href={hrefOfSpot(outcome.artworkAt)}>
      Show it in the artwork
    </Link>
  )
}
