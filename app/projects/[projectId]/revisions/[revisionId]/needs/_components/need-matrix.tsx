import Link from 'next/link'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { NeedView } from '@/lib/data'
import { NEED_METHOD_WORDS, NEED_STATE_WORDS } from '@/lib/review'
import { NeedActs } from './need-acts'

interface NeedMatrixProps {
  readonly projectId: string
  readonly revisionId: string
  readonly needs: readonly NeedView[]
  readonly items: readonly { readonly itemId: string; readonly question: string }[]
  readonly maxFileBytes: number
}

const COLUMNS = {
  number: { head: 'No.', isNumeric: true },
  need: { head: 'Need', isRowHead: true, minWidthRem: 14 },
  items: { head: 'Items', minWidthRem: 14 },
  method: { head: 'Shown by' },
  planned: { head: 'Planned' },
  result: { head: 'Result', minWidthRem: 12 },
  accepted: { head: 'Accepted' },
  acts: { head: 'Acts', isHeadHidden: true },
} satisfies Columns

export function NeedMatrix({ projectId, revisionId, needs, items, maxFileBytes }: NeedMatrixProps) {
  const question = (itemId: string) => items.find((item) => item.itemId === itemId)?.question ?? itemId
  return (
    <DataTable label="Needs" columns={COLUMNS}>
      {needs.map((need) => (
        <DataRow
          key={need.id}
          id={need.id}
          columns={COLUMNS}
          cells={{
            number: need.number,
            need: need.text,
            items:
              need.itemIds.length === 0 ? (
                'none named'
              ) : (
                <ul className="plain-list">
                  {need.itemIds.map((itemId) => (
                    <li key={itemId}>
                      <Link href={paths.item(projectId, revisionId, itemId)}>{question(itemId)}</Link>
                    </li>
                  ))}
                </ul>
              ),
            method: NEED_METHOD_WORDS[need.method],
            planned: need.plannedOn ?? 'not planned',
            result: <Result need={need} />,
            accepted: <Acceptance need={need} />,
            acts: <NeedActs revisionId={revisionId} need={need} maxFileBytes={maxFileBytes} />,
          }}
        />
      ))}
    </DataTable>
  )
}

function Result({ need }: { need: NeedView }) {
  return (
    <>
      {need.droppedReason !== null
        ? `dropped: ${need.droppedReason}`
        : need.result === ''
          ? NEED_STATE_WORDS[need.state]
          : need.result}
      {need.reportedByName !== null && need.reportedAt !== null && (
        <span className="small muted">
          {' '}
          {need.reportedByName}, <Timestamp at={need.reportedAt} />
        </span>
      )}
      {need.files.length > 0 && (
        <ul className="plain-list">
          {need.files.map(({ id, fileName }) => (
            <li key={id}>
              <a href={paths.attachment(id)} download={fileName}>
                {fileName}
              </a>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

function Acceptance({ need: { acceptedByName, acceptedAt, acceptNote } }: { need: NeedView }) {
  if (acceptedByName === null || acceptedAt === null) return 'not accepted'
  return (
    <>
      {acceptedByName}, <Timestamp at={acceptedAt} />
      {acceptNote !== '' && `: ${acceptNote}`}
    </>
  )
}
