import Link from 'next/link'
import { CostCharts } from '@/app/_components/fabrication/cost-charts'
import { ComparedConstructions, SelectedSteps, YieldChain } from '@/app/_components/fabrication/cost-tables'
import { EstimateMissing } from '@/app/_components/fabrication/estimate-missing'
import { FabricationLinks } from '@/app/_components/fabrication/fabrication-links'
import { QuantityForm } from '@/app/_components/fabrication/quantity-form'
import { DEMAND_WORDS } from '@/app/_components/fabrication/rate-words'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type CostsView, type FabricatorCostView, getCosts } from '@/lib/data'
import { asComputed, asCount, digitsAsComputed } from '@/lib/engine/units'
import { loadRevision, type RevisionParams } from '../../load-revision'

/** Relative cost of the revision's construction at each fabricator, and of other constructions of the same part. */
export default async function CostPage({
  params,
  searchParams,
}: RevisionParams & { searchParams: Promise<{ quantity?: string | string[] }> }) {
  const [{ projectId, revisionId }, { quantity }] = await Promise.all([params, searchParams])
  const { actor } = await loadRevision(projectId, revisionId)
  const costs = await computeOrNotFound(actor, () => getCosts(actor, revisionId, readQuantity(quantity)))
  return (
    <>
      <FabricationLinks projectId={projectId} revisionId={revisionId} />
      {costs.fabricators.length === 0 ? (
        <p className="empty">
          This revision is not shared with a fabricator yet: cost is computed from a fabricator’s panels.{' '}
          <Link href={paths.revision(projectId, revisionId)}>Share it</Link>
        </p>
      ) : (
        <>
          <p className="small">
            {costs.quantity === null
              ? 'The brief states no quantity, so the cost is for a very long run in which set-up is negligible.'
              : `Cost for an order of ${asCount(costs.quantity)} good parts${costs.isStatedQuantity ? ', as many as the brief states for a year' : ''}.`}{' '}
            An index compares constructions; it is not a price.
          </p>
          <QuantityForm key={costs.quantity} address={paths.costs(projectId, revisionId)} quantity={costs.quantity} />
        </>
      )}
      {costs.fabricators.map((view) => (
        <PageSection key={view.company.id} title={`Cost at ${view.company.name}`}>
          <EstimateMissing projectId={projectId} revisionId={revisionId} view={view} />
          <FabricatorCost view={view} costs={costs} />
        </PageSection>
      ))}
    </>
  )
}

function readQuantity(text: string | string[] | undefined): number | null {
  if (typeof text !== 'string' || !/^[1-9]\d{0,8}$/.test(text)) return null
  return Number(text)
}

function FabricatorCost({ view, costs }: { view: FabricatorCostView; costs: CostsView }) {
  const { estimate, company, ratesVersion, overQuantity, constructions } = view
  if (!estimate.ok) return null
  const { cost, traits } = estimate
  if (cost === null) return <p className="empty">No panel format of {company.name} holds the part.</p>
  return (
    <div className="stack">
      {cost.usesIllustrativeRates && (
        <Notice tone="caution">
          <p>
            <strong>Includes illustrative rates.</strong>{' '}
            {ratesVersion === null
              ? `${company.name} states no process rates.`
              : `${company.name} replaces some lines of the table only.`}{' '}
            They show which step makes the difference: common practice, no published source.{' '}
            <Link href={paths.companyRates(company.id)}>Process rates</Link>
          </p>
        </Notice>
      )}
      <dl className="facts">
        <div>
          <dt>Cost index per good part</dt>
          <dd>{digitsAsComputed(cost.indexPerGoodPart, 'costIndex')}</dd>
        </div>
        <div>
          <dt>Parts per panel, {cost.panel.formatName}</dt>
          <dd>{cost.panel.partsPerPanel}</dd>
        </div>
        <div>
          <dt>Yield</dt>
          <dd>{asComputed(100 * cost.yieldFraction, 'sharePct')}</dd>
        </div>
        {cost.panelCount !== null && (
          <div>
            <dt>Panels started</dt>
            <dd>{cost.panelCount}</dd>
          </div>
        )}
      </dl>
      <p className="small">
        {DEMAND_WORDS[traits.registration]} registration: {traits.registrationBecause}
      </p>
      {traits.notCounted.length > 0 && (
        <p className="small">Not in the index, as not stated: {traits.notCounted.join(', ')}.</p>
      )}
      <h3>Constructions side by side</h3>
      <ComparedConstructions constructions={constructions} />
      <p className="small muted">
        Ready-made constructions are taken with this part’s outline, openings, stiffeners and finish.{' '}
        {costs.alternativeRule} Whether one suits the bends and the circuit is for the rest of the review to say.
      </p>
      <h3>Cost by step</h3>
      <CostCharts name={company.name} cost={cost} overQuantity={overQuantity} />
      <details>
        <summary>Steps and the rules that select them</summary>
        <SelectedSteps cost={cost} />
      </details>
      <details>
        <summary>Yield, step by step</summary>
        <YieldChain cost={cost} />
      </details>
    </div>
  )
}
