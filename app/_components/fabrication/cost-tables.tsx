import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import type { ComparedConstructionView } from '@/lib/data'
import { asComputed, digitsAsComputed } from '@/lib/engine/units'
import type { Cost } from '@/lib/fabrication'
import { DEMAND_WORDS, UNIT_WORDS } from './rate-words'

const inPct = (fraction: number): string => asComputed(100 * fraction, 'sharePct')

const STEP_COLUMNS = {
  step: { head: 'Step', isRowHead: true, className: 'font-normal' },
  why: { head: 'Why it applies', className: 'small' },
  count: { head: 'How often', isNumeric: true },
  index: { head: 'Cost index per good part', isNumeric: true },
  share: { head: 'Share', isNumeric: true },
  rate: { head: 'Rate', className: 'small' },
} satisfies Columns

/** Steps that the design selected, each with the rule that selected it. */
export function SelectedSteps({ cost }: { cost: Cost }) {
  return (
    <DataTable
      label="Process steps"
      columns={STEP_COLUMNS}
      foot={
        <DataRow
          columns={STEP_COLUMNS}
          cells={{
            step: 'Together',
            why: null,
            count: null,
            index: digitsAsComputed(cost.indexPerGoodPart, 'costIndex'),
            share: inPct(1),
            rate: null,
          }}
        />
      }
    >
      {cost.steps.map(({ step, count, because, indexPerGoodPart, shareFraction }) => (
        <DataRow
          key={step.id}
          columns={STEP_COLUMNS}
          cells={{
            step: step.name,
            why: because,
            count: (
              <>
                {count} <span className="small muted">{UNIT_WORDS[step.unit]}</span>
              </>
            ),
            index: digitsAsComputed(indexPerGoodPart, 'costIndex'),
            share: inPct(shareFraction),
            rate: step.isIllustrative ? <span className="muted">illustrative</span> : 'own',
          }}
        />
      ))}
    </DataTable>
  )
}

const YIELD_COLUMNS = {
  step: { head: 'Step that loses parts', isRowHead: true, className: 'font-normal' },
  yield: { head: 'Yield', isNumeric: true },
  left: { head: 'Left', isNumeric: true },
} satisfies Columns

/** How many parts are left after each step that loses some. */
export function YieldChain({ cost }: { cost: Cost }) {
  return (
    <DataTable label="Yield" columns={YIELD_COLUMNS}>
      {cost.yieldChain.map(({ id, name, yieldFraction, runningFraction }) => (
        <DataRow
          key={id}
          columns={YIELD_COLUMNS}
          cells={{
            step: name,
            yield: inPct(yieldFraction),
            left: inPct(runningFraction),
          }}
        />
      ))}
    </DataTable>
  )
}

const CONSTRUCTION_COLUMNS = {
  construction: { head: 'Construction', isRowHead: true, className: 'font-normal' },
  index: { head: 'Cost index per good part', isNumeric: true },
  ratio: { head: 'Relative to this one', isNumeric: true },
  parts: { head: 'Parts per panel', isNumeric: true },
  format: { head: 'Panel format' },
  registration: { head: 'Registration' },
} satisfies Columns

/** The same part made in other ways: cost beside this one's. */
export function ComparedConstructions({ constructions }: { constructions: readonly ComparedConstructionView[] }) {
  return (
    <DataTable label="Constructions side by side" columns={CONSTRUCTION_COLUMNS}>
      {constructions.map((each) => (
        <DataRow
          key={`${each.kind} ${each.id}`}
          data-chosen={each.kind === 'this' ? '' : undefined}
          columns={CONSTRUCTION_COLUMNS}
          cells={{
            construction: (
              <>
                {each.kind === 'this' ? <strong>{each.name}</strong> : each.name}
                {each.kind === 'ready-made' && <span className="small muted"> ready-made</span>}
                {each.reason !== '' && <p className="small muted">Not computed. {each.reason}</p>}
              </>
            ),
            index: digitsAsComputed(each.indexPerGoodPart, 'costIndex'),
            ratio: each.ratio === null || each.kind === 'this' ? '–' : formatDifference(each.ratio),
            parts: each.partsPerPanel ?? '–',
            format: each.formatName ?? '–',
            registration: each.registration === null ? '–' : DEMAND_WORDS[each.registration].toLowerCase(),
          }}
        />
      ))}
    </DataTable>
  )
}

function formatDifference(ratio: number): string {
  const pct = 100 * (ratio - 1)
  if (Math.abs(pct) < 0.05) return 'the same'
  return pct > 0 ? `${asComputed(pct, 'sharePct')} dearer` : `${asComputed(-pct, 'sharePct')} cheaper`
}
