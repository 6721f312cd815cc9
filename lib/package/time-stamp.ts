import { createHash, randomBytes, X509Certificate } from 'node:crypto'
import * as asn1js from 'asn1js'
import type { Issue, Result } from '@/lib/engine'
import { fail, identifierOf, integerOf, Misread, octetsOf, parse, partsOf } from './der'
import { DIGESTS, isSignedBy, SHA256 } from './token-signature'

/**
 * Trusted time stamps by RFC 3161 (2001): an authority signs the hash of something with the time at which it saw it. The query is made and the answer
 * read here; sending it is the server's.
 */

const SIGNED_DATA = '1.2.840.113549.1.7.2'
const TST_INFO = '1.2.840.113549.1.9.16.1.4'
const CONTENT_TYPE = '1.2.840.113549.1.9.3'
const MESSAGE_DIGEST = '1.2.840.113549.1.9.4'
/** `SigningCertificate` (RFC 2634, 5.4) and its second version (RFC 5035, 3): which certificate signed, itself under the signature. */
const SIGNING_CERTIFICATE = '1.2.840.113549.1.9.16.2.12'
const SIGNING_CERTIFICATE_V2 = '1.2.840.113549.1.9.16.2.47'
/** RFC 3161, 2.3: the certificate of an authority says that it stamps, and nothing else. */
const TIME_STAMPING = '1.3.6.1.5.5.7.3.8'

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest()
const toBuffer = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer

/** Of a query, so that no answer to another one is taken for its own. First bit and first byte away from where DER would see a sign, or a byte too many. */
export const makeNonce = (): Uint8Array =>
  Uint8Array.from(randomBytes(8), (byte, index) => (index === 0 ? (byte & 0x3f) | 0x40 : byte))

/** `TimeStampReq` for the SHA-256 of the bytes, DER. */
export function makeTimeStampQuery(bytes: Uint8Array, nonce: Uint8Array): Uint8Array {
  const algorithm = new asn1js.Sequence({
    value: [new asn1js.ObjectIdentifier({ value: SHA256 }), new asn1js.Null()],
  })
  const imprint = new asn1js.Sequence({
    value: [algorithm, new asn1js.OctetString({ valueHex: toBuffer(sha256(bytes)) })],
  })
  const query = new asn1js.Sequence({
    value: [
      new asn1js.Integer({ value: 1 }),
      imprint,
      new asn1js.Integer({ valueHex: toBuffer(nonce) }),
      new asn1js.Boolean({ value: true }),
    ],
  })
  return new Uint8Array(query.toBER())
}

export interface TimeStamp {
  /** When the authority saw it: ISO 8601 in UTC. */
  readonly at: string
  /** Name in the authority's certificate. */
  readonly authority: string
  /** The certificate leads to one that the caller trusts. */
  readonly isTrusted: boolean
}

/**
 * Reads an authority's answer (`TimeStampResp`, DER) and checks that it stamps these bytes and bears the signature of the certificate in it.
 *
 * @param trustedPem  certificates (PEM) one of which must have issued the authority's, or be it, for `isTrusted`; null trusts none
 * @param nonce  of the query, where the answer has just come: RFC 3161, 2.4.2 has it come back
 */
export function readTimeStamp(
  response: Uint8Array,
  bytes: Uint8Array,
  trustedPem: string | null,
  nonce: Uint8Array | null = null,
): Result<TimeStamp> {
  try {
    return { ok: true, value: read(response, { bytes, nonce }, trustedPem) }
  } catch (error) {
    const message = error instanceof Misread ? error.message : 'it is not an answer of a time-stamp authority'
    return { ok: false, issues: [{ code: 'time-stamp', path: [], message } satisfies Issue] }
  }
}

interface Asked {
  readonly bytes: Uint8Array
  readonly nonce: Uint8Array | null
}

function read(response: Uint8Array, asked: Asked, trustedPem: string | null): TimeStamp {
  const [status, token] = partsOf(parse(response))
  const code = integerOf(partsOf(status)[0])
  if (code !== 0 && code !== 1) fail(`the authority refused (status ${code})`)
  const [type, wrapped] = partsOf(token)
  if (identifierOf(type) !== SIGNED_DATA) fail('the token is not signed data')
  const signedData = partsOf(partsOf(wrapped)[0])
  const [contentType, contentWrapped] = partsOf(signedData[2])
  if (identifierOf(contentType) !== TST_INFO) fail('the token holds no time stamp')
  const content = octetsOf(partsOf(contentWrapped)[0])
  const tagged = signedData.slice(3).filter((part) => part.idBlock.tagClass === 3)
  const certificates = partsOf(tagged.find((part) => part.idBlock.tagNumber === 0)).map(
    (part) => new X509Certificate(Buffer.from(part.valueBeforeDecodeView)),
  )
  const at = readInfo(content, asked)
  const signer = findSigner(partsOf(signedData.at(-1))[0], content, certificates)
  if (at < new Date(signer.validFrom) || at > new Date(signer.validTo))
    fail('the certificate was not valid at that time')
  return {
    at: at.toISOString(),
    authority: signer.subject.replaceAll('\n', ', '),
    isTrusted: trustedPem !== null && leadsTo(signer, certificates, trustedPem),
  }
}

