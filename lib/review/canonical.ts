import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'

/** What JSON can hold. Interfaces of ours are plain data and pass as such. */
export type JsonValue =
  | string
  | number
  | boolean
  | null
  | readonly JsonValue[]
  | { readonly [key: string]: JsonValue | undefined }

/** Half of a surrogate pair standing alone: JSON text that holds one has no UTF-8 form. */
const LONE_SURROGATE = /\p{Surrogate}/u

/**
 * The one text of a JSON value: keys sorted by UTF-16 code units, no white space, numbers as ECMAScript writes them.
 *
 * @param value  JSON data; a key whose value is undefined is left out
 * @throws TypeError for what JSON cannot hold: undefined, functions, NaN, infinities, lone surrogates
 * Source  RFC 8785, JSON Canonicalization Scheme (2020)
 * @example canonicalJson({ b: 1e21, a: [true] }) gives '{"a":[true],"b":1e+21}'
 */
export function canonicalJson(value: unknown): string {
  let text: string | undefined
  try {
    text = canonicalize(value)
  } catch (error) {
    throw new TypeError(`no canonical JSON: ${error instanceof Error ? error.message : String(error)}`)
  }
  if (text === undefined) throw new TypeError(`no canonical JSON for ${typeof value}`)
  // JSON.stringify escapes a lone surrogate, so both the raw and the escaped form are looked for.
  if (LONE_SURROGATE.test(text) || /(?<!\\)(?:\\\\)*\\ud[89a-f][0-9a-f]{2}/.test(text)) {
    throw new TypeError('no canonical JSON: a string holds half of a surrogate pair')
  }
  return text
}

/** SHA-256 (FIPS 180-4, 2015) of bytes, or of a text's UTF-8 bytes, as 64 lower-case hexadecimal digits. */
export function sha256Hex(data: string | Uint8Array): string {
  // Node.js has its own, many times as fast; a browser has none that answers at once.
  const crypto = globalThis.process?.getBuiltinModule?.('node:crypto')
  if (crypto !== undefined) return crypto.createHash('sha256').update(data).digest('hex')
  return bytesToHex(sha256(typeof data === 'string' ? utf8ToBytes(data) : data))
}

/** SHA-256 of the canonical form: the same for equal data, whatever the order of keys. */
export function hashJson(value: unknown): string {
  return sha256Hex(canonicalJson(value))
}
