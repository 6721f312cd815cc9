import 'server-only'
import { deflateRawSync, inflateRawSync } from 'node:zlib'

/** No JSON begins with it. */
const MARK = 'deflate:'

/** Results are 140 kB of JSON that says the same words again and again: packed they are a tenth. Deflate (RFC 1951), as base64. */
export function packText(text: string): string {
  return `${MARK}${deflateRawSync(Buffer.from(text, 'utf8')).toString('base64')}`
}

/** What was stored before is plain, and stays so. */
export function unpackText(stored: string): string {
  if (!stored.startsWith(MARK)) return stored
  return inflateRawSync(Buffer.from(stored.slice(MARK.length), 'base64')).toString('utf8')
}
