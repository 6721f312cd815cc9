import { matrixRowKey } from '../sheets/row-keys'
import { findChoice, findParameter } from './dictionary'
import type { TradeParameter } from './parameter'
import type { MatrixRow } from './row'

export interface RowIssue {
  /** Index of the row. */
  readonly row: number
  readonly field: string
  readonly code: string
  readonly message: string
}

type FieldIssue = Omit<RowIssue, 'row'>

/** What is wrong with rows that have the right shape: each on its own, and rows that say the same twice. */
export function findMatrixIssues(rows: readonly MatrixRow[]): RowIssue[] {
  const firstWith = new Map<string, number>()
  return rows.flatMap((row, index) => {
    const issues = findRowIssues(row).map((issue) => ({ row: index, ...issue }))
    const key = matrixRowKey(row)
    const first = firstWith.get(key)
    if (first === undefined) firstWith.set(key, index)
    else {
      const message = `says it again: row ${first + 1} is for the same parameter under the same conditions`
      issues.push({ row: index, field: 'parameter', code: 'same-conditions', message })
    }
    return issues
  })
}

/** Issues of one row, whatever the others say. */
export function findRowIssues(row: MatrixRow): FieldIssue[] {
  const parameter = findParameter(row.parameter)
  if (parameter === null) {
    return [{ field: 'parameter', code: 'unknown-parameter', message: `"${row.parameter}" is not in the dictionary` }]
  }
  const issues: FieldIssue[] = []
  for (const field of ['comfortable', 'stretch'] as const) {
    const problem = findLimitProblem(parameter, row[field])
    if (problem !== null) issues.push({ field, code: 'limit', message: problem })
  }
  if (row.comfortable === null && row.stretch === null) {
    issues.push({ field: 'comfortable', code: 'no-limit', message: 'states neither a comfortable nor a stretch limit' })
  }
  if (isStretchStricter(parameter, row)) {
    const than = `than the comfortable limit, ${row.comfortable}`
    const message = `${row.stretch} is stricter ${than}: stretch work goes further than comfortable work`
    issues.push({ field: 'stretch', code: 'stretch-stricter', message })
  }
  if (row.layersFrom !== null && row.layersTo !== null && row.layersFrom > row.layersTo) {
    issues.push({ field: 'layersTo', code: 'range', message: `must not be below ${row.layersFrom}` })
  }
  if (row.foilFromUm !== null && row.foilToUm !== null && row.foilFromUm > row.foilToUm) {
    issues.push({ field: 'foilToUm', code: 'range', message: `must not be below ${row.foilFromUm} um` })
  }
  return issues
}

function findLimitProblem(parameter: TradeParameter, limit: MatrixRow['comfortable']): string | null {
  if (limit === null) return null
  if (parameter.direction !== 'one-of') {
    if (typeof limit !== 'number') return `must be a number in ${parameter.unit}`
    if (parameter.unit !== 'degC' && limit < 0) return 'must not be negative'
    if (parameter.unit === 'count' && !Number.isInteger(limit)) return 'must be a whole number'
    return null
  }
  if (typeof limit === 'number') return 'must name choices'
  const unknown = parameter.isOpen ? undefined : limit.find((choice) => findChoice(parameter, choice) === null)
  if (unknown === undefined) return null
  return `"${unknown}" is none of: ${parameter.choices.map(({ name }) => name).join(', ')}`
}

function isStretchStricter(parameter: TradeParameter, { comfortable, stretch }: MatrixRow): boolean {
  if (typeof comfortable !== 'number' || typeof stretch !== 'number') return false
  return parameter.direction === 'smaller-is-harder' ? stretch > comfortable : stretch < comfortable
}
