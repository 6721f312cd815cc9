import { applyPatch, createPatch, type Operation } from 'rfc6902'
import type { Design } from '../design'

/**
 * The RFC 6902 patch (JSON Patch) from one design document to another.
 *
 * Edits leave most of a document alone, and share what they leave: what is the very same object in both is not looked at.
 * Lists whose entries changed places or mixed go to the library, which finds the entries that came and went.
 */
export function makePatch(before: Design, after: Design): Operation[] {
  return diff(before, after, '')
}

function diff(before: unknown, after: unknown, path: string): Operation[] {
  if (before === after) return []
  if (isRecord(before) && isRecord(after) && hasSameShape(before, after)) {
    return Object.keys(after).flatMap((key) => diff(before[key], after[key], `${path}/${escapeToken(key)}`))
  }
  if (Array.isArray(before) && Array.isArray(after)) return diffLists(before, after, path)
  return diffByLibrary(before, after, path)
}

/**
 * Edits put entries into lists, or take some out, and share the rest: what both begin and end with is not looked at. Where entries only came, or only went,
 * they are what is left. The library compares every entry with every other.
 */
function diffLists(before: readonly unknown[], after: readonly unknown[], path: string): Operation[] {
  const shorter = Math.min(before.length, after.length)
  let first = 0
  while (first < shorter && before[first] === after[first]) first += 1
  let last = 0
  while (last < shorter - first && before.at(-1 - last) === after.at(-1 - last)) last += 1
  const added = after.slice(first, after.length - last)
  const goneCount = before.length - last - first
  if (goneCount === 0) return added.map((value, at) => ({ op: 'add', path: `${path}/${first + at}`, value }))
  if (added.length === 0) return Array.from({ length: goneCount }, () => ({ op: 'remove', path: `${path}/${first}` }))
  return diffByLibrary(before, after, path)
}

function diffByLibrary(before: unknown, after: unknown, path: string): Operation[] {
  // The library writes paths from the root of what it was given.
  return createPatch({ root: before }, { root: after }).map((operation) => ({
    ...operation,
    path: path + operation.path.slice('/root'.length),
  }))
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

/** Objects with the same keys, or lists of the same length. */
function hasSameShape(a: object, b: object): boolean {
  const keys = Object.keys(a)
  return Array.isArray(a) === Array.isArray(b) && keys.length === Object.keys(b).length && keys.every((key) => key in b)
}

/** RFC 6901, section 3. */
function escapeToken(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1')
}

/**
 * A copy of the design with a patch applied.
 *
 * @throws RangeError where the patch does not fit: the design is another than the one it was made for
 */
export function applyDesignPatch(design: Design, patch: readonly Operation[]): Design {
  const copy: Design = JSON.parse(JSON.stringify(design))
  // The library puts values of the patch into the document as they are; a later edit must not reach back into it.
  const operations: Operation[] = JSON.parse(JSON.stringify(patch))
  applyPatch(copy, operations).forEach((error, at) => {
    if (error !== null) {
      throw new RangeError(`operation ${at} at ${operations[at]?.path} does not fit this design: ${error.name}`)
    }
  })
  return copy
}
