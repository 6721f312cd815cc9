import { updateTemplate } from '@/app/_components/review/actions'
import { ProfileLine } from '@/app/_components/review/template-notice'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { ActionButton } from '@/app/_components/ui/action-button'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getTemplateUpdate } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { loadRevision, type RevisionParams } from '../load-revision'

const COLUMNS = {
  item: { head: 'Item', isRowHead: true, className: 'font-normal' },
  now: { head: 'Now' },
  afterwards: { head: 'Then' },
} satisfies Columns

/** What bringing the review up to the newest version of the workspace's catalogue would do, shown before it is done. */
export default async function CatalogueUpdatePage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const update = await computeOrNotFound(actor, () => getTemplateUpdate(actor, revisionId))
  if (update === null) {
    return (
      <PageSection title="Version of the catalogue">
        <p>
          This review uses{' '}
          {revision.template.version === 0
            ? 'the catalogue as delivered, which the workspace has not changed'
            : `version ${revision.template.version} of the workspace’s catalogue, which is the newest`}
          .
        </p>
        <ProfileLine revision={revision} />
      </PageSection>
    )
  }
  const { fromVersion, toVersion, toProfiles, changes, verdictMoves, reopened, voidedSignatures } = update
  const title =
    fromVersion === toVersion
      ? 'Profiles of the project'
      : `Catalogue: ${fromVersion === 0 ? 'as delivered' : `version ${fromVersion}`} to version ${toVersion}`
  return (
    <PageSection title={title}>
      <div className="stack">
        <p className="muted">
          Nothing has changed yet. A review keeps its version and its profiles until somebody updates it.
        </p>
        <h3>What differs</h3>
        <ul className="changes">
          {changes.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
          {changes.length === 0 && <li>only notes beside limits; nothing that a review uses</li>}
        </ul>
        <h3>Effect on this review</h3>
        {verdictMoves.length === 0 ? (
          <p>No verdict changes.</p>
        ) : (
          <DataTable label="Verdicts that change" columns={COLUMNS}>
            {verdictMoves.map(({ itemId, question, before, after }) => (
              <DataRow
                key={itemId}
                columns={COLUMNS}
                cells={{
                  item: question,
                  now: before.replaceAll('-', ' '),
                  afterwards: after.replaceAll('-', ' '),
                }}
              />
            ))}
          </DataTable>
        )}
        {reopened.length > 0 && (
          <div>
            <p>Reworded, so these must be answered again:</p>
            <ul className="changes">
              {reopened.map((question) => (
                <li key={question}>{question}</li>
              ))}
            </ul>
          </div>
        )}
        {voidedSignatures > 0 && (
          <Notice tone="caution">
            <p>
              {countOf(voidedSignatures, 'signature')} would be voided: the catalogue and its profiles are part of what
              was signed.
            </p>
          </Notice>
        )}
        {update.mayUpdate ? (
          <div className="row">
            <ActionButton
              action={updateTemplate}
              input={{
                revisionId,
                seenVersion: revision.version,
                toVersion,
                toProfileIds: toProfiles.map(({ id }) => id),
              }}
              weight="strong"
              pendingLabel="Evaluating…"
            >
              {fromVersion === toVersion
                ? 'Update this review to these profiles'
                : `Update this review to version ${toVersion}`}
            </ActionButton>
            <LinkButton href={paths.revision(projectId, revisionId, 'checklist')} weight="quiet">
              Cancel
            </LinkButton>
          </div>
        ) : (
          <p className="muted">Members and lead engineers can update a review while it can be edited.</p>
        )}
      </div>
    </PageSection>
  )
}
