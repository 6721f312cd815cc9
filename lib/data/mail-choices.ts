import 'server-only'
import type { MailChoicesInput } from '@/lib/inputs'
import { OPTIONAL_MAIL_KINDS, type OptionalMailKind } from '@/lib/mail'
import type { Actor } from './authorization'
import { readMailOff } from './mail-off'
import { read } from './read'
import type { Outcome } from './views'
import { write } from './write'

/** The kinds of mail that the person gets. */
export function getMailChoices(actor: Actor): Promise<readonly OptionalMailKind[]> {
  return read(actor, async ({ tx, standing }) => {
    const { mailOffJson } = await tx.user.findUniqueOrThrow({ where: { id: standing.userId } })
    const off = readMailOff(mailOffJson)
    return OPTIONAL_MAIL_KINDS.filter((kind) => !off.has(kind))
  })
}

export function setMailChoices(actor: Actor, input: MailChoicesInput): Promise<Outcome<null>> {
  return write(actor, 'set-mail-choices', input, async ({ tx, standing }) => {
    const off = OPTIONAL_MAIL_KINDS.filter((kind) => !input.kinds.includes(kind))
    await tx.user.update({ where: { id: standing.userId }, data: { mailOffJson: JSON.stringify(off) } })
    return null
  })
}
