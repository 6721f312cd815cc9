import { z } from 'zod'
import { designSchema } from '@/lib/engine/design'
import {
  nameSchema,
  onRevision,
  optionalTextSchema,
  recordIdSchema,
  requestKeySchema,
  saidTextSchema,
  seenVersionSchema,
} from './common'

/** `seenVersion` is the design's version that the edit was made on; `design` is the whole design as proposed. */
export const proposeChangeInput = z.strictObject({
  ...onRevision,
  design: designSchema,
  /** Subject. */
  title: nameSchema,
  why: saidTextSchema,
  /** Of the thread in which it is discussed. */
  kind: z.enum(['note', 'should-change', 'must-change']),
  /** Which fabricator takes part; absent keeps the proposal within the team. A fabricator's own is always used. */
  companyId: recordIdSchema.optional(),
})
export type ProposeChangeInput = z.infer<typeof proposeChangeInput>

/** `seenVersion` is the design's version that the comparison was shown for. */
export const decideProposalInput = z.strictObject({
  proposalId: recordIdSchema,
  seenVersion: seenVersionSchema,
  decision: z.enum(['accept', 'decline']),
  reason: saidTextSchema,
  requestKey: requestKeySchema,
})
export type DecideProposalInput = z.infer<typeof decideProposalInput>

export const withdrawProposalInput = z.strictObject({
  proposalId: recordIdSchema,
  reason: optionalTextSchema,
  requestKey: requestKeySchema,
})
export type WithdrawProposalInput = z.infer<typeof withdrawProposalInput>

/** What can stand on a side of a comparison; `base` is the design that a proposal was made on. */
export const COMPARED_KINDS = ['revision', 'signature', 'base', 'proposal'] as const

/** As in an address: `revision:<id>`. */
export const comparedSchema = z
  .string()
  .max(80)
  .transform((text, context) => {
    const [word = '', ...rest] = text.split(':')
    const kind = COMPARED_KINDS.find((known) => known === word)
    const id = recordIdSchema.safeParse(rest.join(':'))
    if (kind === undefined || !id.success) {
      context.addIssue({ code: 'custom', message: 'does not name a version that can be compared' })
      return z.NEVER
    }
    return { kind, id: id.data }
  })
export type Compared = z.infer<typeof comparedSchema>
