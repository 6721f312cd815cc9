import { constants, type KeyObject, verify } from 'node:crypto'
import type * as asn1js from 'asn1js'
import { fail, identifierOf, integerOf, partsOf } from './der'

export const SHA256 = '2.16.840.1.101.3.4.2.1'

/** Hashes that are understood; SHA-1 and older are not, since two contents can be made that share one. */
export const DIGESTS: Readonly<Record<string, string>> = {
  [SHA256]: 'sha256',
  '2.16.840.1.101.3.4.2.2': 'sha384',
  '2.16.840.1.101.3.4.2.3': 'sha512',
}

/** RSASSA-PSS and its mask generation function (RFC 4055, 2.1 and 3.1). */
const RSA_PSS = '1.2.840.113549.1.1.10'
const MGF1 = '1.2.840.113549.1.1.8'

interface TokenSignature {
  /** Of the signed attributes, as the signer's information names it. */
  readonly digest: string
  /** `AlgorithmIdentifier` of the signature. */
  readonly algorithm: asn1js.BaseBlock | undefined
  readonly signed: Uint8Array
  readonly signature: Uint8Array
}

/** Asks a key whether it made the signature. RSA signatures by PKCS #1 version 1.5 or PSS, ECDSA and EdDSA. */
export function isSignedBy({ digest, algorithm, signed, signature }: TokenSignature): (key: KeyObject) => boolean {
  const parts = partsOf(algorithm)
  if (identifierOf(parts[0]) !== RSA_PSS) return (key) => verify(digest, signed, key, signature)
  const { saltLength } = readPss(parts[1], digest)
  const padding = constants.RSA_PKCS1_PSS_PADDING
  return (key) => verify(digest, signed, { key, padding, saltLength }, signature)
}

/**
 * `RSASSA-PSS-params` (RFC 4055, 3.1; RFC 8017, A.2.3). What is left out stands for SHA-1, which is refused. The hash must be the one of the attributes
 * (RFC 4056, 3), and the mask is made by the same one, which is all that OpenSSL is asked to verify here.
 */
function readPss(params: asn1js.BaseBlock | undefined, digest: string): { readonly saltLength: number } {
  const tagged = new Map(partsOf(params).map((part) => [part.idBlock.tagNumber, partsOf(part)[0]] as const))
  const [hash, mask] = [tagged.get(0), tagged.get(1)]
  const isMgf1 = mask !== undefined && identifierOf(partsOf(mask)[0]) === MGF1
  const named = [hash, isMgf1 ? partsOf(mask)[1] : undefined]
  if (named.some((one) => one === undefined || DIGESTS[identifierOf(partsOf(one)[0])] !== digest)) {
    fail('the token is signed by RSA-PSS with hashes that differ or are not understood')
  }
  const trailer = tagged.get(3)
  if (trailer !== undefined && integerOf(trailer) !== 1)
    fail('the token is signed by RSA-PSS with another trailer than the standard has')
  const salt = tagged.get(2)
  return { saltLength: salt === undefined ? 20 : integerOf(salt) }
}
