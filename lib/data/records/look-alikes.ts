import 'server-only'
import { domainToUnicode } from 'node:url'
import { rectifyConfusion } from 'unicode-confusables'
import type { TransactionClient } from '../store/client'
import { refuseField } from '../store/errors'

/**
 * Letters, digits and pairs of the plain alphabet that stand for each other at a glance; the Unicode tables (UTS 39) leave
 * most of these alone.
 */
const PLAIN_LOOK_ALIKES: readonly (readonly [RegExp, string])[] = [
  [/rn/g, 'm'],
  [/vv/g, 'w'],
  [/cl/g, 'd'],
  [/0/g, 'o'],
  [/[1|i]/g, 'l'],
  [/5/g, 's'],
  [/2/g, 'z'],
  [/8/g, 'b'],
]

/**
 * An address as it looks at a glance: two people whose addresses fold to the same are easily taken for each other. Case,
 * dots, hyphens and whatever follows a plus sign do not count, as many mail services do not count them either; letters of other
 * scripts count as the Latin ones that they look like, in a domain name too.
 */
export function foldAddress(email: string): string {
  const [local = '', domain = ''] = email.toLowerCase().split(/@(?=[^@]*$)/)
  const plainLocal = local.replace(/\+.*$/, '').replaceAll(/[._-]/g, '')
  const plainDomain = (domainToUnicode(domain) || domain).replaceAll('-', '')
  return `${foldLetters(plainLocal)}@${foldLetters(plainDomain)}`
}

function foldLetters(text: string): string {
  const latin = rectifyConfusion(text.normalize('NFKD').replaceAll(/\p{M}/gu, '')).toLowerCase()
  return PLAIN_LOOK_ALIKES.reduce((folded, [pattern, letter]) => folded.replaceAll(pattern, letter), latin)
}

/**
 * By an invitation that names no address anybody may type any. One that looks like a member's is refused: under it a stranger
 * would read as that member. The person it really belongs to is invited by it, and then the lead has vouched for it.
 */
export async function requireNoLookAlike(tx: TransactionClient, email: string): Promise<void> {
  const folded = foldAddress(email)
  const users = await tx.user.findMany({ select: { email: true } })
  if (users.some((user) => foldAddress(user.email) === folded)) {
    refuseField(
      'email',
      'look-alike',
      'looks like the address of somebody who has an account here; ask for an invitation that names your address',
    )
  }
}
