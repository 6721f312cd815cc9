import { execFileSync } from 'node:child_process'
import { X509Certificate } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** A time-stamp authority on this machine: OpenSSL, with a root and a certificate of its own. */
export interface LocalAuthority {
  readonly caPem: string
  /** @param query  `TimeStampReq`, DER; @returns `TimeStampResp`, DER */
  readonly reply: (query: Uint8Array) => Uint8Array
  /**
   * The same answer with its content signed anew by RSA-PSS, for an authority whose key is RSA: OpenSSL's time stamps cannot, its CMS can.
   *
   * @param options  of `openssl cms -keyopt`, such as `rsa_pss_saltlen:20`
   */
  readonly replyByPss: (query: Uint8Array, ...options: readonly string[]) => Uint8Array
  /** Of the certificate that stamps, DER. */
  readonly certificate: () => Uint8Array
  /** Another certificate of the same key, as long as the first: DER. */
  readonly makeTwin: () => Uint8Array
}

const CONFIG = `[ tsa ]
default_tsa = tsa_config
[ tsa_config ]
serial = SERIAL
crypto_device = builtin
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256, sha384, sha512
ess_cert_id_chain = no
ess_cert_id_alg = sha256
[ ca ]
basicConstraints = critical, CA:TRUE
keyUsage = critical, keyCertSign
[ stamps ]
basicConstraints = CA:FALSE
keyUsage = critical, digitalSignature
extendedKeyUsage = critical, timeStamping
`

const KEYS = {
  ec: ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1'],
  rsa: ['-newkey', 'rsa:2048'],
} as const

/** @param hash  by which a token names its certificate: SHA-1 makes it the first version of that attribute */
export function makeLocalAuthority(
  folder: string,
  hash: 'sha256' | 'sha1' = 'sha256',
  kind: keyof typeof KEYS = 'ec',
): LocalAuthority {
  const file = (name: string) => path.join(folder, name)
  const openssl = (...args: string[]) => execFileSync('openssl', args, { stdio: 'pipe' })
  writeFileSync(
    file('tsa.cnf'),
    CONFIG.replace('SERIAL', file('serial')).replace('cert_id_alg = sha256', `cert_id_alg = ${hash}`),
  )
  writeFileSync(file('serial'), '01\n')
  const key = [...KEYS[kind], '-nodes', '-config', file('req.cnf')]
  writeFileSync(file('req.cnf'), `[req]\ndistinguished_name = dn\n[dn]\n${CONFIG}`)
  const subject = (name: string) => ['-subj', `/CN=${name}`]
  openssl(
    'req',
    '-x509',
    ...key,
    ...subject('Root of a test'),
    '-days',
    '30',
    '-extensions',
    'ca',
    '-keyout',
    file('ca.key'),
    '-out',
    file('ca.pem'),
  )
  openssl('req', ...key, ...subject('Time stamps of a test'), '-keyout', file('tsa.key'), '-out', file('tsa.csr'))
  const issue = (name: string) =>
    openssl(
      'x509',
      '-req',
      '-in',
      file('tsa.csr'),
      '-CA',
      file('ca.pem'),
      '-CAkey',
      file('ca.key'),
      '-CAcreateserial',
      '-days',
      '30',
      '-extfile',
      file('req.cnf'),
      '-extensions',
      'stamps',
      '-out',
      file(name),
    )
  issue('tsa.pem')
  const readDer = (name: string) => new Uint8Array(new X509Certificate(readFileSync(file(name))).raw)
  const reply = (query: Uint8Array): Uint8Array => {
    writeFileSync(file('q.tsq'), query)
    openssl(
      'ts',
      '-reply',
      '-config',
      file('tsa.cnf'),
      '-queryfile',
      file('q.tsq'),
      '-signer',
      file('tsa.pem'),
      '-inkey',
      file('tsa.key'),
      '-chain',
      file('ca.pem'),
      '-out',
      file('r.tsr'),
    )
    return new Uint8Array(readFileSync(file('r.tsr')))
  }
  return {
    caPem: readFileSync(file('ca.pem'), 'utf8'),
    reply,
    replyByPss(query, ...options) {
      reply(query)
      openssl('ts', '-reply', '-in', file('r.tsr'), '-token_out', '-out', file('token.der'))
      openssl('cms', '-verify', '-noverify', '-in', file('token.der'), '-inform', 'DER', '-out', file('info.der'))
      const keyOptions = ['rsa_padding_mode:pss', ...options].flatMap((option) => ['-keyopt', option])
      const content = ['-nodetach', '-binary', '-cades', '-econtent_type', '1.2.840.113549.1.9.16.1.4']
      const signer = ['-signer', file('tsa.pem'), '-inkey', file('tsa.key'), '-md', 'sha256']
      const files = ['-in', file('info.der'), '-outform', 'DER', '-out', file('pss.der')]
      openssl('cms', '-sign', ...signer, ...keyOptions, ...content, ...files)
      const token = readFileSync(file('pss.der'))
      // `TimeStampResp`: granted, and the token.
      const inside = Buffer.concat([Buffer.from([0x30, 0x03, 0x02, 0x01, 0x00]), token])
      return new Uint8Array(
        Buffer.concat([Buffer.from([0x30, 0x82, inside.length >> 8, inside.length & 0xff]), inside]),
      )
    },
    certificate: () => readDer('tsa.pem'),
    makeTwin() {
      // Signatures on this curve differ in length by a byte or two.
      for (;;) {
        issue('twin.pem')
        const twin = readDer('twin.pem')
        if (twin.length === readDer('tsa.pem').length) return twin
      }
    },
  }
}
