import { createHash, createSign, generateKeyPairSync, type KeyObject, randomBytes } from 'node:crypto'

/**
 * An authenticator in software, as far as tests need one (W3C Web Authentication, level 3, 6 and 7): one P-256 key, no
 * attestation, with or without the check of who holds it.
 */
export interface Authenticator {
  readonly id: string
  readonly register: (challenge: string, place?: Partial<Place>) => object
  readonly sign: (challenge: string, place?: Partial<Place>) => object
}

interface Place {
  readonly origin: string
  readonly host: string
  readonly isUserVerified: boolean
  readonly counter: number
}

const base64url = (bytes: Buffer | string): string => Buffer.from(bytes).toString('base64url')
const sha256 = (bytes: Buffer | string): Buffer => createHash('sha256').update(bytes).digest()

/** Bytes with their length before them, as CBOR writes them (RFC 8949, 3). */
function cborBytes(bytes: Buffer): Buffer {
  return Buffer.concat([
    bytes.length < 256 ? Buffer.from([0x58, bytes.length]) : Buffer.from([0x59, bytes.length >> 8, bytes.length & 255]),
    bytes,
  ])
}

const cborText = (text: string): Buffer => Buffer.concat([Buffer.from([0x60 + text.length]), Buffer.from(text)])

/** The public key in COSE form: kty 2, alg -7 (ES256), curve 1, x, y (RFC 9053, 7.1). */
function toCose(publicKey: KeyObject): Buffer {
  const { x = '', y = '' } = publicKey.export({ format: 'jwk' })
  return Buffer.concat([
    Buffer.from([0xa5, 0x01, 0x02, 0x03, 0x26, 0x20, 0x01, 0x21]),
    cborBytes(Buffer.from(x, 'base64url')),
    Buffer.from([0x22]),
    cborBytes(Buffer.from(y, 'base64url')),
  ])
}

export function makeAuthenticator(standard: Omit<Place, 'isUserVerified' | 'counter'>): Authenticator {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  const rawId = randomBytes(32)
  const id = base64url(rawId)
  let counter = 0
  const describe = (type: string, challenge: string, origin: string): Buffer =>
    Buffer.from(JSON.stringify({ type, challenge, origin, crossOrigin: false }))
  const makeData = (place: Partial<Place>, flags: number): Buffer => {
    counter = place.counter ?? counter + 1
    const count = Buffer.alloc(4)
    count.writeUInt32BE(counter)
    const verified = place.isUserVerified === false ? 0 : 0x04
    return Buffer.concat([sha256(place.host ?? standard.host), Buffer.from([0x01 | verified | flags]), count])
  }
  return {
    id,
    register(challenge, place = {}) {
      const length = Buffer.alloc(2)
      length.writeUInt16BE(rawId.length)
      const data = Buffer.concat([makeData(place, 0x40), Buffer.alloc(16), length, rawId, toCose(publicKey)])
      const attestation = Buffer.concat([
        Buffer.from([0xa3]),
        cborText('fmt'),
        cborText('none'),
        cborText('attStmt'),
        Buffer.from([0xa0]),
        cborText('authData'),
        cborBytes(data),
      ])
      return {
        id,
        rawId: id,
        type: 'public-key',
        clientExtensionResults: {},
        response: {
          clientDataJSON: base64url(describe('webauthn.create', challenge, place.origin ?? standard.origin)),
          attestationObject: base64url(attestation),
          transports: ['internal'],
        },
      }
    },
    sign(challenge, place = {}) {
      const data = makeData(place, 0)
      const client = describe('webauthn.get', challenge, place.origin ?? standard.origin)
      const signature = createSign('sha256')
        .update(Buffer.concat([data, sha256(client)]))
        .sign(privateKey)
      return {
        id,
        rawId: id,
        type: 'public-key',
        clientExtensionResults: {},
        response: {
          clientDataJSON: base64url(client),
          authenticatorData: base64url(data),
          signature: base64url(signature),
        },
      }
    },
  }
}
