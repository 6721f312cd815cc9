import type { PictureTable } from '@/lib/drawing'

export function PictureTableView({ table }: { table: PictureTable }) {
  return (
    // Scrolls sideways on narrow pages, so the keyboard must be able to reach it.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region without focusable content needs it.
    <section className="table-frame" tabIndex={0} aria-label={table.caption}>
      <table className="ledger unit-heads">
        <caption className="muted">{table.caption}</caption>
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th key={column.key} scope="col" className={column.numeric ? 'num' : undefined}>
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity but their order.
            <tr key={index}>
              {table.columns.map((column) => (
                <td key={column.key} className={column.numeric ? 'num' : undefined}>
                  {row[column.key] ?? ''}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
