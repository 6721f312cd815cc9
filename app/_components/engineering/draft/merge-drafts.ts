import isSame from 'fast-deep-equal'
/** Two people's changes of one document brought together. */
export interface Merge<T> {
  readonly merged: T
  /** Places that both changed differently: there `mine` stands. */
  readonly clashes: readonly string[]
}

/**
 * Three-way merge of plain documents: what only one side changed since `base` is taken from that side. Lists whose
 * entries have ids (or name a layer or bend) are merged entry by entry; other lists are taken as a whole.
 */
export function mergeDrafts<T>(base: T, mine: T, theirs: T): Merge<T> {
  const clashes: string[] = []
  // The walk returns a value built of the three documents' own parts at the same places, so it has their type.
  return { merged: merge(base, mine, theirs, '', clashes) as T, clashes }
}

function merge(base: unknown, mine: unknown, theirs: unknown, path: string, clashes: string[]): unknown {
  if (isSame(mine, theirs) || isSame(theirs, base)) return mine
  if (isSame(mine, base)) return theirs
  if (isRecord(mine) && isRecord(theirs)) {
    const from = isRecord(base) ? base : {}
    const entries = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])].map(
      (key) =>
        [key, merge(from[key], mine[key], theirs[key], path === '' ? key : `${path} › ${key}`, clashes)] as const,
    )
    return Object.fromEntries(entries.filter(([, value]) => value !== undefined))
  }
  const own = Array.isArray(mine) ? toKeyed(mine) : null
  const other = Array.isArray(theirs) ? toKeyed(theirs) : null
  const from = Array.isArray(base) ? toKeyed(base) : null
  if (own !== null && other !== null && from !== null) return mergeLists(from, own, other, path, clashes)
  clashes.push(path)
  return mine
}

type Keyed = ReadonlyMap<string, unknown>

function mergeLists(base: Keyed, mine: Keyed, theirs: Keyed, path: string, clashes: string[]): unknown[] {
  const isReordered = !isSame(
    [...mine.keys()].filter((key) => base.has(key)),
    [...base.keys()].filter((key) => mine.has(key)),
  )
  const [first, second] = isReordered ? [mine, theirs] : [theirs, mine]
  const order = [...first.keys()]
  // An entry that only the other side has goes behind the entry that it follows there.
  let previous: string | null = null
  for (const key of second.keys()) {
    if (!first.has(key)) order.splice(previous === null ? 0 : order.indexOf(previous) + 1, 0, key)
    previous = key
  }
  const merged: unknown[] = []
  for (const key of order) {
    const [was, own, other] = [base.get(key), mine.get(key), theirs.get(key)]
    if (was !== undefined && (own === undefined || other === undefined)) {
      // One side removed it: that stands, unless the other changed it meanwhile.
      const left = own ?? other
      if (left === undefined || isSame(left, was)) continue
      clashes.push(`${path} › ${key}`)
      merged.push(left)
      continue
    }
    const value =
      own === undefined ? other : other === undefined ? own : merge(was, own, other, `${path} › ${key}`, clashes)
    merged.push(value)
  }
  return merged
}

/** Null where an entry has no key or two share one: such a list has no entries to match. */
function toKeyed(list: readonly unknown[]): Keyed | null {
  const keyed = new Map<string, unknown>()
  for (const entry of list) {
    if (!isRecord(entry)) return null
    const key = entry.id ?? entry.layerId ?? entry.bendId
    if (typeof key !== 'string' || keyed.has(key)) return null
    keyed.set(key, entry)
  }
  return keyed
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
