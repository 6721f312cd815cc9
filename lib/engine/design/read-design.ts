import type { Issue, Result } from '../results'
import { findIssuesAcross } from './cross-checks'
import { DESIGN_FORMAT, DESIGN_FORMAT_VERSION, type Design, designSchema } from './design'
import { decodeUtf8, findDuplicateKeys, findTinyNumbers } from './json-text'
import { liftDesign } from './lift'

/**
 * Largest design document that is read at all, in characters: far above any real construction, and small enough to be sent
 * to a server in one act of 1 MiB, in which each quotation mark counts twice.
 */
export const MAX_DESIGN_CHARACTERS = 750_000

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
  const tiny = findTinyNumbers(parsed.data)
  if (tiny.length > 0) return { ok: false, issues: tiny }
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

const ZIP: Issue = { code: 'not-json', path: [], message: 'the file is a ZIP archive, not a JSON design document' }

/** The local file header of every ZIP archive starts with "PK" and two control characters. */
const isZip = (start: string) => start.startsWith('PK') && start.charCodeAt(2) < 0x09 && start.charCodeAt(3) < 0x09

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
  if (isZip(text.slice(0, 4))) return refuse(ZIP.code, ZIP.message)
  const json = text.replace(/^\uFEFF/, '')
  let value: unknown
  try {
    value = JSON.parse(json)
  } catch (error) {
    return refuse('not-json', `the file is not JSON: ${error instanceof Error ? error.message : String(error)}`)
  }
  const duplicates = findDuplicateKeys(json)
  if (duplicates.length > 0) return { ok: false, issues: duplicates }
  return parseDesign(value)
}

/** Reads the bytes of a design file, which must be UTF-8. */
export function parseDesignBytes(bytes: Uint8Array): Result<Design> {
  if (isZip(String.fromCharCode(...bytes.subarray(0, 4)))) return { ok: false, issues: [ZIP] }
  const text = decodeUtf8(bytes)
  return typeof text === 'string' ? parseDesignText(text) : { ok: false, issues: [text] }
}
