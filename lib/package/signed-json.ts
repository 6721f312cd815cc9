import type { z } from 'zod'
import type { Issue, Result } from '@/lib/engine'
import { canonicalJson } from '@/lib/review'
import { signBytes } from './signing'

/** What is signed of a document that bears its own signature: the canonical form (RFC 8785) of all other fields. */
export const toSignedBytes = (unsigned: object): Uint8Array => new TextEncoder().encode(canonicalJson(unsigned))

/** @param signingKeyPem  PKCS #8 PEM; @returns Base64 */
export const signJson = (unsigned: object, signingKeyPem: string): string =>
  signBytes(toSignedBytes(unsigned), signingKeyPem).trim()

/**
 * Reads the text of such a document by its schema; whether the signature holds is the caller's to ask.
 *
 * @param name  of the kind of document, as messages begin: `the status list`
 */
export function readSignedJson<T>(text: string, schema: z.ZodType<T>, name: string): Result<T> {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return refuseSigned('not-json', `${name} is not JSON`)
  }
  const parsed = schema.safeParse(value)
  if (parsed.success) return { ok: true, value: parsed.data }
  const [first] = parsed.error.issues
  return refuseSigned('malformed', `${name}, ${first?.path.join('.') || 'as a whole'}: ${first?.message ?? ''}`)
}

export const refuseSigned = (code: string, message: string): { readonly ok: false; readonly issues: Issue[] } => ({
  ok: false,
  issues: [{ code, path: [], message }],
})
