import { z } from 'zod'

/** What was stored is damaged, or of a later version of the program: it is not read with a loss. */
export class StoredDocumentError extends Error {
  override name = 'StoredDocumentError'
}

/** @throws StoredDocumentError where the text is not JSON */
export function parseStoredJson(what: string, json: string): unknown {
  try {
    return JSON.parse(json)
  } catch (error) {
    throw new StoredDocumentError(`${what} is not JSON: ${error instanceof Error ? error.message : String(error)}`)
  }
}

/** Rules that a value breaks and its shape does not: a document from before a rule was tightened stays readable. */
const RULES_ON_VALUES: readonly string[] = ['too_big', 'too_small', 'invalid_format', 'not_multiple_of', 'custom']

/**
 * Checks the shape of what was stored against its schema, and returns it as it is: ranges were checked when it was written, and
 * may have been narrowed since.
 *
 * @param what  names the document in the error: `a stored design`
 * @throws StoredDocumentError with the first places that do not fit
 */
export function requireStoredShape<T>(what: string, schema: z.ZodType<T>, document: unknown): asserts document is T {
  const parsed = schema.safeParse(document)
  if (parsed.success) return
  const wrong = parsed.error.issues.filter(({ code }) => !RULES_ON_VALUES.includes(code))
  if (wrong.length === 0) return
  const places = wrong
    .slice(0, 3)
    .map(({ path, message }) => `${path.map(String).join('.') || 'the whole'}: ${message}`)
  throw new StoredDocumentError(`${what} cannot be read (${places.join('; ')})`)
}

/** A stored column that holds JSON, by its schema. */
export function readStoredJson<T>(what: string, schema: z.ZodType<T>, json: string): T {
  const document = parseStoredJson(what, json)
  requireStoredShape(what, schema, document)
  return document
}

const sentencesSchema = z.array(z.string())

/** A stored list of sentences; where nothing was written there are none. */
export function readStoredSentences(what: string, json: string | null): readonly string[] {
  return json === null ? [] : readStoredJson(what, sentencesSchema, json)
}