/** `TSTInfo`: the hash must be of these bytes, and the nonce the query's. */
function readInfo(content: Uint8Array, { bytes, nonce }: Asked): Date {
  const info = partsOf(parse(content))
  const [algorithm, imprint] = partsOf(info[2])
  if (identifierOf(partsOf(algorithm)[0]) !== SHA256 || !sha256(bytes).equals(octetsOf(imprint))) {
    fail('the time stamp is of something else')
  }
  if (nonce !== null) {
    const answered = info.slice(5).find((part) => part instanceof asn1js.Integer)
    if (answered === undefined || !Buffer.from(nonce).equals(Buffer.from(answered.valueBlock.valueHexView))) {
      fail('the time stamp answers another query')
    }
  }
  const time = info[4]
  return time instanceof asn1js.GeneralizedTime ? time.toDate() : fail('the time stamp has no time')
}

/** The certificate whose key signed what the token holds (RFC 5652, 5.4: over the attributes as a SET, which name the content by its hash). */
function findSigner(
  signerInfo: asn1js.BaseBlock | undefined,
  content: Uint8Array,
  certificates: readonly X509Certificate[],
): X509Certificate {
  const parts = partsOf(signerInfo)
  const digest =
    DIGESTS[identifierOf(partsOf(parts[2])[0])] ?? fail('the token is signed in a way that is not understood')
  const attributes = parts[3] ?? fail('the token has no attributes')
  const values = new Map(
    partsOf(attributes).map((attribute) => {
      const [name, set] = partsOf(attribute)
      return [identifierOf(name), partsOf(set)[0]] as const
    }),
  )
  if (identifierOf(values.get(CONTENT_TYPE)) !== TST_INFO) fail('the token signs another kind of content')
  if (
    !createHash(digest)
      .update(content)
      .digest()
      .equals(octetsOf(values.get(MESSAGE_DIGEST)))
  ) {
    fail('the token signs other content than it holds')
  }
  const signed = Buffer.from(attributes.valueBeforeDecodeView)
  signed[0] = 0x31
  const isOf = isSignedBy({ digest, algorithm: parts[4], signed, signature: octetsOf(parts[5]) })
  const isNamed = readSigningCertificate(values)
  const isSigner = (candidate: X509Certificate) => {
    try {
      return candidate.keyUsage?.includes(TIME_STAMPING) === true && isNamed(candidate) && isOf(candidate.publicKey)
    } catch {
      return false
    }
  }
  return (
    certificates.find(isSigner) ?? fail('the token does not bear the signature of a certificate in it that may stamp')
  )
}

/** RFC 3161, 2.4.2: the signed attributes name the authority's certificate by its hash, so that no other one with the same key stands for it. */
function readSigningCertificate(
  attributes: ReadonlyMap<string, asn1js.BaseBlock | undefined>,
): (candidate: X509Certificate) => boolean {
  const second = attributes.get(SIGNING_CERTIFICATE_V2)
  const named = second ?? attributes.get(SIGNING_CERTIFICATE)
  if (named === undefined) fail('the token does not name the certificate that signed it')
  const [first] = partsOf(partsOf(named)[0])
  const parts = partsOf(first)
  // Of the second version alone a digest may be named; SHA-256 where none is.
  const algorithm = parts[0] instanceof asn1js.Sequence ? identifierOf(partsOf(parts[0])[0]) : SHA256
  const digest = second === undefined ? 'sha1' : DIGESTS[algorithm]
  if (digest === undefined) fail('the token names its certificate by a hash that is not understood')
  const hash = octetsOf(parts.find((part) => part instanceof asn1js.OctetString))
  return (candidate) =>
    createHash(digest ?? 'sha256')
      .update(candidate.raw)
      .digest()
      .equals(hash)
}

/** From certificate to issuer, as far as those at hand reach. */
function leadsTo(signer: X509Certificate, others: readonly X509Certificate[], trustedPem: string): boolean {
  const roots = (trustedPem.match(/-----BEGIN CERTIFICATE-----[\s\S]+?-----END CERTIFICATE-----/g) ?? []).map(
    (pem) => new X509Certificate(pem),
  )
  const issued = (issuer: X509Certificate, own: X509Certificate) =>
    issuer.ca && own.checkIssued(issuer) && own.verify(issuer.publicKey)
  let own = signer
  for (let steps = 0; steps <= others.length; steps += 1) {
    const current = own
    if (roots.some((root) => root.fingerprint256 === current.fingerprint256 || issued(root, current))) return true
    const next = others.find((other) => other !== current && issued(other, current))
    if (next === undefined) return false
    own = next
  }
  return false
}
