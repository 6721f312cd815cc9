import 'server-only'

/** One page of a longer list. */
export interface Paged<T> {
  readonly rows: readonly T[]
  /** How many there are on all pages. */
  readonly total: number
}

/** Rows of a list on one page: our choice. */
export const MAX_ROWS_ON_PAGE = 50

/** @param page  from 1; after the last one there are no rows */
export function takePage<T>(rows: readonly T[], page: number): readonly T[] {
  return rows.slice((page - 1) * MAX_ROWS_ON_PAGE, page * MAX_ROWS_ON_PAGE)
}
