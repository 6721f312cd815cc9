import { z } from 'zod'
import { canonicalJson, sha256Hex } from '@/lib/review'
import type { PackageFile } from './content'

/** Lists the parts of what was signed, each by its SHA-256, in the form that `sha256sum --check` reads. */
export const PARTS_PATH = 'signed-parts/SHA256SUMS'

/** Parts that every edition holds: what is built. The others name people and companies, and a fabricator's edition withholds them. */
const SHOWN = ['design', 'artwork'] as const

const nameOf = (part: string) => `${part}.json`

/**
 * The parts of signed content, one line each. The SHA-256 of the whole text stands in the trail's record of the signature:
 * so a reader who holds some parts alone can prove that they are those that were signed, and nothing of the rest.
 */
export function listSignedParts(signedContent: string): string {
  const content: unknown = JSON.parse(signedContent)
  if (typeof content !== 'object' || content === null || Array.isArray(content)) {
    throw new TypeError('signed content is an object')
  }
  return Object.entries(content)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([part, value]) => `${sha256Hex(canonicalJson(value))} *${nameOf(part)}\n`)
    .join('')
}

/** The list, and the parts of it that every edition may hold, in the canonical form that their hashes are of. */
export function makeSignedPartFiles(signedContent: string): PackageFile[] {
  const encode = (text: string) => new TextEncoder().encode(text)
  const content = z.record(z.string(), z.json()).parse(JSON.parse(signedContent))
  return [
    { path: PARTS_PATH, bytes: encode(listSignedParts(signedContent)) },
    ...SHOWN.map((part) => ({ path: `signed-parts/${nameOf(part)}`, bytes: encode(canonicalJson(content[part])) })),
  ]
}

export const SIGNED_DESIGN_PATH = `signed-parts/${nameOf('design')}`
export const SIGNED_ARTWORK_PATH = `signed-parts/${nameOf('artwork')}`
