import Link from 'next/link'
import { FabricationLinks } from '@/app/_components/fabrication/fabrication-links'
import { FitSummary } from '@/app/_components/fabrication/fit-summary'
import { FitTable } from '@/app/_components/fabrication/fit-table'
import { FitUnknown } from '@/app/_components/fabrication/fit-unknown'
import { ShelfFit } from '@/app/_components/fabrication/shelf-fit'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type FabricationFitView, getFabricationFit } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

/** What fabricators can build and hold, against the design; to a fabricator only its own company. */
export default async function FabricationPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const fit = await computeOrNotFound(actor, () => getFabricationFit(actor, revisionId))
  const { fabricators, parameters } = fit
  const withMatrix = fabricators.filter(({ matrix }) => matrix !== null)
  const compared = fabricators.filter(({ sharing }) => sharing.matrix !== 'not-shared')
  const onlyChecked = compared.filter(({ sharing }) => sharing.matrix === 'checked')
  return (
    <>
      <FabricationLinks projectId={projectId} revisionId={revisionId} />
      {fabricators.length === 0 ? (
        <p className="empty">
          This revision is not shared with a fabricator yet, so there is no capability to compare with.{' '}
          <Link href={paths.revision(projectId, revisionId)}>Share it</Link>
        </p>
      ) : (
        <>
          <FitSummary fabricators={fabricators} />
          <OrderWarnings fit={fit} />
          <PageSection title={fit.isFabricator ? 'Values against your matrix' : 'Values side by side'}>
            {withMatrix.length === 0 ? (
              <p className="empty">
                {fit.isFabricator
                  ? 'You have stated no capability matrix yet.'
                  : 'No fabricator of this revision has stated a capability matrix, or lets this project have it.'}
              </p>
            ) : (
              <FitTable
                fabricators={compared}
                parameters={parameters}
                place={revision.may.comment ? { projectId, revisionId } : null}
              />
            )}
            {onlyChecked.length > 0 && (
              <p className="small">
                Checked against, but not shown by {onlyChecked.map(({ company }) => company.name).join(', ')}: where
                each value falls, without the limits.
              </p>
            )}
            <FitUnknown parameters={parameters} />
            <p className="small muted">
              Of the rows of a matrix whose conditions hold, the one with the most conditions decides; of several, the
              strictest. A matrix states what a fabricator expects to build; only the quotation is binding.
            </p>
          </PageSection>
          {fabricators.map(({ company, shelf, sharing }) => (
            <PageSection
              key={company.id}
              title={fit.isFabricator ? 'Materials and your shelf' : `Materials and the shelf of ${company.name}`}
            >
              {shelf === null ? (
                <p className="empty">
                  {sharing.shelf === 'not-shared'
                    ? `${company.name} does not show its shelf here.`
                    : `${fit.isFabricator ? 'You have' : `${company.name} has`} stated nothing about the shelf yet.`}
                </p>
              ) : (
                <>
                  <p className="small">
                    {fit.needDate === null ? 'The brief states no need date.' : `Needed on ${fit.needDate}.`}{' '}
                    {shelf.buildTimeDays === null
                      ? 'No build time is stated, so there are no order dates.'
                      : `Build time ${shelf.buildTimeDays} days. Latest order date: need date minus build time and lead time, in calendar days. Today is ${fit.today}.`}
                  </p>
                  <ShelfFit name={company.name} shelf={shelf} />
                </>
              )}
            </PageSection>
          ))}
        </>
      )}
    </>
  )
}

/** What must be ordered now, or is too late already, before anything else. */
function OrderWarnings({ fit }: { fit: FabricationFitView }) {
  const lines = fit.fabricators.flatMap(({ company, shelf }) =>
    (shelf?.materials ?? []).flatMap(({ name, order }) =>
      order?.kind === 'order-now' || order?.kind === 'too-late'
        ? [{ key: `${company.id} ${name}`, company: company.name, name, order }]
        : [],
    ),
  )
  // A material that lies in several places is ordered once.
  const orders = lines.filter(({ key }, at) => lines.findIndex((other) => other.key === key) === at)
  if (orders.length === 0) return null
  return (
    <Notice tone="caution">
      <ul>
        {orders.map(({ key, company, name, order }) => (
          <li key={key}>
            <strong>{order.kind === 'too-late' ? `Too late by ${-order.slackDays} days` : 'Order now'}</strong>
            {fit.isFabricator ? '' : ` at ${company}`}: {name}, latest {order.latestOrderDate}
          </li>
        ))}
      </ul>
    </Notice>
  )
}
