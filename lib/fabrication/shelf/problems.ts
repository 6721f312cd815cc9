import { shelfRowKey } from '../sheets/row-keys'
import type { ShelfRow } from './row'

export interface ShelfIssue {
  readonly row: number
  readonly field: string
  readonly code: string
  readonly message: string
}

type FieldIssue = Omit<ShelfIssue, 'row'>

/** What is wrong with rows that have the right shape. */
export function findShelfIssues(rows: readonly ShelfRow[]): ShelfIssue[] {
  const firstWith = new Map<string, number>()
  return rows.flatMap((row, index) => {
    const issues = findShelfRowIssues(row).map((issue) => ({ row: index, ...issue }))
    const key = shelfRowKey(row)
    const first = firstWith.get(key)
    if (first === undefined) firstWith.set(key, index)
    else {
      const message = `is on the list already: row ${first + 1} is the same material`
      issues.push({ row: index, field: 'material', code: 'same-material', message })
    }
    return issues
  })
}

export function findShelfRowIssues(row: ShelfRow): FieldIssue[] {
  const issues: FieldIssue[] = []
  const given = [row.foil, row.foilUm, row.foilSides].filter((part) => part !== null).length
  if (given !== 0 && given !== 3) {
    const field = row.foil === null ? 'foil' : row.foilUm === null ? 'foilUm' : 'foilSides'
    issues.push({
      field,
      code: 'clad',
      message: 'is missing: a clad states its foil, the foil thickness and the sides',
    })
  }
  if ((row.adhesive === null) !== (row.adhesiveUm === null)) {
    const field = row.adhesive === null ? 'adhesive' : 'adhesiveUm'
    issues.push({ field, code: 'adhesive', message: 'is missing: an adhesive is stated with its thickness' })
  }
  return issues
}
