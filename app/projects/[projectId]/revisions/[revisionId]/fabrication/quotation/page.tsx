import Link from 'next/link'
import { PlanOverview } from '@/app/_components/engineering/drawing/plan-overview'
import { FabricationLinks } from '@/app/_components/fabrication/fabrication-links'
import { PanelPicture } from '@/app/_components/fabrication/panel-pictures'
import { QuotationSheet } from '@/app/_components/fabrication/quotation-sheet'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getQuotation, type QuotationPageView } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../../load-revision'

const FORMATS = [
  ['pdf', 'PDF'],
  ['xlsx', 'XLSX'],
  ['json', 'JSON'],
] as const

/** What a fabricator is asked for a price of, on one page, and as files; no release. */
export default async function QuotationPage({
  params,
  searchParams,
}: RevisionParams & { searchParams: Promise<{ fabricator?: string | string[] }> }) {
  const [{ projectId, revisionId }, { fabricator }] = await Promise.all([params, searchParams])
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const companyId = typeof fabricator === 'string' && fabricator !== '' ? fabricator : null
  const view = await computeOrNotFound(actor, () => getQuotation(actor, revisionId, companyId))
  return (
    <>
      <FabricationLinks projectId={projectId} revisionId={revisionId} />
      {view.quotation === null ? (
        <p className="empty">
          This revision is not shared with a fabricator yet, so there is nobody to ask for a quotation.{' '}
          <Link href={paths.revision(projectId, revisionId)}>Share it</Link>
        </p>
      ) : (
        <Request projectId={projectId} revisionId={revisionId} view={view} quotation={view.quotation} />
      )}
      {view.quotation !== null && <PlanOverview design={revision.design} />}
    </>
  )
}

interface RequestProps {
  readonly projectId: string
  readonly revisionId: string
  readonly view: QuotationPageView
  readonly quotation: NonNullable<QuotationPageView['quotation']>
}

function Request({ projectId, revisionId, view, quotation }: RequestProps) {
  const { company, request, priced } = quotation
  return (
    <PageSection
      title={view.isFabricator ? 'Request for quotation' : `Request for quotation to ${company.name}`}
      actions={FORMATS.map(([format, label]) => (
        <LinkButton key={format} href={paths.quotationFile(revisionId, company.id, format)} download>
          {label}
        </LinkButton>
      ))}
    >
      {view.companies.length > 1 && (
        <nav aria-label="Fabricator asked" className="choices no-print">
          {view.companies.map(({ id, name }) => (
            <Link
              key={id}
              href={paths.quotation(projectId, revisionId, id)}
              className="choice"
              aria-current={id === company.id ? 'page' : undefined}
            >
              {name}
            </Link>
          ))}
        </nav>
      )}
      <Notice tone="caution">
        <p>{request.statement}</p>
      </Notice>
      {!view.isFabricator && (
        <p className="small muted">
          It holds what {company.name} may read: its own threads alone, nothing of another fabricator, and nothing that
          the team keeps to itself.{' '}
          <Link href={paths.revision(projectId, revisionId, 'drawing')}>Fill in what it would still ask</Link>
        </p>
      )}
      <QuotationSheet request={request} />
      {priced !== null && <PanelPicture part={priced.part} nested={priced.nested} />}
      <Cautions />
    </PageSection>
  )
}
