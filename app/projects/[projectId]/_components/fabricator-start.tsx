import Link from 'next/link'
import { MATRIX_SHARING_WORDS, SHEET_SHARING_WORDS } from '@/app/_components/fabrication/sharing-words'
import { STAGE_WORDS } from '@/app/_components/review/words'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { FabricatorStartView, WaitView } from '@/lib/data'
import { HideStart } from './hide-start'

interface FabricatorStartProps {
  readonly projectId: string
  readonly start: FabricatorStartView
  /** What waits for the person in this project. */
  readonly waits: readonly WaitView[]
}

const REVISION_COLUMNS = {
  revision: { head: 'Revision', isRowHead: true },
  stage: { head: 'Stage' },
  review: { head: 'Your review by' },
  freeze: { head: 'Layout freezes' },
  need: { head: 'Parts needed' },
} satisfies Columns

/** After joining: who invites, what is wanted by when, what to state first, and what the team gets to see of it. */
export function FabricatorStart({ projectId, start, waits }: FabricatorStartProps) {
  const { company, askedBy, askedAt, revisions } = start
  return (
    <PageSection title="Getting started" actions={<HideStart projectId={projectId} />}>
      <p>
        {askedBy === null ? `${company.name} takes part in this project.` : `${askedBy.name} invited ${company.name}`}
        {askedBy !== null && (
          <>
            {' '}
            on <Timestamp at={askedAt} dateOnly />.
          </>
        )}
      </p>
      <h3>What is wanted, and by when</h3>
      {revisions.length === 0 ? (
        <p className="empty">No open revision is shared with you yet.</p>
      ) : (
        <DataTable label="What is wanted, and by when" columns={REVISION_COLUMNS}>
          {revisions.map((revision) => (
            <DataRow
              key={revision.id}
              columns={REVISION_COLUMNS}
              cells={{
                revision: <Link href={paths.revision(projectId, revision.id)}>{revision.label}</Link>,
                stage: STAGE_WORDS[revision.stage],
                review: revision.manufacturingReviewOn ?? 'not stated',
                freeze: revision.layoutFreezeOn ?? 'not stated',
                need: revision.neededOn ?? 'not stated',
              }}
            />
          ))}
        </DataTable>
      )}
      {waits.length === 0 ? (
        <p className="small muted">Nothing waits for you in this project at the moment.</p>
      ) : (
        <ul className="plain-list">
          {waits.map((wait) => (
            <li key={`${wait.revisionId} ${wait.target.tab} ${wait.target.id} ${wait.reason}`}>
              <Link href={paths.target(wait.projectId, wait.revisionId, wait.target)}>{wait.nextAct}</Link>{' '}
              <span className="muted">
                revision {wait.revisionLabel}: {wait.reason}
              </span>
            </li>
          ))}
        </ul>
      )}
      <FirstSheets start={start} />
    </PageSection>
  )
}

type Sheet = FabricatorStartView['sheets'][number]

const SHEET_WORDS: Record<Sheet['kind'], { label: string; use: string; href: (companyId: string) => string }> = {
  matrix: {
    label: 'Capability matrix',
    use: 'Each value of the design is checked against it.',
    href: paths.companyMatrix,
  },
  shelf: {
    label: 'Shelf',
    use: 'Materials that you hold, and lead times: latest order dates follow from it.',
    href: paths.companyShelf,
  },
  'panel-formats': {
    label: 'Panel formats',
    use: 'How many parts fit on your panels.',
    href: paths.companyPanels,
  },
  'process-rates': {
    label: 'Process rates',
    use: 'Relative cost; without them an illustrative table is used.',
    href: paths.companyRates,
  },
}

const SHEET_COLUMNS = {
  sheet: { head: 'Sheet', isRowHead: true },
  use: { head: 'Used for' },
  state: { head: 'State' },
  team: { head: 'To the team' },
} satisfies Columns

function FirstSheets({ start: { company, sheets, sharing, may } }: { start: FabricatorStartView }) {
  return (
    <>
      <h3>What to state first</h3>
      <DataTable label="What to state first" columns={SHEET_COLUMNS}>
        {sheets.map((sheet) => (
          <DataRow
            key={sheet.kind}
            columns={SHEET_COLUMNS}
            cells={{
              sheet: <Link href={SHEET_WORDS[sheet.kind].href(company.id)}>{SHEET_WORDS[sheet.kind].label}</Link>,
              use: SHEET_WORDS[sheet.kind].use,
              state: describeState(sheet),
              team: describeShared(sheet, sharing),
            }}
          />
        ))}
      </DataTable>
      <p className="small">
        {may.editSheets
          ? 'Nothing that you state is shown to the team unless your company chooses so.'
          : 'An administrator or sheet writer of your company states these. Nothing is shown to the team unless your company chooses so.'}{' '}
        {may.share && <Link href={paths.company(company.id)}>Choose what the team sees</Link>}
      </p>
    </>
  )
}

function describeState({ state, version, issuedOn }: Sheet): string {
  if (state === 'not-stated') return 'not stated'
  return state === 'empty' ? `empty, version ${version}` : `stated, version ${version} of ${issuedOn}`
}

function describeShared({ kind, state }: Sheet, { matrix, shelf, rates }: FabricatorStartView['sharing']): string {
  const words = kind === 'matrix' ? MATRIX_SHARING_WORDS[matrix] : SHEET_SHARING_WORDS[kind === 'shelf' ? shelf : rates]
  const isShared = (kind === 'matrix' ? matrix : kind === 'shelf' ? shelf : rates) !== 'not-shared'
  return isShared && state === 'not-stated' ? `${words} once stated` : words
}
