import { z } from 'zod'
import { DECIDED_WHEN } from '@/lib/engine/catalogue'
import { ITEM_SECTIONS } from '@/lib/engine/results'
import {
  ACTION_DUES,
  ACTION_ORIGINS,
  ACTION_STATES,
  ANCHOR_KINDS,
  ANSWER_STATES,
  type RecordedAnswer,
  type ReviewAction,
  type ReviewComment,
  THREAD_KINDS,
  THREAD_STATES,
  type ThreadAnchor,
  type Waiver,
} from '@/lib/review'
import { daySchema, doneSchema, idSchema, namedFileSchema, sha256Schema, timeSchema } from './parts'
import { countsSchema, verdictSchema } from './results'

const anchorSchema = z.strictObject({
  kind: z.enum(ANCHOR_KINDS),
  id: idSchema,
  label: z.string(),
}) satisfies z.ZodType<ThreadAnchor>

const commentSchema = z.strictObject({
  id: idSchema,
  authorId: idSchema,
  authorName: z.string(),
  companyName: z.string(),
  at: timeSchema,
  text: z.string(),
  editedAt: timeSchema.nullable(),
  attachments: z.array(namedFileSchema),
}) satisfies z.ZodType<ReviewComment>

export const threadsFileSchema = z.strictObject({
  threads: z.array(
    z.strictObject({
      id: idSchema,
      kind: z.enum(THREAD_KINDS),
      state: z.enum(THREAD_STATES),
      title: z.string(),
      anchor: anchorSchema,
      openedBy: idSchema,
      openedByName: z.string(),
      openedAt: timeSchema,
      audienceCompanyId: idSchema
        .nullable()
        .meta({ description: 'The fabricator that takes part; null: the team alone.' }),
      companyId: idSchema.meta({ description: 'Company of the person who opened it.' }),
      companyName: z.string(),
      comments: z.array(commentSchema),
      closed: z
        .strictObject({
          by: idSchema,
          byName: z.string(),
          at: timeSchema,
          reason: z.string(),
          done: doneSchema.nullable(),
        })
        .nullable(),
    }),
  ),
})

const actionSchema = z.strictObject({
  id: idSchema,
  number: z.int().positive(),
  origin: z.strictObject({ kind: z.enum(ACTION_ORIGINS), id: idSchema, label: z.string() }),
  audienceCompanyId: idSchema.nullable(),
  text: z.string(),
  ownerId: idSchema,
  ownerName: z.string(),
  ownerCompanyName: z.string(),
  due: z.enum(ACTION_DUES),
  dueOn: daySchema.nullable(),
  isAfterRelease: z.boolean(),
  state: z.enum(ACTION_STATES),
  takenOnByName: z.string(),
  takenOnAt: timeSchema,
  evidence: z.string(),
  files: z.array(namedFileSchema),
  reportedByName: z.string().nullable(),
  reportedAt: timeSchema.nullable(),
  closedByName: z.string().nullable(),
  closedAt: timeSchema.nullable(),
  closeNote: z.string(),
}) satisfies z.ZodType<ReviewAction>

export const actionsFileSchema = z.strictObject({ actions: z.array(actionSchema) })

const answerSchema = z.strictObject({
  itemId: z.string(),
  state: z.enum(ANSWER_STATES),
  reason: z.string(),
  answeredBy: idSchema,
  answeredByName: z.string(),
  answeredAt: timeSchema,
  evidence: z.array(namedFileSchema),
  lookedAt: z
    .strictObject({
      sheet: z.string(),
      layer: z.string(),
      fileName: z.string(),
      sha256: z.union([sha256Schema, z.literal('')]).meta({ description: 'Empty where no file is named.' }),
    })
    .nullish(),
  isFileGone: z.boolean().optional(),
  changedInputs: z.array(z.string()).optional(),
  earlierQuestion: z.string().optional(),
  isFromElsewhere: z.boolean().optional(),
}) satisfies z.ZodType<RecordedAnswer>

const waiverSchema = z.strictObject({
  id: idSchema,
  itemId: z.string(),
  state: z.enum(['proposed', 'approved', 'declined']),
  reason: z.string(),
  proposedBy: idSchema,
  proposedByName: z.string(),
  proposedAt: timeSchema,
  decidedBy: idSchema.nullable(),
  decidedByName: z.string().nullable(),
  decidedAt: timeSchema.nullable(),
  decisionNote: z.string(),
  decidedAsRole: z.string().nullish(),
  consequence: z.string().optional(),
  validUntil: daySchema.nullish(),
  quantityLimit: z.int().positive().nullish(),
  needsCustomerConsent: z.boolean().optional(),
  customerConsent: z.string().optional(),
  isLapsed: z.boolean().optional(),
  basisHash: z.string().meta({ description: 'SHA-256 of the result that it covers.' }),
}) satisfies z.ZodType<Waiver>

const switchedOffSchema = z.strictObject({ itemId: z.string(), question: z.string(), reason: z.string() })

export const checklistFileSchema = z.strictObject({
  cautions: z.array(z.string()),
  items: z.array(
    z.strictObject({
      id: z.string(),
      section: z.enum(ITEM_SECTIONS),
      question: z.string(),
      severity: z.string(),
      decidedWhen: z.enum(DECIDED_WHEN),
      answeredBy: z.array(z.string()),
      concernNeedsWaiver: z.boolean(),
      becauseOf: z.array(z.string()).optional(),
      state: z.enum(ANSWER_STATES),
      decidedBy: z.enum(['calculation', 'statement', 'person', 'waiver', 'nobody']),
      basis: z.enum(['computed', 'typed', 'stated', 'judgment']),
      askedOf: z.array(z.string()),
      whatHelps: z.array(z.string()),
      headline: z.string().nullable(),
      verdict: verdictSchema.nullable(),
      followsFrom: z.array(z.string()).meta({ description: 'Items whose failure brings this one.' }),
      answer: answerSchema.nullable(),
      waiver: waiverSchema.nullable(),
      setAside: z.string().meta({ description: 'Why an answer or a waiver does not count; empty where it does.' }),
    }),
  ),
  counts: countsSchema,
  waivers: z.array(waiverSchema),
  settings: z.strictObject({ artworkRequired: z.boolean() }),
  template: z.strictObject({
    version: z.int().nonnegative().meta({ description: 'Of the workspace’s catalogue; 0: as delivered.' }),
    contentHash: z.string(),
    switchedOff: z.array(switchedOffSchema),
    profiles: z
      .array(z.strictObject({ id: z.string(), name: z.string(), requiredSignatures: z.int().optional() }))
      .optional(),
  }),
})
