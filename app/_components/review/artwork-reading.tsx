import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Notice } from '@/app/_components/ui/notices'
import type { ArtworkFacts, ArtworkFileFacts } from '@/lib/artwork'
import type { ArtworkReadingView, ItemView } from '@/lib/data'
import { asCount, asEntered, asFileSize, countOf, inSentence } from '@/lib/engine/units'
import { ArtworkOnPlan, type PlanNames } from './artwork-on-plan'
import { ReadAgainButton, ReadingProgress } from './artwork-reading-acts'
import { ArtworkRoleForm } from './artwork-role-form'
import { describeRole } from './artwork-words'

interface ArtworkReadingProps {
  revisionId: string
  reading: ArtworkReadingView
  /** The item that holds the files against the design; absent where the workspace switched it off. */
  agreement: ItemView | undefined
  names: PlanNames
}

/** What the files say, how far reading them is, and where they contradict the design. */
export function ArtworkReading({ revisionId, reading, agreement, names }: ArtworkReadingProps) {
  const { state, facts, onPlan, mayEdit } = reading
  if (state === 'none') return null
  if (facts === null) return <Unread revisionId={revisionId} reading={reading} />
  return (
    <div className="stack">
      {state !== 'read' && <Unread revisionId={revisionId} reading={reading} />}
      <Agreement agreement={agreement} />
      <FileTable revisionId={revisionId} facts={facts} mayEdit={mayEdit} />
      <ArtworkOnPlan facts={facts} onPlan={onPlan} names={names} />
      <Remarks facts={facts} />
    </div>
  )
}

/** How far reading is, or why there is none; files that were read and not yet laid over the plan are on their way too. */
function Unread({ revisionId, reading }: Pick<ArtworkReadingProps, 'revisionId' | 'reading'>) {
  const { state, progress, failure, facts, mayEdit } = reading
  if (state === 'none') return null
  const words = facts === null ? WHY_UNREAD : WHY_NOT_ON_PLAN
  return (
    <div className="stack">
      {state === 'waiting' || state === 'running' ? (
        <ReadingProgress revisionId={revisionId} progress={progress} mayStop={mayEdit} />
      ) : (
        <Notice tone="caution">
          <p>{words[state]}</p>
          {failure !== null && <p>{failure}</p>}
          {mayEdit && <ReadAgainButton revisionId={revisionId} />}
        </Notice>
      )}
    </div>
  )
}

const WHY_UNREAD: Readonly<Record<'unread' | 'failed' | 'stopped' | 'read', string>> = {
  unread: 'These files have not been read yet. Until then nothing is known of what they say.',
  failed: 'The files could not be read.',
  stopped: 'Reading was stopped. Until the files are read nothing is known of what they say.',
  read: '',
}

const WHY_NOT_ON_PLAN: typeof WHY_UNREAD = {
  unread:
    'The files have not been laid over the plan as it is now. Until then nothing is known of the copper in its zones and bends.',
  failed: 'The files could not be laid over the plan.',
  stopped: 'The files were not laid over the plan: that was stopped.',
  read: '',
}

