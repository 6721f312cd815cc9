import 'server-only'
import { z } from 'zod'
import { paths } from '@/lib/addresses'
import { getSettings, now } from '@/lib/config'
import type { ChangeAddressInput, TokenInput } from '@/lib/inputs'
import { composeMail, TOKEN_PLACE } from '@/lib/mail'
import { queueAccountNotice } from '../../consequences/mail/account-notices'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import type { Actor } from '../../records/authorization'
import { deriveToken, makeTokenSeed } from '../../records/invitation-token'
import { endTokens, findOpenToken, makeOneTimeToken, readTokenData, useToken } from '../../records/one-time-tokens'
import { queueMail } from '../../records/outbox'
import { db } from '../../store/client'
import { outcomeOf, refuseClash, refuseField } from '../../store/errors'
import type { ActResult, AddressOffer } from '../../views'
import { writeWithPassword } from './password-confirmation'

/**
 * A link to the new address, and word to the old one. Nothing changes until the link is opened by somebody who presses its
 * button. The answer does not tell whether the new address has an account; if it has, no link is sent.
 */
export function askForAddressChange(actor: Actor, input: ChangeAddressInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    writeWithPassword(actor, input, async ({ tx, rights, user, at }) => {
      if (user.email === input.email) refuseField('email', 'unchanged', 'is the address that you have')
      await appendToTrail(tx, at, rights, {
        action: 'address-change-asked',
        subject: { kind: 'account', id: user.id },
      })
      await queueAccountNotice(tx, at, user, { happened: 'address-change-asked', by: null })
      if ((await tx.user.findUnique({ where: { email: input.email } })) !== null) return null
      const tokenSeed = makeTokenSeed(user.id, undefined)
      const { expiresAt } = await makeOneTimeToken(tx, {
        kind: 'address-change',
        userId: user.id,
        data: { email: input.email },
        token: deriveToken(tokenSeed),
        at,
      })
      await queueMail(tx, at, {
        kind: 'address-change',
        dedupeKey: `address-change:${tokenSeed}`,
        recipient: { userId: user.id, name: user.name, address: input.email },
        tokenSeed,
        text: composeMail({
          kind: 'address-change',
          name: user.name,
          href: `${getSettings().publicUrl}${paths.confirmAddress('')}${TOKEN_PLACE}`,
          expiresAt: expiresAt.toISOString(),
        }),
      })
      return null
    }),
  )
}

/** What the link would do, for anyone who holds it; null where it is used or over. */
export async function previewAddressChange(token: string): Promise<AddressOffer | null> {
  const row = await findOpenToken(db(), ['address-change'], token, now())
  return row === null ? null : { email: readTokenData(emailSchema, row).email }
}

/** By anyone with the link: it went to the new address, so that is theirs. The old one is told. */
export function confirmAddress(input: TokenInput): Promise<ActResult<{ email: string }>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const at = now()
      const row = await useToken(tx, ['address-change'], input.token, at)
      const email = readTokenData(emailSchema, row).email
      const user = await tx.user.findUniqueOrThrow({ where: { id: row.userId ?? '' } })
      if (user.disabledAt !== null) refuseClash('The account is disabled.')
      if ((await tx.user.findUnique({ where: { email } })) !== null) {
        refuseClash('This address now has an account. Nothing was changed.')
      }
      await queueAccountNotice(tx, at, user, { happened: 'address-changed', by: null })
      await tx.user.update({ where: { id: user.id }, data: { email, emailConfirmedAt: at } })
      // Links that went to the old address would still open the account.
      await endTokens(tx, user.id, ['reset-by-mail', 'reset-by-hand', 'identity-allowed'], at)
      await appendToTrail(
        tx,
        at,
        { userId: user.id, name: user.name },
        { action: 'address-changed', subject: { kind: 'account', id: user.id } },
      )
      return { email }
    }),
  )
}

/** The address that a link confirms. */
const emailSchema = z.looseObject({ email: z.string() })
