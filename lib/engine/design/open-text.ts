/** What people type to be asked later, in lower case without points, dashes and spaces. "None" is an answer. Our choice. */
const PLACEHOLDERS: ReadonlySet<string> = new Set([
  'tbd',
  'tba',
  'tbc',
  'tobedefined',
  'tobedetermined',
  'tobeconfirmed',
  'todo',
  'na',
  'n/a',
  'unknown',
  'pending',
  'xxx',
  'asusual',
  'usual',
  'theusual',
  'aslasttime',
  'asalways',
  'asbefore',
  'standard',
  'default',
  'normal',
  'typical',
  'asneeded',
  'asrequired',
  'ditto',
])

/** Null, a text without a letter or a digit, and a placeholder: a dash is no answer, nor is "tbd" or "as usual", which says nothing to whoever has not made it before. */
export function isOpen(value: unknown): boolean {
  if (value === null || value === undefined) return true
  if (typeof value !== 'string') return false
  return !/[\p{L}\p{N}]/u.test(value) || PLACEHOLDERS.has(value.toLowerCase().replaceAll(/[\s.\-–—?!()[\]]/gu, ''))
}
