import { TableFrame } from '@/app/_components/ui/table-frame'
import type { ComparedConstructionView } from '@/lib/data'
import { asComputed, digitsAsComputed } from '@/lib/engine/units'
import type { Cost } from '@/lib/fabrication'
import { DEMAND_WORDS, UNIT_WORDS } from './rate-words'

const inPct = (fraction: number): string => asComputed(100 * fraction, 'sharePct')

/** Steps that the design selected, each with the rule that selected it. */
export function SelectedSteps({ cost }: { cost: Cost }) {
  return (
    <TableFrame label="Process steps">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Why it applies</th>
            <th scope="col" className="num">
              How often
            </th>
            <th scope="col" className="num">
              Cost index per good part
            </th>
            <th scope="col" className="num">
              Share
            </th>
            <th scope="col">Rate</th>
          </tr>
        </thead>
        <tbody>
          {cost.steps.map(({ step, count, because, indexPerGoodPart, shareFraction }) => (
            <tr key={step.id}>
              <th scope="row" className="font-normal">
                {step.name}
              </th>
              <td className="small" data-label="Why it applies">
                {because}
              </td>
              <td className="num" data-label="How often">
                {count} <span className="small muted">{UNIT_WORDS[step.unit]}</span>
              </td>
              <td className="num" data-label="Cost index per good part">
                {digitsAsComputed(indexPerGoodPart, 'costIndex')}
              </td>
              <td className="num" data-label="Share">
                {inPct(shareFraction)}
              </td>
              <td data-label="Rate" className="small">
                {step.isIllustrative ? <span className="muted">illustrative</span> : 'own'}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              Together
            </th>
            <td className="num" data-label="Cost index per good part">
              {digitsAsComputed(cost.indexPerGoodPart, 'costIndex')}
            </td>
            <td className="num" data-label="Share">
              {inPct(1)}
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
    </TableFrame>
  )
}

/** How many parts are left after each step that loses some. */
export function YieldChain({ cost }: { cost: Cost }) {
  return (
    <TableFrame label="Yield">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Step that loses parts</th>
            <th scope="col" className="num">
              Yield
            </th>
            <th scope="col" className="num">
              Left
            </th>
          </tr>
        </thead>
        <tbody>
          {cost.yieldChain.map(({ id, name, yieldFraction, runningFraction }) => (
            <tr key={id}>
              <th scope="row" className="font-normal">
                {name}
              </th>
              <td className="num" data-label="Yield">
                {inPct(yieldFraction)}
              </td>
              <td className="num" data-label="Left">
                {inPct(runningFraction)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}

/** The same part made in other ways: cost beside this one's. */
export function ComparedConstructions({ constructions }: { constructions: readonly ComparedConstructionView[] }) {
  return (
    <TableFrame label="Constructions side by side">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Construction</th>
            <th scope="col" className="num">
              Cost index per good part
            </th>
            <th scope="col" className="num">
              Relative to this one
            </th>
            <th scope="col" className="num">
              Parts per panel
            </th>
            <th scope="col">Panel format</th>
            <th scope="col">Registration</th>
          </tr>
        </thead>
        <tbody>
          {constructions.map((each) => (
            <tr key={`${each.kind} ${each.id}`} data-chosen={each.kind === 'this' ? '' : undefined}>
              <th scope="row" className={each.kind === 'this' ? undefined : 'font-normal'}>
                {each.name}
                {each.kind === 'ready-made' && <span className="small muted font-normal"> ready-made</span>}
                {each.reason !== '' && <p className="small muted font-normal">Not computed. {each.reason}</p>}
              </th>
              <td className="num" data-label="Cost index per good part">
                {digitsAsComputed(each.indexPerGoodPart, 'costIndex')}
              </td>
              <td className="num" data-label="Relative to this one">
                {each.ratio === null || each.kind === 'this' ? '–' : formatDifference(each.ratio)}
              </td>
              <td className="num" data-label="Parts per panel">
                {each.partsPerPanel ?? '–'}
              </td>
              <td data-label="Panel format">{each.formatName ?? '–'}</td>
              <td data-label="Registration">
                {each.registration === null ? '–' : DEMAND_WORDS[each.registration].toLowerCase()}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}

function formatDifference(ratio: number): string {
  const pct = 100 * (ratio - 1)
  if (Math.abs(pct) < 0.05) return 'the same'
  return pct > 0 ? `${asComputed(pct, 'sharePct')} dearer` : `${asComputed(-pct, 'sharePct')} cheaper`
}
