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

/** What agrees with whatever is asked, and names nothing. Our choice. */
const EMPTY_ANSWERS: ReadonlySet<string> = new Set([
  'ok',
  'okay',
  'fine',
  'good',
  'yes',
  'any',
  'anything',
  'whatever',
  'various',
  'asagreed',
  'asdiscussed',
  'asspecified',
  'asshown',
  'later',
])

/** A text that sends the reader to another paper and does not say which: "see drawing", "per spec", "to IPC". One that names it has its number. */
const ELSEWHERE =
  /^(?:as |in )?(?:see|per|to|refer to|according to|in accordance with|accordance with)(?: the| our| your)? (?:attached )?(?:drawings?|drg|dwg|prints?|spec|specs|specifications?|standards?|ipc|notes?|files?|gerbers?|artwork|data ?sheets?|above|below|attached|attachment|customer|email|e-mail|order|po)$/u

/** "x", "xx", "aaa": a text of one letter names nothing that somebody else could find. */
const ONE_LETTER = /^(\p{L})\1*$/u

const lettersOf = (text: string): string => text.toLowerCase().replaceAll(/[\s.,;:\-–—?!()[\]"']/gu, '')

/** Null, a text without a letter or a digit, and a placeholder: a dash is no answer, nor is "tbd" or "as usual", which says nothing to whoever has not made it before. */
export function isPlaceholder(value: unknown): boolean {
  if (value === null || value === undefined) return true
  if (typeof value !== 'string') return false
  return !/[\p{L}\p{N}]/u.test(value) || PLACEHOLDERS.has(lettersOf(value))
}

/**
 * Nor do "ok" and "see drawing" answer a question. For what people write in answer to one: a name may be a single letter, and a choice from a list
 * may have any of these words.
 */
export function isOpen(value: unknown): boolean {
  if (isPlaceholder(value) || typeof value !== 'string') return isPlaceholder(value)
  const letters = lettersOf(value)
  if (EMPTY_ANSWERS.has(letters) || ONE_LETTER.test(letters)) return true
  return ELSEWHERE.test(
    value
      .toLowerCase()
      .replaceAll(/[.,;:?!()[\]"']/gu, ' ')
      .replaceAll(/\s+/gu, ' ')
      .trim(),
  )
}
