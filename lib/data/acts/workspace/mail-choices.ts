import 'server-only'
import type { MailChoicesInput } from '@/lib/inputs'
import { OPTIONAL_MAIL_KINDS } from '@/lib/mail'
import { write } from '../../consequences/write'
import type { Actor } from '../../records/authorization'
import type { ActResult } from '../../views'

export function setMailChoices(actor: Actor, input: MailChoicesInput): Promise<ActResult<null>> {
  return write(actor, 'set-mail-choices', input, async ({ tx, rights }) => {
    const off = OPTIONAL_MAIL_KINDS.filter((kind) => !input.kinds.includes(kind))
    await tx.user.update({ where: { id: rights.userId }, data: { mailOffJson: JSON.stringify(off) } })
    return null
  })
}
