import Link from 'next/link'
import { PlanOverview } from '@/app/_components/engineering'
import { evaluateAgain, shareRevision, unshareRevision } from '@/app/_components/review/actions'
import { AnswerMark } from '@/app/_components/review/answer-mark'
import { listTextsOf } from '@/app/_components/review/catalogue-texts'
import { ResultsOverview } from '@/app/_components/review/results-overview'
import { SharingPanel } from '@/app/_components/review/sharing-panel'
import { countVerdicts, VerdictCounts } from '@/app/_components/review/verdict-counts'
import { ActionButton } from '@/app/_components/ui/action-button'
import { LinkButton } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { StaleNotice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import { listFabricators, type RevisionView } from '@/lib/data'
import { BASIS_WORDS } from '@/lib/engine/results'
import { loadRevision, type RevisionParams } from './load-revision'

export default async function ResultsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const record = revision.evaluationRecord
  const fabricators = revision.may.share ? await listFabricators(actor, projectId) : []
  return (
    <>
      {record.staleBecause.length > 0 && (
        <StaleNotice
          action={
            revision.may.edit ? (
              <ActionButton action={evaluateAgain} input={{ revisionId }} pendingLabel="Evaluating…">
                Re-evaluate
              </ActionButton>
            ) : undefined
          }
        >
          These results are out of date: {record.staleBecause.join('; ')}.
        </StaleNotice>
      )}
      <PageSection
        title="Results"
        actions={
          <>
            <LinkButton href={paths.results(revisionId)} weight="quiet" download>
              Results as JSON
            </LinkButton>
            <LinkButton href={paths.design(revisionId)} weight="quiet" download>
              Design as JSON
            </LinkButton>
          </>
        }
      >
        <p className="muted small">
          Recorded <Timestamp at={record.recordedAt} /> UTC with engine {record.engineVersion}.
        </p>
        <p className="above">
          <VerdictCounts counts={countVerdicts(revision.items)} />
        </p>
        <NeedsAttention revision={revision} />
        <Cautions />
      </PageSection>
      <ResultsOverview evaluation={revision.evaluation} projectId={projectId} revisionId={revisionId} />
      <PlanOverview design={revision.design} />
      <PageSection title="About this revision">
        <dl className="terms">
          <dt>started by</dt>
          <dd>
            {revision.createdBy.name}, <Timestamp at={revision.createdAt} dateOnly />
          </dd>
          {revision.basedOn !== null && (
            <>
              <dt>based on</dt>
              <dd>
                <Link href={paths.revision(projectId, revision.basedOn.id)}>revision {revision.basedOn.label}</Link>
                {/* A fabricator may not see the earlier one. */}
                {revision.role !== 'fabricator' && (
                  <>
                    {', '}
                    <Link
                      href={paths.compare(projectId, {
                        from: `revision:${revision.basedOn.id}`,
                        to: `revision:${revisionId}`,
                      })}
                    >
                      what differs
                    </Link>
                  </>
                )}
              </dd>
            </>
          )}
          <dt>edited by</dt>
          <dd>{revision.editors.map((editor) => editor.name).join(', ') || 'nobody yet'}</dd>
          <dt>seen by</dt>
          <dd>
            <SharingPanel
              revisionId={revisionId}
              sharedWith={revision.sharedWith}
              fabricators={fabricators}
              mayShare={revision.may.share}
              shareAction={shareRevision}
              unshareAction={unshareRevision}
            />
          </dd>
        </dl>
      </PageSection>
    </>
  )
}

const COLUMNS = {
  verdict: { head: 'Verdict', className: 'nowrap' },
  item: { head: 'Item', isRowHead: true, className: 'font-normal' },
  found: { head: 'What was found' },
} satisfies Columns

/** The items that a reader must see first, worst first, each with its sentence. */
function NeedsAttention({ revision }: { revision: RevisionView }) {
  const texts = listTextsOf(revision.template.content)
  const shown = (['fails', 'cannot-tell', 'thin-margin', 'not-computed'] as const).flatMap((verdict) =>
    revision.items.filter((item) => item.result.verdict === verdict && item.follows.length === 0),
  )
  if (shown.length === 0)
    return (
      <p className="above">
        No item fails, has a thin margin, lacks an input, or is beyond the reach of the calculation.
      </p>
    )
  return (
    <DataTable label="Results" columns={COLUMNS}>
      {shown.map((item) => (
        <DataRow
          key={item.itemId}
          columns={COLUMNS}
          cells={{
            verdict: (
              <>
                {item.state === 'waived' ? (
                  <AnswerMark state="waived" />
                ) : (
                  <VerdictMark verdict={item.result.verdict} />
                )}
                <span className="small muted"> {BASIS_WORDS[item.result.basis]}</span>
              </>
            ),
            item: (
              <Link href={paths.item(revision.project.id, revision.id, item.itemId)}>
                {texts[item.itemId]?.question ?? item.itemId}
              </Link>
            ),
            found: item.result.headline,
          }}
        />
      ))}
    </DataTable>
  )
}
