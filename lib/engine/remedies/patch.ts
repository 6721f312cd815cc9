import { applyPatch, createPatch, type Operation } from 'rfc6902'
import type { Design } from '../design'

/**
 * The RFC 6902 patch (JSON Patch) from one design document to another.
 *
 * Edits leave most of a document alone, and share what they leave: what is the very same object in both is not looked at.
 * Lists that became longer or shorter go to the library, which finds the entries that came and went.
 */
export function makePatch(before: Design, after: Design): Operation[] {
  return diff(before, after, '')
}

function diff(before: unknown, after: unknown, path: string): Operation[] {
  if (before === after) return []
  if (isRecord(before) && isRecord(after) && hasSameShape(before, after)) {
    return Object.keys(after).flatMap((key) => diff(before[key], after[key], `${path}/${escapeToken(key)}`))
  }
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
