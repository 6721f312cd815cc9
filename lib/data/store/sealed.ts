import 'server-only'
import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto'
import { getSecrets } from '@/lib/config'

/**
 * What the database must not hold in the clear and the server has to read: sealed with AES-256-GCM (NIST SP 800-38D) under
 * a key of this installation's secret (HKDF, RFC 5869). Anyone who has the database alone cannot open it.
 */
function deriveKey(purpose: string): Buffer {
  return Buffer.from(hkdfSync('sha256', getSecrets().sessionSecret, 'bendworthy', purpose, 32))
}

/** @param bound  what it belongs to: sealed text that is moved to another row does not open there */
export function seal(text: string, purpose: string, bound: string): string {
  const nonce = randomBytes(12)
  const cipher = createCipheriv('aes-256-gcm', deriveKey(purpose), nonce).setAAD(Buffer.from(bound))
  const body = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
  return [nonce, cipher.getAuthTag(), body].map((part) => part.toString('base64url')).join('.')
}

/** Null where it does not open: damaged, moved, or sealed under another secret. */
export function unseal(sealed: string, purpose: string, bound: string): string | null {
  const [nonce, tag, body] = sealed.split('.').map((part) => Buffer.from(part, 'base64url'))
  if (nonce === undefined || tag === undefined || body === undefined) return null
  try {
    const decipher = createDecipheriv('aes-256-gcm', deriveKey(purpose), nonce)
    decipher.setAAD(Buffer.from(bound)).setAuthTag(tag)
    return Buffer.concat([decipher.update(body), decipher.final()]).toString('utf8')
  } catch {
    return null
  }
}
