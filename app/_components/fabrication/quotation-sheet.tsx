import { Fragment } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import {
  listQuotationFacts,
  listQuotationTables,
  type QuotationRequest,
  type QuotationTable,
  writeQuotationCell,
} from '@/lib/package'

/** A request for quotation as its files have it. */
export function QuotationSheet({ request }: { request: QuotationRequest }) {
  return (
    <div className="stack">
      <dl className="terms">
        {listQuotationFacts(request).map(([label, text]) => (
          <Fragment key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </Fragment>
        ))}
      </dl>
      {listQuotationTables(request).map((table) => (
        <section key={table.title} className="stack" aria-label={table.title}>
          <h3>{table.title}</h3>
          {table.rows.length > 0 && <Rows table={table} />}
          {table.note !== '' && <p className="small muted">{table.note}</p>}
        </section>
      ))}
    </div>
  )
}

function Rows({ table: { title, columns, rows } }: { table: QuotationTable }) {
  const heads: Columns = Object.fromEntries(
    columns.map(({ key, label, figure }, at) => [
      key,
      { head: label, isNumeric: figure !== undefined, isRowHead: at === 0 },
    ]),
  )
  return (
    <DataTable label={title} columns={heads}>
      {rows.map((row, number) => (
        <DataRow
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of a document that is never edited; two may say the same.
          key={number}
          columns={heads}
          cells={Object.fromEntries(
            columns.map((column, at) => [column.key, writeQuotationCell(column, row[at] ?? null)]),
          )}
        />
      ))}
    </DataTable>
  )
}
