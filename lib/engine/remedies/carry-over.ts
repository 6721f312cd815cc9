/**
 * What was edited in one document, edited in another that differs from the first elsewhere: entries of lists are the same where their ids are, and where there are none, where
 * their places are. A patch (RFC 6902) says the same and takes ten times as long, since it copies the whole document.
 *
 * @param before  the document that was edited
 * @param after   the same with its edits; what they left alone is shared
 * @param onto    the other document; it is not changed
 * @returns `onto` with the edits; what they leave alone is the very object of `onto`
 */
export function carryOver<T>(before: T, after: T, onto: T): T {
  return carry(before, after, onto) as T
}

function carry(before: unknown, after: unknown, onto: unknown): unknown {
  if (before === after) return onto
  if (!isRecord(before) || !isRecord(after) || !isRecord(onto)) return after
  if (Array.isArray(before) && Array.isArray(after) && Array.isArray(onto)) return carryList(before, after, onto)
  if (Array.isArray(before) || Array.isArray(after) || Array.isArray(onto)) return after
  return carryFields(before, after, onto)
}

function carryFields(before: Fields, after: Fields, onto: Fields): Fields {
  const carried: Record<string, unknown> = {}
  let isSame = true
  for (const key of Object.keys(onto)) if (!(key in before) && !(key in after)) carried[key] = onto[key]
  for (const key of Object.keys(after)) {
    carried[key] = key in before ? carry(before[key], after[key], onto[key]) : after[key]
    isSame &&= carried[key] === onto[key]
  }
  return isSame && Object.keys(onto).length === Object.keys(carried).length ? onto : carried
}

function carryList(
  before: readonly unknown[],
  after: readonly unknown[],
  onto: readonly unknown[],
): readonly unknown[] {
  const find = (list: readonly unknown[], value: unknown, at: number): unknown =>
    isRecord(value) && typeof value.id === 'string'
      ? list.find((each) => isRecord(each) && each.id === value.id)
      : list[at]
  const carried = after.map((value, at) => carry(find(before, value, at), value, find(onto, value, at)))
  return carried.length === onto.length && carried.every((value, at) => value === onto[at]) ? onto : carried
}

type Fields = Readonly<Record<string, unknown>>

const isRecord = (value: unknown): value is Fields => typeof value === 'object' && value !== null
