import { z } from 'zod'
import { OPTIONAL_MAIL_KINDS } from '@/lib/mail'
import { recordIdSchema, requestKeySchema } from './common'

/** The kinds of mail that the person wants. */
export const mailChoicesInput = z.strictObject({
  kinds: z.array(z.enum(OPTIONAL_MAIL_KINDS)).max(OPTIONAL_MAIL_KINDS.length),
  requestKey: requestKeySchema,
})
export type MailChoicesInput = z.infer<typeof mailChoicesInput>

export const sendMailAgainInput = z.strictObject({ mailId: recordIdSchema, requestKey: requestKeySchema })
export type SendMailAgainInput = z.infer<typeof sendMailAgainInput>
