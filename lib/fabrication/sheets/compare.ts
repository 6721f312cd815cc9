import isSame from 'fast-deep-equal'

/** How the rows of two versions of a list differ; a row is known by its key, and indices are those of the lists. */
export interface RowChanges {
  readonly added: readonly number[]
  /** Index before, index after. */
  readonly changed: readonly (readonly [number, number])[]
  readonly removed: readonly number[]
  readonly unchanged: number
}

/** @param keyOf  what a row is about, as against what it says; rows of one list with the same key pair off in order */
export function compareRows<R>(before: readonly R[], after: readonly R[], keyOf: (row: R) => string): RowChanges {
  const waiting = new Map<string, number[]>()
  before.forEach((row, index) => {
    const key = keyOf(row)
    waiting.set(key, [...(waiting.get(key) ?? []), index])
  })
  const added: number[] = []
  const changed: [number, number][] = []
  let unchanged = 0
  after.forEach((row, index) => {
    const [partner, ...rest] = waiting.get(keyOf(row)) ?? []
    if (partner === undefined) {
      added.push(index)
      return
    }
    waiting.set(keyOf(row), rest)
    if (isSame(before[partner], row)) unchanged += 1
    else changed.push([partner, index])
  })
  return { added, changed, removed: [...waiting.values()].flat().sort((a, b) => a - b), unchanged }
}

/** `3 rows added, 1 changed`; null where nothing differs. */
export function describeRowChanges({ added, changed, removed }: RowChanges): string | null {
  const parts = [
    [added.length, 'added'],
    [changed.length, 'changed'],
    [removed.length, 'removed'],
  ].flatMap(([count, what]) => (count === 0 ? [] : [`${count} ${what}`]))
  if (parts.length === 0) return null
  return `${added.length + changed.length + removed.length === 1 ? 'row' : 'rows'}: ${parts.join(', ')}`
}
