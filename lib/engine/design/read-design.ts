import type { Issue, Result } from '../results'
import { findIssuesAcross } from './cross-checks'
import { DESIGN_FORMAT, DESIGN_FORMAT_VERSION, type Design, designSchema } from './design'
import { liftDesign } from './lift'

/** Largest design document that is read at all, in characters: far above any real construction. */
export const MAX_DESIGN_CHARACTERS = 2_000_000

/**
 * Turns an unknown value into a design: documents of older formats are lifted, then shape, then references between its parts.
 *
 * @returns every issue found, each with its path; never throws on content
 */
export function parseDesign(input: unknown): Result<Design> {
  const newer = findNewerFormat(input)
  if (newer !== null) return { ok: false, issues: [newer] }
  const parsed = designSchema.safeParse(liftDesign(input))
  if (!parsed.success) {
    return {
      ok: false,
      issues: parsed.error.issues.map((issue) => ({
        code: issue.code.replaceAll('_', '-'),
        path: issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key)),
        message: issue.message,
      })),
    }
  }
  const issues = findIssuesAcross(parsed.data)
  return issues.length === 0 ? { ok: true, value: parsed.data } : { ok: false, issues }
}

/** A document of a later program cannot be read without losing what it says. */
function findNewerFormat(input: unknown): Issue | null {
  if (typeof input !== 'object' || input === null) return null
  const { format, formatVersion } = input as { readonly format?: unknown; readonly formatVersion?: unknown }
  if (format !== DESIGN_FORMAT || typeof formatVersion !== 'number' || formatVersion <= DESIGN_FORMAT_VERSION)
    return null
  return {
    code: 'newer-format',
    path: ['formatVersion'],
    message: `is ${formatVersion}; this program reads designs up to format ${DESIGN_FORMAT_VERSION}`,
  }
}

/** Reads the text of a design file. Says plainly when it is not JSON, too large, or a ZIP in disguise. */
export function parseDesignText(text: string): Result<Design> {
  const refuse = (code: string, message: string): Result<Design> => ({
    ok: false,
    issues: [{ code, path: [], message } satisfies Issue],
  })
  if (text.length > MAX_DESIGN_CHARACTERS) {
    return refuse(
      'too-large',
      `the file has ${text.length} characters; a design document has at most ${MAX_DESIGN_CHARACTERS}`,
    )
  }
  // The local file header of every ZIP archive starts with "PK" and two control characters.
  if (text.startsWith('PK') && text.charCodeAt(2) < 0x09 && text.charCodeAt(3) < 0x09) {
    return refuse('not-json', 'the file is a ZIP archive, not a JSON design document')
  }
  let value: unknown
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch (error) {
    return refuse('not-json', `the file is not JSON: ${error instanceof Error ? error.message : String(error)}`)
  }
  return parseDesign(value)
}
