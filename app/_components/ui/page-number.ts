/** The number of a page as an address says it, from 1; anything else is the first page. */
export function readPageNumber(value: string | string[] | undefined): number {
  return typeof value === 'string' && /^[1-9]\d{0,5}$/.test(value.trim()) ? Number(value) : 1
}