/** Where artwork and design differ, and what nobody can tell: what the checklist's item says. */
function Agreement({ agreement }: { agreement: ItemView | undefined }) {
  if (agreement === undefined) return null
  const { outcomes } = agreement.result
  const differing = outcomes.flatMap((outcome) =>
    outcome.kind === 'decided' && outcome.verdict === 'fails' ? [outcome.summary] : [],
  )
  const open = outcomes.flatMap((outcome) =>
    outcome.kind === 'cannot-tell' ? [`${outcome.because}: ${outcome.decidedBy}.`] : [],
  )
  return (
    <>
      {differing.length === 0 ? (
        <p>No contradiction was found in what could be compared. There may still be one elsewhere.</p>
      ) : (
        <Notice tone="refused">
          <p>
            <strong>{countOf(differing.length, 'contradiction')} between artwork and design</strong>
          </p>
          <ul>
            {differing.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      {open.length > 0 && (
        <>
          <h3>What cannot be told</h3>
          <ul>
            {[...new Set(open)].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </>
  )
}

const COLUMNS = {
  file: { head: 'File', isRowHead: true },
  role: { head: 'Role' },
  reason: { head: 'Reason', className: 'small' },
  objects: { head: 'Objects', isNumeric: true },
  extent: { head: 'Extent', unit: 'mm', isNumeric: true },
  says: { head: 'What it says', className: 'small' },
  act: { head: 'Set its role', isHeadHidden: true },
} satisfies Columns

function FileTable({ revisionId, facts, mayEdit }: { revisionId: string; facts: ArtworkFacts; mayEdit: boolean }) {
  const { act: _act, ...forReaders } = COLUMNS
  const columns: Columns = mayEdit ? COLUMNS : forReaders
  return (
    <DataTable label="Files of the artwork as they were read" columns={columns}>
      {facts.files.map((file) => (
        <DataRow
          key={file.name}
          columns={columns}
          cells={{
            file: (
              <>
                {file.name} <span className="small muted font-normal">{asFileSize(file.sizeBytes)}</span>
              </>
            ),
            role: describeRole(file),
            reason: file.unreadReason ?? file.role.reason,
            objects: file.objectCount === null ? null : asCount(file.objectCount),
            extent: writeExtent(file),
            says: listSaid(file).join('; '),
            act: isLayer(file) && <ArtworkRoleForm revisionId={revisionId} file={file} />,
          }}
        />
      ))}
    </DataTable>
  )
}

const isLayer = ({ kind }: ArtworkFileFacts): boolean => kind === 'gerber' || kind === 'drill'

function writeExtent({ extentMm, outline }: ArtworkFileFacts): string | null {
  const box = outline?.extentMm ?? extentMm
  return box === null ? null : `${inSentence(box[2] - box[0])} × ${inSentence(box[3] - box[1])}`
}

function listSaid({ outline, narrowestStrokeMm, tools, job, project }: ArtworkFileFacts): string[] {
  return [
    ...(outline === null
      ? []
      : [
          outline.isClosed
            ? `closed, ${countOf(outline.loops.length, 'loop')}, ${inSentence(outline.loops[0]?.areaMm2 ?? 0)} mm² within the first`
            : 'does not close',
        ]),
    ...(narrowestStrokeMm === null ? [] : [`narrowest stroke ${asEntered(narrowestStrokeMm, 'mm')}`]),
    ...(tools ?? []).map(
      ({ diameterMm, hits, slots, routedMoves, plating }) =>
        `${asEntered(diameterMm, 'mm')}: ${[
          countOf(hits, 'hole'),
          ...(slots > 0 ? [countOf(slots, 'slot')] : []),
          ...(routedMoves > 0 ? [countOf(routedMoves, 'routed move')] : []),
        ].join(', ')}, ${plating ?? 'plating not said'}`,
    ),
    ...(job?.thicknessMm == null ? [] : [`thickness ${asEntered(job.thicknessMm, 'mm')}`]),
    ...(job?.copperLayerCount == null ? [] : [countOf(job.copperLayerCount, 'conductor layer')]),
    ...(project === null ? [] : [`project ${project.name}`]),
  ]
}

const ISSUE_COLUMNS = {
  file: { head: 'File', isRowHead: true },
  line: { head: 'Line', isNumeric: true },
  weight: { head: 'Weight' },
  reason: { head: 'Remark' },
} satisfies Columns

function Remarks({ facts }: { facts: ArtworkFacts }) {
  const remarks = facts.files.flatMap(({ name, issues, errorCount, noteCount, questions }) => [
    ...issues.map((issue) => ({ name, line: asCount(issue.line), weight: issue.severity, reason: issue.reason })),
    ...(errorCount + noteCount > issues.length
      ? [
          {
            name,
            line: '',
            weight: '',
            reason: `${asCount(errorCount + noteCount - issues.length)} more are not listed`,
          },
        ]
      : []),
    ...questions.map(({ text, taken }) => ({
      name,
      line: '',
      weight: 'question',
      reason: taken === null ? text : `${text} Taken: ${taken}.`,
    })),
  ])
  const refused = facts.refused.map(({ name, reason }) => ({ name, line: '', weight: 'refused', reason }))
  const rows = [...refused, ...remarks]
  if (rows.length === 0) return null
  return (
    <>
      <h3>Remarks of the readers</h3>
      <DataTable label="Remarks of the readers" columns={ISSUE_COLUMNS}>
        {rows.map(({ name, line, weight, reason }, at) => (
          <DataRow
            // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes while it is shown, and a reason may stand twice
            key={at}
            columns={ISSUE_COLUMNS}
            cells={{ file: name, line, weight, reason }}
          />
        ))}
      </DataTable>
    </>
  )
}
