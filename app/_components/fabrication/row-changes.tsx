import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import type { TableChanges } from '@/lib/fabrication'

/** How many rows of each list are spelled out; the counts say how many there are. */
const MOST_SHOWN = 200

/** Rows that differ between two versions of a sheet, or between a sheet and a file. */
export function RowChanges({ changes: { columns, changed, added, removed } }: { changes: TableChanges }) {
  return (
    <>
      <ChangedRows columns={columns} changed={changed} />
      <RowList title="Added" columns={columns} rows={added} />
      <RowList title="Removed" columns={columns} rows={removed} />
    </>
  )
}

function RowList({ title, columns, rows }: { title: string; columns: readonly string[]; rows: TableChanges['added'] }) {
  if (rows.length === 0) return null
  return (
    <details>
      <summary>
        {title}: {rows.length} {rows.length === 1 ? 'row' : 'rows'}
      </summary>
      <RowTable label={title} columns={columns} rows={rows.slice(0, MOST_SHOWN)} />
      <Rest count={rows.length - MOST_SHOWN} />
    </details>
  )
}

const getColumnId = (index: number): string => `column ${index}`

function RowTable({
  label,
  columns,
  rows,
}: {
  label: string
  columns: readonly string[]
  rows: TableChanges['added']
}) {
  const tableColumns: Columns = Object.fromEntries(columns.map((head, index) => [getColumnId(index), { head }]))
  return (
    <DataTable label={label} columns={tableColumns} frameClassName="preview-frame" isStacked={false}>
      {rows.map((row) => (
        <DataRow
          key={JSON.stringify(row)}
          columns={tableColumns}
          cells={Object.fromEntries(columns.map((_, index) => [getColumnId(index), row[index]]))}
        />
      ))}
    </DataTable>
  )
}

function ChangedRows({ columns, changed }: { columns: readonly string[]; changed: TableChanges['changed'] }) {
  if (changed.length === 0) return null
  return (
    <details open={changed.length <= 20}>
      <summary>
        Changed: {changed.length} {changed.length === 1 ? 'row' : 'rows'}
      </summary>
      <ul className="small">
        {changed.slice(0, MOST_SHOWN).map(({ before, after }) => (
          <li key={JSON.stringify(after)}>
            {after[0]}:{' '}
            {columns
              .flatMap((column, index) =>
                before[index] === after[index]
                  ? []
                  : [`${column} ${formatCell(before[index])} to ${formatCell(after[index])}`],
              )
              .join('; ')}
          </li>
        ))}
      </ul>
      <Rest count={changed.length - MOST_SHOWN} />
    </details>
  )
}

const formatCell = (text: string | undefined) => (text === undefined || text === '' ? 'nothing' : text)

function Rest({ count }: { count: number }) {
  return count > 0 ? <p className="small muted">and {count} more</p> : null
}
