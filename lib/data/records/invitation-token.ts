import 'server-only'
import { createHmac, randomBytes } from 'node:crypto'
import { getSecrets } from '@/lib/config'
import { sha256Hex } from '@/lib/review'

const SEED_BYTES = 32

/**
 * What the token of an invitation is derived from, together with the installation's secret: useless without it. A request
 * with a key gives the same seed each time, so a retry shows the same link although the token is stored nowhere.
 */
export function makeTokenSeed(userId: string, requestKey: string | undefined): string {
  return `${userId}\n${requestKey ?? randomBytes(SEED_BYTES).toString('base64url')}`
}

export function deriveToken(seed: string): string {
  return createHmac('sha256', getSecrets().sessionSecret).update(`invitation\n${seed}`).digest('base64url')
}

export function hashToken(token: string): string {
  return sha256Hex(token)
}
