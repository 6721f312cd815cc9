import { z } from 'zod'
import { nameSchema, textSchema } from '@/lib/engine/design'

/** An id that the database gave. Whatever else is sent in its place is not asked for: PostgreSQL refuses to compare a NUL. */
export const recordIdSchema = z
  .string()
  .min(1, 'is missing')
  .regex(/^[\w-]{1,60}$/, 'is not an id')

/** The version that the person saw when they began; a write on another version is refused as stale. */
export const seenVersionSchema = z.coerce.number().int('must be a whole number').min(0)

/** One per form shown: a retry or a double click carries the same key and does not do things twice. */
export const requestKeySchema = z
  .string()
  .regex(/^[A-Za-z0-9_-]{8,80}$/, 'must have 8 to 80 letters, digits, hyphens or underscores')
  .optional()

/** What acts on a revision begin with; `seenVersion` is the view's `version` unless the act says otherwise. */
export const onRevision = { revisionId: recordIdSchema, seenVersion: seenVersionSchema, requestKey: requestKeySchema }

/** For an act that takes nothing but the press of a button. */
export const actionInput = z.strictObject({ requestKey: requestKeySchema })

/** Text that must say something. */
export const saidTextSchema = textSchema.transform((text) => text.trim()).pipe(z.string().min(1, 'is empty'))

/** Text that may be left empty. */
export const optionalTextSchema = textSchema.transform((text) => text.trim())

export const emailSchema = z
  .string()
  .trim()
  .toLowerCase()
  .max(254, 'is longer than 254 characters')
  .pipe(z.email('is not an e-mail address such as name@example.org'))

/** NIST SP 800-63B (2017): length matters, composition rules do not; 128 bounds the work of hashing. */
export const newPasswordSchema = z
  .string()
  .min(12, 'must have at least 12 characters')
  .max(128, 'must have at most 128 characters')

export const passwordSchema = z.string().min(1, 'is empty').max(128, 'must have at most 128 characters')

export { nameSchema, textSchema }
