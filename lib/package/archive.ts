import { zipSync } from 'fflate'
import type { Issue, Result } from '@/lib/engine'
import { readArchiveEntries } from './archive-reader'
import type { PackageFile } from './content'

/** Largest package that is read, in bytes. */
export const MAX_PACKAGE_BYTES = 1024 * 1024 * 1024

/** Most files that a package may hold. */
export const MAX_PACKAGE_FILES = 10_000

/**
 * Local noon of the first day that a ZIP can state. Times of files say nothing here (the manifest dates the release)
 * and would make equal content differ; the writer takes local clock fields, which are the same in every time zone.
 */
const makeFixedTime = () => new Date(1980, 0, 1, 12, 0, 0)

/** Paths as packages use them: no spaces, no dot folders, no way out of the folder. */
const SAFE_PATH = /^[A-Za-z0-9][A-Za-z0-9._-]*(\/[A-Za-z0-9][A-Za-z0-9._-]*)*$/

export function isSafePath(path: string): boolean {
  return path.length <= 200 && SAFE_PATH.test(path)
}

const byPath = (a: PackageFile, b: PackageFile) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0)

/**
 * Writes files as a ZIP archive: sorted, dated alike, stored without compression. Uncompressed, the bytes depend on no
 * compressor's version, and every one of them is a header that the reader checks or content under a SHA-256.
 *
 * @throws RangeError for a path that is unsafe or used twice: the caller's mistake
 */
export function writeArchive(files: readonly PackageFile[]): Uint8Array {
  const entries: Record<string, [Uint8Array, { level: 0; mtime: Date }]> = {}
  for (const { path, bytes } of [...files].sort(byPath)) {
    if (!isSafePath(path)) throw new RangeError(`"${path}" is not a path that a package may hold`)
    if (Object.hasOwn(entries, path)) throw new RangeError(`"${path}" is in the package twice`)
    entries[path] = [bytes, { level: 0, mtime: makeFixedTime() }]
  }
  return zipSync(entries)
}

/** Reads an archive that `writeArchive` wrote, and refuses anything else with the place of the difference. */
export function readArchive(bytes: Uint8Array): Result<PackageFile[]> {
  const refuse = (code: string, message: string): Result<PackageFile[]> => ({
    ok: false,
    issues: [{ code, path: [], message } satisfies Issue],
  })
  if (bytes.length > MAX_PACKAGE_BYTES) {
    return refuse('too-large', `the file has ${bytes.length} bytes; a package has at most ${MAX_PACKAGE_BYTES}`)
  }
  const read = readArchiveEntries(bytes, MAX_PACKAGE_FILES)
  if (!read.ok) return read
  const issues: Issue[] = []
  const seen = new Set<string>()
  let previous = ''
  for (const { path } of read.value) {
    const at = { path: [path] }
    if (!isSafePath(path)) issues.push({ code: 'unsafe-path', ...at, message: `"${path}" is not a path of a package` })
    else if (seen.has(path)) issues.push({ code: 'duplicate', ...at, message: `${path} is in the package twice` })
    else if (path < previous) issues.push({ code: 'order', ...at, message: `${path} is out of order` })
    seen.add(path)
    previous = path
  }
  return issues.length === 0 ? read : { ok: false, issues }
}
