import { createHash, createPublicKey, type KeyObject, sign, verify } from 'node:crypto'

/**
 * Signature of bytes with an Ed25519 key, as one line of base64.
 *
 * @param signingKeyPem  PKCS #8 PEM
 * Source  RFC 8032, Edwards-Curve Digital Signature Algorithm (2017)
 */
export function signBytes(bytes: Uint8Array, signingKeyPem: string): string {
  return `${sign(null, bytes, signingKeyPem).toString('base64')}\n`
}

/** The signature as it is, 64 bytes: what general tools read from a file. */
export function signBytesRaw(bytes: Uint8Array, signingKeyPem: string): Uint8Array {
  return new Uint8Array(sign(null, bytes, signingKeyPem))
}

export function isRawSignatureOf(bytes: Uint8Array, signature: Uint8Array, key: KeyObject): boolean {
  return signature.length === 64 && verify(null, bytes, key, signature)
}

/** False for a wrong signature and for text that is not exactly the one base64 form of 64 bytes. */
export function isSignatureOf(bytes: Uint8Array, signature: string, key: KeyObject): boolean {
  const raw = Buffer.from(signature, 'base64')
  // Base64 has spare bits and lax readers: only the form that the writer gives is accepted.
  if (raw.length !== 64 || `${raw.toString('base64')}\n` !== signature) return false
  return verify(null, bytes, key, raw)
}

/** An Ed25519 public key from PEM, or null for anything else. */
export function readVerifyingKey(pem: string): KeyObject | null {
  try {
    // A private key would be turned into its public half silently; it has no place where a public one is expected.
    if (!/^-----BEGIN PUBLIC KEY-----/.test(pem.trim())) return null
    const key = createPublicKey(pem)
    return key.asymmetricKeyType === 'ed25519' ? key : null
  } catch {
    return null
  }
}

/** SHA-256 of the key's SPKI DER form, hexadecimal: what people compare over the telephone. */
export function getKeyFingerprint(key: KeyObject): string {
  return createHash('sha256')
    .update(key.export({ type: 'spki', format: 'der' }))
    .digest('hex')
}
