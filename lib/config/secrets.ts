import 'server-only'
import { createPrivateKey, createPublicKey, generateKeyPairSync, randomBytes } from 'node:crypto'
import { chmodSync, existsSync, linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { getSettings } from './environment'

/** What this installation must keep to itself, and the public half of its signing key. */
export interface Secrets {
  /** Signs the sessions. */
  readonly sessionSecret: string
  /** Ed25519 (RFC 8032), PKCS#8 PEM. Signs release packages. */
  readonly signingKeyPem: string
  /** The public half, SPKI PEM. Goes into every package. */
  readonly verifyingKeyPem: string
}

const SESSION_SECRET_FILE = 'session-secret'
const SIGNING_KEY_FILE = 'signing-key.pem'
const VERIFYING_KEY_FILE = 'verifying-key.pem'
const SESSION_SECRET_BYTES = 48

/**
 * Create the secrets that are missing, with rights for the owner only (0600 in a 0700 folder), and read them all.
 * Two processes that start together end up with the same ones.
 *
 * @param dataFolder  absolute
 * @throws Error  naming the file, when one cannot be written or holds something else
 */
export function ensureSecrets(dataFolder: string): Secrets {
  const folder = path.join(/* turbopackIgnore: true */ dataFolder, 'secrets')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  // mkdir's mode is subject to the umask and ignored for a folder that exists.
  chmodSync(folder, 0o700)

  const sessionSecret = keepOrCreate(path.join(folder, SESSION_SECRET_FILE), () =>
    randomBytes(SESSION_SECRET_BYTES).toString('base64url'),
  )
  const signingKeyFile = path.join(folder, SIGNING_KEY_FILE)
  const signingKeyPem = keepOrCreate(signingKeyFile, () =>
    generateKeyPairSync('ed25519').privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
  )
  const verifyingKeyPem = derivePublicKey(signingKeyPem, signingKeyFile)
  keepOrCreate(path.join(folder, VERIFYING_KEY_FILE), () => verifyingKeyPem)

  if (sessionSecret.trim().length < SESSION_SECRET_BYTES) {
    throw new Error(
      `${path.join(folder, SESSION_SECRET_FILE)} is too short to be a session secret; delete it and a new one is made (everyone signs in again).`,
    )
  }
  return { sessionSecret: sessionSecret.trim(), signingKeyPem, verifyingKeyPem }
}

const makeKeyFile = (fingerprint: string) =>
  path.join(/* turbopackIgnore: true */ getSettings().dataFolder, 'secrets', `signing-key-${fingerprint}.pem`)

/** Keeps the private half of a signing key that takes the place of another, beside the other secrets. */
export function keepSigningKeyFile(fingerprint: string, signingKeyPem: string): void {
  keepOrCreate(makeKeyFile(fingerprint), () => signingKeyPem)
}

/** @throws Error  naming the file, where it is missing */
export function readSigningKeyFile(fingerprint: string): string {
  const file = makeKeyFile(fingerprint)
  try {
    return readFileSync(file, 'utf8')
  } catch (cause) {
    throw new Error(`the signing key ${file} cannot be read; put it back, or nothing can be signed`, { cause })
  }
}

let secrets: Secrets | undefined

/** The secrets of this installation, read once. */
export function getSecrets(): Secrets {
  secrets ??= ensureSecrets(getSettings().dataFolder)
  return secrets
}

/** The file of one secret, readable by its owner alone. Two processes that start together end up with the same one. */
export function keepOrCreate(file: string, create: () => string): string {
  if (!existsSync(file)) {
    const draft = `${file}.${process.pid}`
    writeFileSync(draft, create(), { mode: 0o600 })
    try {
      // A link fails where another process came first; a rename would replace its secret.
      linkSync(draft, file)
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code
      if (code !== 'EEXIST') renameSync(draft, file)
    } finally {
      rmSync(draft, { force: true })
    }
  }
  chmodSync(file, 0o600)
  return readFileSync(file, 'utf8')
}

function derivePublicKey(signingKeyPem: string, file: string): string {
  try {
    const key = createPrivateKey(signingKeyPem)
    if (key.asymmetricKeyType !== 'ed25519') throw new Error(`holds a key of type ${key.asymmetricKeyType}`)
    return createPublicKey(key).export({ type: 'spki', format: 'pem' }).toString()
  } catch (cause) {
    throw new Error(
      `${file} is not an Ed25519 private key in PEM form; put the original back (packages signed before carry its public half).`,
      { cause },
    )
  }
}
