import { execFileSync } from 'node:child_process'
import { X509Certificate } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** A time-stamp authority on this machine: OpenSSL, with a root and a certificate of its own. */
export interface LocalAuthority {
  readonly caPem: string
  /** @param query  `TimeStampReq`, DER; @returns `TimeStampResp`, DER */
  readonly reply: (query: Uint8Array) => Uint8Array
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

/** @param hash  by which a token names its certificate: SHA-1 makes it the first version of that attribute */
export function makeLocalAuthority(folder: string, hash: 'sha256' | 'sha1' = 'sha256'): LocalAuthority {
  const file = (name: string) => path.join(folder, name)
  const openssl = (...args: string[]) => execFileSync('openssl', args, { stdio: 'pipe' })
  writeFileSync(
    file('tsa.cnf'),
    CONFIG.replace('SERIAL', file('serial')).replace('cert_id_alg = sha256', `cert_id_alg = ${hash}`),
  )
  writeFileSync(file('serial'), '01\n')
  const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-config', file('req.cnf')]
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
  return {
    caPem: readFileSync(file('ca.pem'), 'utf8'),
    reply(query) {
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
