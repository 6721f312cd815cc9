import { inSentence } from '../units'
import { type FlexTestRow, MAX_RADII_OF_SET } from './row'

export interface FlexTestIssue {
  readonly row: number
  readonly field: keyof FlexTestRow
  readonly code: string
  readonly message: string
}

type FieldIssue = Omit<FlexTestIssue, 'row'>

/** What a set has in common: its specimens may differ in radius, and in what follows from it, alone. */
const COMMON = {
  kind: 'what was tested',
  foil: 'foil',
  foilUm: 'foil thickness',
  motion: 'motion',
  temperatureDegC: 'temperature',
} as const satisfies Partial<Record<keyof FlexTestRow, string>>

/** What a specimen is: it stands once in the list. */
export function flexTestRowKey({ set, specimen }: FlexTestRow): string {
  return JSON.stringify([set.toLowerCase(), specimen.toLowerCase()])
}

/** What is wrong with a row of the right shape. */
export function findFlexTestRowIssues(row: FlexTestRow): FieldIssue[] {
  const issues: FieldIssue[] = []
  if (row.thicknessUm < row.foilUm) {
    const message = `is less than the foil thickness (${inSentence(row.foilUm, 'um')}): state the whole thickness that was bent`
    issues.push({ field: 'thicknessUm', code: 'thinner-than-foil', message })
  }
  if (row.kind === 'bare-foil' && row.strainRangePct !== null) {
    const message = 'stays empty for bare foil: it follows from foil thickness and mandrel'
    issues.push({ field: 'strainRangePct', code: 'follows', message })
  }
  return issues
}

/** What is wrong with rows that are each well. */
export function findFlexTestIssues(rows: readonly FlexTestRow[]): FlexTestIssue[] {
  const firstSpecimen = new Map<string, number>()
  const firstOfSet = new Map<string, number>()
  const firstOfCondition = new Map<string, number>()
  const radii = new Map<string, Set<number>>()
  return rows.flatMap((row, index) => {
    const issues: FlexTestIssue[] = findFlexTestRowIssues(row).map((issue) => ({ row: index, ...issue }))
    const before = notedFirst(firstSpecimen, flexTestRowKey(row), index)
    if (before !== null) {
      const message = `is in the set already: row ${before + 1} is the same specimen`
      issues.push({ row: index, field: 'specimen', code: 'same-specimen', message })
    }
    const first = rows[notedFirst(firstOfSet, row.set.toLowerCase(), index) ?? index] ?? row
    for (const [field, word] of Object.entries(COMMON) as [keyof typeof COMMON, string][]) {
      if (row[field] === first[field]) continue
      const message = `differs from ${first[field] ?? 'empty'} in specimen ${first.specimen}: one set has one ${word}`
      issues.push({ row: index, field, code: 'differs-in-set', message })
    }
    const own = radii.get(row.set.toLowerCase()) ?? new Set()
    radii.set(row.set.toLowerCase(), own.add(row.insideRadiusMm))
    if (own.size > MAX_RADII_OF_SET) {
      const message = `is one radius too many: a set has at most ${MAX_RADII_OF_SET}; begin another set`
      issues.push({ row: index, field: 'insideRadiusMm', code: 'too-many-radii', message })
    }
    const condition = JSON.stringify([row.set.toLowerCase(), row.insideRadiusMm])
    const alike = rows[notedFirst(firstOfCondition, condition, index) ?? index] ?? row
    for (const field of ['thicknessUm', 'strainRangePct'] as const) {
      if (row[field] === alike[field]) continue
      const message = `differs from ${alike[field] ?? 'empty'} in specimen ${alike.specimen} at the same radius: put it in a set of its own`
      issues.push({ row: index, field, code: 'differs-at-radius', message })
    }
    return issues
  })
}

/** Where the key was noted before; null where this is the first time. */
function notedFirst(noted: Map<string, number>, key: string, index: number): number | null {
  const before = noted.get(key)
  if (before === undefined) noted.set(key, index)
  return before ?? null
}
