import { ENGINE_VERSION, type Issue } from '@/lib/engine'
import {
  type CatalogueTemplate,
  enteredTemplateSchema,
  findTemplateProblems,
  MAX_CATALOGUE_CHARACTERS,
} from '@/lib/engine/catalogue'
import { hashJson } from './canonical'

const CATALOGUE_FORMAT = 'bendworthy-catalogue'
/** Raised with every change of the file's shape; a file of a later version is refused. */
const CATALOGUE_FORMAT_VERSION = 1

/** A workspace's catalogue as a file: own items, changes of delivered ones, limits and profiles, with their hash. */
export function makeCatalogueFile(content: CatalogueTemplate): string {
  const whole = { ...content, profiles: content.profiles ?? [] }
  const file = {
    format: CATALOGUE_FORMAT,
    formatVersion: CATALOGUE_FORMAT_VERSION,
    engineVersion: ENGINE_VERSION,
    sha256: hashJson(whole),
    content: whole,
  }
  return `${JSON.stringify(file, null, 2)}\n`
}

type ReadCatalogue =
  | { readonly ok: true; readonly content: CatalogueTemplate }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/**
 * Reads such a file. Whatever is wrong is named with its place; nothing is repaired: a catalogue that is read half would ask less than the one that
 * was written.
 */
export function readCatalogueFile(text: string): ReadCatalogue {
  const refuse = (path: Issue['path'], code: string, message: string): ReadCatalogue => ({
    ok: false,
    issues: [{ path, code, message }],
  })
  if (text.length > MAX_CATALOGUE_CHARACTERS) {
    return refuse([], 'too-long', `has more than ${MAX_CATALOGUE_CHARACTERS} characters`)
  }
  let document: unknown
  try {
    document = JSON.parse(text)
  } catch {
    return refuse([], 'not-json', 'is not JSON: the file is damaged, or not a catalogue')
  }
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    return refuse([], 'not-a-catalogue', 'is not a catalogue')
  }
  const { format, formatVersion, sha256, content, engineVersion, ...unknown } = document as Record<string, unknown>
  if (format !== CATALOGUE_FORMAT) return refuse(['format'], 'other-format', `is not "${CATALOGUE_FORMAT}"`)
  if (formatVersion !== CATALOGUE_FORMAT_VERSION) {
    const reason =
      typeof formatVersion === 'number' && formatVersion > CATALOGUE_FORMAT_VERSION
        ? 'is of a later version of the program; this one reads'
        : 'is not a version that this program reads, which is'
    return refuse(['formatVersion'], 'other-version', `${reason} ${CATALOGUE_FORMAT_VERSION}`)
  }
  const [extra] = Object.keys(unknown)
  if (extra !== undefined) return refuse([extra], 'unknown-field', 'is not a field of a catalogue file')
  if (typeof engineVersion !== 'string') return refuse(['engineVersion'], 'missing', 'is missing')
  const read = enteredTemplateSchema.safeParse(content)
  if (!read.success) {
    return {
      ok: false,
      issues: read.error.issues.map(({ path, code, message }) => ({
        path: ['content', ...path.map((step) => (typeof step === 'symbol' ? String(step) : step))],
        code,
        message,
      })),
    }
  }
  if (hashJson(content) !== sha256) {
    return refuse(['sha256'], 'damaged', 'does not fit the content: the file was changed after it was written')
  }
  const problems = findTemplateProblems(read.data)
  if (problems.length > 0) {
    return {
      ok: false,
      issues: problems.map((message) => ({ path: ['content'], code: 'not-possible', message })),
    }
  }
  const { profiles = [], ...others } = read.data
  return { ok: true, content: profiles.length === 0 ? others : { ...others, profiles } }
}
