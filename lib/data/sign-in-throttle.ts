import 'server-only'
import { sha256Hex } from '@/lib/review'
import type { TransactionClient } from './client'

/** After this many failures for one address within the window, further attempts wait until the window has passed. */
const MAX_FAILURES = 8
const WINDOW_MS = 15 * 60_000

/** The address that was typed may be a password typed into the wrong field, so only its hash is kept. */
function makeEmailKey(email: string): string {
  return sha256Hex(email)
}

/**
 * Takes one of the attempts that an address has left, before the password is compared: guesses sent at the same moment
 * are counted one by one.
 *
 * @returns null, or the minutes to wait when none is left
 */
export async function takeAttempt(tx: TransactionClient, email: string, at: Date): Promise<number | null> {
  const since = new Date(at.getTime() - WINDOW_MS)
  const emailKey = makeEmailKey(email)
  await tx.signInAttempt.deleteMany({ where: { at: { lt: since } } })
  const failures = await tx.signInAttempt.findMany({ where: { emailKey }, orderBy: { at: 'asc' }, take: MAX_FAILURES })
  const oldest = failures[0]
  if (failures.length >= MAX_FAILURES && oldest !== undefined) {
    return Math.max(1, Math.ceil((oldest.at.getTime() + WINDOW_MS - at.getTime()) / 60_000))
  }
  await tx.signInAttempt.create({ data: { emailKey, at } })
  return null
}

/** Somebody who knows the password is not slowed down by earlier failures. */
export async function forgetAttempts(tx: TransactionClient, email: string): Promise<void> {
  await tx.signInAttempt.deleteMany({ where: { emailKey: makeEmailKey(email) } })
}
