import type { KeyObject } from 'node:crypto'
import { isRawSignatureOf, signBytesRaw } from './signing'
import { readTimeStamp, type TimeStamp } from './time-stamp'

export const STAMPED_STATEMENT_PATH = 'time-stamp/statement.txt'
export const STAMPED_SIGNATURE_PATH = 'time-stamp/statement.sig'
export const TIME_STAMP_PATH = 'time-stamp/answer.tsr'

/** As `PackageFile`, which names this file's types. */
interface StampFile {
  readonly path: string
  readonly bytes: Uint8Array
}

/** What is stamped: the key's signature over which content was released. The stamp so shows that the key had signed it by then. */
interface Stamped {
  readonly revisionId: string
  readonly contentHash: string
  readonly keyFingerprint: string
}

/** The signature, and what an authority said of it. */
export interface StampedRelease {
  readonly statement: Uint8Array
  readonly signature: Uint8Array
  readonly token:
    | { readonly response: Uint8Array; readonly because: '' }
    | { readonly response: null; readonly because: string }
}

function writeStatement({ revisionId, contentHash, keyFingerprint }: Stamped): Uint8Array {
  const lines = [
    'bendworthy-released-content',
    `revision ${revisionId}`,
    `content ${contentHash}`,
    `key ${keyFingerprint}`,
  ]
  return new TextEncoder().encode(`${lines.join('\n')}\n`)
}

export function signStatement(stamped: Stamped, signingKeyPem: string): Omit<StampedRelease, 'token'> {
  const statement = writeStatement(stamped)
  return { statement, signature: signBytesRaw(statement, signingKeyPem) }
}

/** None where there is no stamp: what is left would prove nothing. */
export function makeStampFiles(stamped: StampedRelease | undefined): StampFile[] {
  if (stamped === undefined || stamped.token.response === null) return []
  return [
    { path: STAMPED_STATEMENT_PATH, bytes: stamped.statement },
    { path: STAMPED_SIGNATURE_PATH, bytes: stamped.signature },
    { path: TIME_STAMP_PATH, bytes: stamped.token.response },
  ]
}

/**
 * The time stamp of a package, where it has one.
 * @returns null where there is none; what is wrong with it as a sentence
 */
export function checkStamp(
  files: ReadonlyMap<string, StampFile>,
  expected: Stamped,
  key: KeyObject | null,
  trustedPem: string | null,
): TimeStamp | string | null {
  const answer = files.get(TIME_STAMP_PATH)
  if (answer === undefined) return null
  const signature = files.get(STAMPED_SIGNATURE_PATH)
  if (signature === undefined || key === null || !isRawSignatureOf(writeStatement(expected), signature.bytes, key)) {
    return 'what was stamped is not the key’s signature over what was released'
  }
  const read = readTimeStamp(answer.bytes, signature.bytes, trustedPem)
  return read.ok ? read.value : (read.issues[0]?.message ?? 'the time stamp cannot be read')
}
