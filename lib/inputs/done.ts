import { z } from 'zod'
import { recordIdSchema } from './common'

/**
 * Points to what was done about a thread or a condition: changes of the design by their places, an accepted proposal, a
 * file, an action; or that nothing changed, for which the reason stands.
 */
export const doneInput = z.discriminatedUnion(
  'kind',
  [
    z.strictObject({
      kind: z.literal('fields'),
      places: z.array(z.string().min(1).max(300)).min(1, 'is empty: choose what changed').max(100),
    }),
    z.strictObject({ kind: z.literal('proposal'), proposalId: recordIdSchema }),
    z.strictObject({
      kind: z.literal('file'),
      sha256: z.string().regex(/^[0-9a-f]{64}$/, 'is not the hash of a file'),
    }),
    z.strictObject({ kind: z.literal('action'), actionId: recordIdSchema }),
    z.strictObject({ kind: z.literal('no-change') }),
  ],
  'choose what was done',
)
export type DoneInput = z.infer<typeof doneInput>
