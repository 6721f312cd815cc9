import Link from 'next/link'
import { MAX_ROWS_ON_PAGE } from '@/lib/data'

interface PageLinksProps {
  readonly label: string
  /** From 1 */
  readonly page: number
  readonly total: number
  readonly hrefOf: (page: number) => string
}

/** Links to the page before and after; nothing where one page holds everything. */
export function PageLinks({ label, page, total, hrefOf }: PageLinksProps) {
  const pages = Math.ceil(total / MAX_ROWS_ON_PAGE)
  if (pages <= 1) return null
  return (
    <nav aria-label={label} className="filter-row no-print">
      {page > 1 && <Link href={hrefOf(Math.min(page - 1, pages))}>Previous {MAX_ROWS_ON_PAGE}</Link>}
      <span className="muted">
        Page {page} of {pages}, {total} in all
      </span>
      {page < pages && <Link href={hrefOf(page + 1)}>Next {MAX_ROWS_ON_PAGE}</Link>}
    </nav>
  )
}
