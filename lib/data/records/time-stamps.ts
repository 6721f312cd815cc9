import 'server-only'
import { readFile } from 'node:fs/promises'
import { getSettings, log, type Settings } from '@/lib/config'
import { makeNonce, makeTimeStampQuery, readTimeStamp, type StampedRelease } from '@/lib/package'

/** An authority answers within a second or so. Nobody's release waits longer than this for one that does not. */
const WAIT_MS = 10_000
const MOST_BYTES = 256 * 1024

type Authority = Pick<Settings, 'timeStampUrl' | 'timeStampCaFile'>

/** The certificates (PEM) that this installation trusts for time stamps; null where none are set. */
export async function readTimeStampCertificates(
  { timeStampCaFile }: Authority = getSettings(),
): Promise<string | null> {
  return timeStampCaFile === null ? null : readFile(/* turbopackIgnore: true */ timeStampCaFile, 'utf8')
}

/**
 * Has an authority say when it saw this signature (RFC 3161). Never fails: a release is worth more than its stamp, and the package says that it has none, and
 * why.
 */
export async function askForTimeStamp(
  signature: Uint8Array,
  authority: Authority = getSettings(),
): Promise<StampedRelease['token']> {
  const { timeStampUrl } = authority
  if (timeStampUrl === null) return { response: null, because: 'no time-stamp authority is set' }
  try {
    const nonce = makeNonce()
    const response = await send(timeStampUrl, makeTimeStampQuery(signature, nonce))
    if (!response.ok) throw new Error(`it answered ${response.status}`)
    const bytes = new Uint8Array(await response.arrayBuffer())
    if (bytes.length > MOST_BYTES) throw new Error(`it answered with ${bytes.length} bytes`)
    const trusted = await readTimeStampCertificates(authority)
    const stamp = readTimeStamp(bytes, signature, trusted, nonce)
    if (!stamp.ok) throw new Error(stamp.issues[0]?.message)
    if (trusted !== null && !stamp.value.isTrusted) throw new Error('its certificate is not one that is trusted here')
    return { response: bytes, because: '' }
  } catch (error) {
    log.error('no time stamp could be had for a release', { error: String(error) })
    return { response: null, because: 'the time-stamp authority gave none that could be used' }
  }
}

/** A connection that was kept open may have been closed by the other side meanwhile: what breaks off at once is sent once more. */
async function send(url: string, query: Uint8Array): Promise<Response> {
  const post = () =>
    fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/timestamp-query', accept: 'application/timestamp-reply' },
      body: new Uint8Array(query),
      redirect: 'error',
      signal: AbortSignal.timeout(WAIT_MS),
    })
  try {
    return await post()
  } catch (error) {
    if (error instanceof TypeError) return post()
    throw error
  }
}
