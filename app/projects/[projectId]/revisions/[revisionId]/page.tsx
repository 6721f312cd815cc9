import Link from 'next/link'
import { PlanOverview } from '@/app/_components/engineering'
import { evaluateAgain, shareRevision, unshareRevision } from '@/app/_components/review/actions'
import { listTextsOf } from '@/app/_components/review/catalogue-texts'
import { Diagnosis } from '@/app/_components/review/diagnosis'
import { ResultsOverview } from '@/app/_components/review/results-overview'
import { SharingPanel } from '@/app/_components/review/sharing-panel'
import { StandingLine } from '@/app/_components/review/standing-line'
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
import { listAskedRoles, makeCatalogue } from '@/lib/engine/catalogue'
import { BASIS_WORDS } from '@/lib/engine/results'
import { countStanding, type DiagnosedItem, diagnose } from '@/lib/review'
import { loadRevision, type RevisionParams } from './load-revision'

export default async function ResultsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const record = revision.evaluationRecord
  const causes = diagnose(listDiagnosed(revision), { hasPlan: revision.design.plan !== null })
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
            {causes.length > 0 && (
              <LinkButton href={paths.revision(projectId, revisionId, 'way-out')} weight="strong">
                Find a way out
              </LinkButton>
            )}
            <LinkButton href={paths.results(revisionId)} weight="quiet" download>
              Results as JSON
            </LinkButton>
            <LinkButton href={paths.design(revisionId)} weight="quiet" download>
              Design as JSON
            </LinkButton>
          </>
        }
      >
        <StandingLine
          standing={countStanding(revision.items)}
          causeCount={causes.length}
          blockerCount={revision.blockers.length}
          projectId={projectId}
          revisionId={revisionId}
        />
        <Diagnosis
          causes={causes}
          place={{
            projectId,
            revisionId,
            mayComment: revision.may.comment,
            mayProposeWaiver: revision.may.proposeWaiver,
            mayEdit: revision.may.edit || revision.may.propose,
          }}
          design={revision.design}
          bends={revision.evaluation.bends}
          zones={revision.evaluation.zones}
        />
        <p className="muted small">
          Recorded <Timestamp at={record.recordedAt} /> UTC with engine {record.engineVersion}.
        </p>
        <Cautions />
      </PageSection>
      <PageSection title="Thin margins and missing inputs">
        <WithoutVerdict revision={revision} />
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

/** What does not fail and still wants somebody's attention, worst first, each with its sentence. */
function WithoutVerdict({ revision }: { revision: RevisionView }) {
  const texts = listTextsOf(revision.template.content)
  const shown = (['cannot-tell', 'thin-margin', 'not-computed'] as const).flatMap((verdict) =>
    revision.items.filter(
      (item) => item.result.verdict === verdict && item.follows.length === 0 && item.state !== 'waived',
    ),
  )
  if (shown.length === 0) return <p className="muted">No item is close to its limit, out of reach or lacks an input.</p>
  return (
    <DataTable label="Thin margins, missing inputs and what cannot be told" columns={COLUMNS}>
      {shown.map((item) => (
        <DataRow
          key={item.itemId}
          columns={COLUMNS}
          cells={{
            verdict: (
              <>
                <VerdictMark verdict={item.result.verdict} />
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

function listDiagnosed(revision: RevisionView): DiagnosedItem[] {
  const definitions = new Map(makeCatalogue(revision.template.content).items.map((item) => [item.id, item]))
  return revision.items.flatMap(({ itemId, result, state }) => {
    const item = definitions.get(itemId)
    return item === undefined
      ? []
      : [
          {
            itemId,
            result,
            state,
            severity: item.severity,
            question: item.question,
            restsOn: item.restsOn,
            askedOf: listAskedRoles(itemId),
          },
        ]
  })
}
