import { z } from 'zod'
import { DECISION_POINTS, type Meeting, NEED_METHODS, NEED_STATE_WORDS, NEED_STATES, type Need } from '@/lib/review'
import { daySchema, idSchema, sha256Schema, timeSchema } from './parts'

const meetingSchema = z.strictObject({
  id: idSchema,
  number: z.int().meta({ description: 'Within the revision, from 1.' }),
  title: z.string(),
  heldOn: daySchema,
  agenda: z.string(),
  present: z.array(z.string()),
  excused: z.array(z.string()),
  decisions: z.array(
    z.strictObject({
      ordinal: z.int(),
      text: z.string(),
      points: z
        .strictObject({ kind: z.enum(DECISION_POINTS), id: z.string(), label: z.string() })
        .meta({ description: 'What carries the decision out.' }),
    }),
  ),
  recordedByName: z.string(),
  recordedAt: timeSchema,
}) satisfies z.ZodType<Meeting>

export const meetingsFileSchema = z.strictObject({ meetings: z.array(meetingSchema) })

const needSchema = z.strictObject({
  id: idSchema,
  number: z.int().meta({ description: 'Within the revision, from 1.' }),
  text: z.string(),
  itemIds: z.array(z.string()).meta({ description: 'Items of the checklist that show it.' }),
  method: z.enum(NEED_METHODS),
  plannedOn: daySchema.nullable(),
  result: z.string(),
  files: z.array(z.strictObject({ id: idSchema, fileName: z.string(), sha256: sha256Schema })),
  reportedById: idSchema.nullable(),
  reportedByName: z.string().nullable(),
  reportedAt: timeSchema.nullable(),
  acceptedByName: z.string().nullable(),
  acceptedAt: timeSchema.nullable(),
  acceptNote: z.string(),
  droppedReason: z.string().nullable(),
  statedByName: z.string(),
  state: z.enum(NEED_STATES.map((state) => NEED_STATE_WORDS[state])),
}) satisfies z.ZodType<Omit<Need, 'version'>>

export const needsFileSchema = z.strictObject({ needs: z.array(needSchema) })
