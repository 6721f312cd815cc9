import { z } from 'zod'
import {
  AUTHORED_PARTS,
  type Author,
  CONDITION_STATES,
  DECLARATION_VERDICTS,
  type Declaration,
  type Difference,
  pinnedSignOffPolicySchema,
  type ReviewStatement,
  type Signature,
  type TakenOff,
} from '@/lib/review'
import { doneSchema, idSchema, sha256Schema, timeSchema } from './parts'

/** What a signature's hash of content means across versions of the program is worked out from the content; it is not handed over. */
const signatureSchema = z.strictObject({
  id: idSchema,
  userId: idSchema,
  name: z.string(),
  capacity: z.string(),
  grant: z.strictObject({ statement: z.string(), grantedByName: z.string(), grantedAt: timeSchema }).optional(),
  statement: z.string().meta({ description: 'Word for word as it was signed.' }),
  signedAt: timeSchema,
  contentHash: sha256Schema.meta({ description: 'Of what was signed.' }),
  voided: z.strictObject({ at: timeSchema, reason: z.string(), changes: z.array(z.string()) }).nullable(),
}) satisfies z.ZodType<Omit<Signature, 'substanceHash'>>

const conditionSchema = z.strictObject({
  id: idSchema,
  text: z.string(),
  field: z.string(),
  fieldLabel: z.string(),
  value: z.string(),
  state: z.enum(CONDITION_STATES),
  decidedByName: z.string().nullable(),
  decidedAt: timeSchema.nullable(),
  decisionNote: z.string(),
  done: doneSchema.nullable(),
})

const declarationSchema = z.strictObject({
  id: idSchema,
  companyId: idSchema,
  companyName: z.string(),
  verdict: z.enum(DECLARATION_VERDICTS),
  isFromBefore: z.boolean().optional(),
  note: z.string(),
  conditions: z.array(conditionSchema),
  madeBy: idSchema,
  madeByName: z.string(),
  madeAt: timeSchema,
  contentHash: sha256Schema.meta({ description: 'Of what was declared on.' }),
}) satisfies z.ZodType<Declaration>

const authorSchema = z.strictObject({
  userId: idSchema,
  name: z.string(),
  parts: z.array(z.enum(AUTHORED_PARTS)),
  changes: z.strictObject({ count: z.int(), firstVersion: z.int(), lastVersion: z.int() }).nullable(),
}) satisfies z.ZodType<Author>

const reviewSchema = z.strictObject({
  id: idSchema,
  userId: idSchema,
  name: z.string(),
  role: z.string(),
  note: z.string(),
  madeAt: timeSchema,
  contentHash: sha256Schema.meta({ description: 'Of what was reviewed.' }),
  withdrawnAt: timeSchema.nullable(),
}) satisfies z.ZodType<ReviewStatement>

const takenOffSchema = z.strictObject({
  companyId: idSchema,
  companyName: z.string(),
  reason: z.string(),
  byName: z.string(),
  at: timeSchema,
}) satisfies z.ZodType<TakenOff>

const differenceSchema = z.strictObject({
  fact: z.string(),
  said: z.string().meta({ description: 'The remark, and where it stands.' }),
  against: z.string().meta({ description: 'What stands against it.' }),
  target: z.strictObject({ tab: z.string(), id: z.string() }).meta({ description: 'Where the program shows it.' }),
  key: sha256Schema.meta({ description: 'Of the words and numbers: who lets them stand covers these and no others.' }),
  acknowledged: z.strictObject({ byName: z.string(), at: timeSchema, reason: z.string() }).nullable(),
  isDecidedInChecklist: z.boolean(),
}) satisfies z.ZodType<Omit<Difference, 'saidById' | 'target'>>

export const signaturesFileSchema = z.strictObject({
  signatures: z.array(signatureSchema),
  declarations: z.array(declarationSchema),
  takenOffThisRelease: z.array(takenOffSchema),
  authors: z.array(authorSchema),
  reviews: z.array(reviewSchema),
  signOffPolicy: pinnedSignOffPolicySchema.nullable(),
  differences: z.array(differenceSchema).meta({ description: 'Where words and numbers differed at the release.' }),
  loosened: z.array(z.string()).meta({ description: 'Where a rule that is looser than usual was used.' }),
})
