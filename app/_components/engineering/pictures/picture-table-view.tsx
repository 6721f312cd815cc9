import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import type { PictureTable } from '@/lib/drawing'

/** The numbers behind a picture. */
export function PictureTableView({ table }: { table: PictureTable }) {
  const columns: Columns = Object.fromEntries(
    table.columns.map(({ key, label, numeric }) => [key, { head: label, isNumeric: numeric === true }]),
  )
  return (
    <DataTable label={table.caption} columns={columns} caption={table.caption} isStacked={false}>
      {table.rows.map((row, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their order.
        <DataRow key={index} columns={columns} cells={row} />
      ))}
    </DataTable>
  )
}
