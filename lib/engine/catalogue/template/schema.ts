import { z } from 'zod'
import { nameSchema, textSchema } from '../../design/primitives'
import { DECIDED_WHEN } from '../define-item'
import { findItem } from '../items'
import { findLimitProblem } from '../limits'

/** What a workspace may want of its own stays a list that people can answer: more is a mistake of a program. */
const MAX_OWN_ITEMS = 200

const saidSchema = textSchema.transform((text) => text.trim()).pipe(z.string().min(1, 'is empty'))
const questionSchema = saidSchema.pipe(z.string().max(300, 'is longer than 300 characters'))
const rolesSchema = z
  .array(z.enum(['member', 'lead', 'fabricator']))
  .min(1, 'names nobody who may answer')
  .max(3)
  .refine((roles) => new Set(roles).size === roles.length, 'names a role twice')

/** The prefix keeps own items apart from delivered ones, whatever later deliveries are called. */
export const OWN_ITEM_ID = /^own-[a-z0-9][a-z0-9-]{0,59}$/

/** An item that a workspace adds: a question for a person, who answers with evidence. */
export const ownItemSchema = z.strictObject({
  id: z.string().regex(OWN_ITEM_ID, 'is not the id of an own item'),
  section: z.enum(['materials', 'geometry', 'fabrication']),
  severity: z.enum(['blocking', 'major', 'minor', 'advice']),
  question: questionSchema,
  why: saidSchema,
  howToCheck: saidSchema,
  /** What the answer should rest on. */
  evidence: saidSchema,
  /** Where it comes from: a procedure, a lesson from an earlier part. */
  ground: nameSchema,
  decidedWhen: z.enum(DECIDED_WHEN),
  answeredBy: rolesSchema,
})
export type OwnItem = z.infer<typeof ownItemSchema>

/** What a workspace changes about a delivered item. Its id, its calculation and its severity are not for changing. */
export const itemChangeSchema = z.strictObject({
  itemId: z.string().min(1).max(80),
  isOff: z.boolean(),
  /** Why it is off or changed; shown with the item. */
  reason: saidSchema,
  /** Null keeps the delivered wording. */
  question: questionSchema.nullable(),
  why: saidSchema.nullable(),
  howToCheck: saidSchema.nullable(),
  /** Null keeps the delivered roles. */
  answeredBy: rolesSchema.nullable(),
})
export type ItemChange = z.infer<typeof itemChangeSchema>

const templateLimitSchema = z.strictObject({ key: z.string().min(1).max(80), value: z.number(), note: textSchema })
/** The catalogue as one workspace has it, apart from what was delivered. */
export const catalogueTemplateSchema = z.strictObject({
  ownItems: z.array(ownItemSchema).max(MAX_OWN_ITEMS, `holds more than ${MAX_OWN_ITEMS} own items`),
  itemChanges: z.array(itemChangeSchema),
  limits: z.array(templateLimitSchema),
})
export type CatalogueTemplate = z.infer<typeof catalogueTemplateSchema>

/** The catalogue as delivered. */
export const DELIVERED_TEMPLATE: CatalogueTemplate = { ownItems: [], itemChanges: [], limits: [] }

/**
 * What is wrong across the parts of a template, as sentences; empty when it can be used. A stored one is not asked: it
 * may name an item or a limit that a later delivery dropped, and is then passed over.
 */
export function findTemplateProblems(template: CatalogueTemplate): string[] {
  const problems: string[] = []
  const seen = new Set<string>()
  for (const { id, question } of template.ownItems) {
    if (seen.has(id)) problems.push(`The item "${question}" has the id of another own item.`)
    seen.add(id)
  }
  for (const change of template.itemChanges) {
    if (findItem(change.itemId) === null) problems.push(`There is no delivered item "${change.itemId}".`)
    if (seen.has(change.itemId)) problems.push(`The item "${change.itemId}" is changed twice.`)
    seen.add(change.itemId)
  }
  for (const { key, value } of template.limits) {
    const problem = findLimitProblem(key, value)
    if (problem !== null) problems.push(problem)
    if (seen.has(key)) problems.push(`The limit "${key}" is set twice.`)
    seen.add(key)
  }
  return problems
}
