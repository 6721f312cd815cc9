import { createHash } from 'node:crypto'

/**
 * SHA-256 (FIPS 180-4, 2015) of a file's bytes, hexadecimal. The platform's own code: artwork can be large, and the
 * portable one that the review's rules use takes several times as long.
 */
export function hashBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}
