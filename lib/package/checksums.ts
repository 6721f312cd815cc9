import { CHECKSUMS_PATH, type PackageFile } from './content'
import { hashBytes } from './file-hash'

/**
 * SHA-256 of each file in the form that `sha256sum -c` reads (GNU coreutils manual, "cksum output modes"): 64 hexadecimal
 * digits, a space, a star for binary, the path. Paths of a package hold nothing that would have to be escaped.
 */
export function makeChecksums(files: readonly PackageFile[]): PackageFile {
  const lines = files
    .map(({ path, bytes }) => ({ path, sum: hashBytes(bytes) }))
    .sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))
    .map(({ path, sum }) => `${sum} *${path}\n`)
  return { path: CHECKSUMS_PATH, bytes: new TextEncoder().encode(lines.join('')) }
}

/** Sums by path; null for text of any other form. */
export function parseChecksums(text: string): ReadonlyMap<string, string> | null {
  const sums = new Map<string, string>()
  for (const line of text.replace(/\n$/, '').split('\n')) {
    const match = /^([0-9a-f]{64}) \*(\S+)$/.exec(line)
    if (match === null || sums.has(match[2] ?? '')) return null
    sums.set(match[2] ?? '', match[1] ?? '')
  }
  return sums
}
