import { z } from 'zod'
import { findFieldPattern, isNumericField } from '../../design'
import { nameSchema, textSchema } from '../../design/primitives'
import { findFlexTestIssues, flexTestRowSchema, MAX_FLEX_TEST_ROWS } from '../../flex-tests'
import { ITEM_SECTIONS } from '../../results'
import { SOURCES } from '../../sources'
import { DECIDED_WHEN } from '../define-item'
import { findItem } from '../items'
import { findLimitProblem } from '../limits'
import { DELIVERED_PROFILES, PROFILE_ITEM_IDS, type Profile } from '../profiles'
import { findKind } from './own-check'

/** What a workspace may want of its own stays a list that people can answer: more is a mistake of a program. */
const MAX_OWN_ITEMS = 200
/** Of kinds of parts that one house builds. Our choice. */
const MAX_PROFILES = 40
const MAX_PROFILE_ENTRIES = 400
/** Of one edition as JSON: it travels as a file and is read with every review. Our choice. */
export const MAX_CATALOGUE_CHARACTERS = 400_000

const saidSchema = textSchema.transform((text) => text.trim()).pipe(z.string().min(1, 'is empty'))
const questionSchema = saidSchema.pipe(z.string().max(300, 'is longer than 300 characters'))
const severitySchema = z.enum(['blocking', 'major', 'minor', 'advice'])
const rolesSchema = z
  .array(z.enum(['member', 'lead', 'fabricator']))
  .min(1, 'names nobody who may answer')
  .max(3)
  .refine((roles) => new Set(roles).size === roles.length, 'names a role twice')

/** The prefix keeps own items and profiles apart from delivered ones, whatever later deliveries are called. */
export const OWN_ID = /^own-[a-z0-9][a-z0-9-]{0,59}$/

const whereSchema = z.strictObject({ field: z.string().min(1).max(80), value: z.string().min(1).max(80) }).nullable()
const fieldSchema = z.string().min(1).max(120)
type Where = z.infer<typeof whereSchema>
type Refusing = z.core.$RefinementCtx

/*
 * What is entered is checked against the fields, kinds and sources that there are; what is stored is not: a later delivery may have dropped one, and
 * the item then says that it cannot be computed.
 */
function checkField(field: string, where: Where, path: readonly (string | number)[], context: Refusing) {
  const refuse = (at: string, message: string) => context.addIssue({ code: 'custom', path: [...path, at], message })
  if (findFieldPattern(field) === null) refuse('field', 'is not a field of the design')
  else if (where !== null && findKind(field, where) === null)
    refuse('where', `is not a kind that entries of "${field}" have`)
}

/** A number of the design against a limit, which is in the field's own unit. */
const checkSchema = z.strictObject({
  field: fieldSchema,
  where: whereSchema,
  sense: z.enum(['at-least', 'at-most', 'within']),
  value: z.number('must be a number'),
  /** Null unless the sense is `within`. */
  upperValue: z.number('must be a number').nullable(),
})

function checkOwnCheck(check: z.infer<typeof checkSchema>, context: Refusing) {
  const { sense, value, upperValue } = check
  const refuse = (at: string, message: string) => context.addIssue({ code: 'custom', path: ['check', at], message })
  checkField(check.field, check.where, ['check'], context)
  const field = findFieldPattern(check.field)
  if (field !== null && !isNumericField(field)) refuse('field', 'holds no single number')
  if (sense !== 'within' && upperValue !== null) refuse('upperValue', 'belongs to a limit between two values alone')
  if (sense === 'within' && upperValue === null) refuse('upperValue', 'is needed: the limit lies between two values')
  if (upperValue !== null && upperValue < value) refuse('upperValue', 'is below the lower end')
}

const OWN_ITEM_FIELDS = {
  section: z.enum(ITEM_SECTIONS),
  severity: severitySchema,
  question: questionSchema,
  why: saidSchema,
  howToCheck: saidSchema,
  /** What the answer should rest on; may be empty where the item is computed. */
  evidence: textSchema.transform((text) => text.trim()),
  /** Where it comes from: a procedure, a lesson from an earlier part. */
  ground: nameSchema,
  decidedWhen: z.enum(DECIDED_WHEN),
  answeredBy: rolesSchema,
  /** Absent in a question for a person. */
  check: checkSchema.optional(),
  /** Asked only where a profile switches it on. */
  onlyWithProfile: z.literal(true).optional(),
}

function checkOwnItem(
  { check, evidence }: { check?: z.infer<typeof checkSchema> | undefined; evidence: string },
  context: Refusing,
) {
  if (check !== undefined) checkOwnCheck(check, context)
  else if (evidence === '') context.addIssue({ code: 'custom', path: ['evidence'], message: 'is empty' })
}

/** An own item before it has an id. */
export const newOwnItemSchema = z.strictObject(OWN_ITEM_FIELDS).superRefine(checkOwnItem)

const storedOwnItemSchema = z.strictObject({
  id: z.string().regex(OWN_ID, 'is not the id of an own item'),
  ...OWN_ITEM_FIELDS,
})

/** An item that a workspace adds: a question for a person, who answers with evidence, or a field against a limit. */
export const ownItemSchema = storedOwnItemSchema.superRefine(checkOwnItem)
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

const profileItemSchema = z.strictObject({
  itemId: z.string().min(1).max(80),
  asked: z.enum(['on', 'off']).nullable(),
  severity: severitySchema.nullable(),
  decidedWhen: z.enum(DECIDED_WHEN).nullable(),
  isForEveryDesign: z.boolean(),
  reason: saidSchema,
})

const profileLimitSchema = z.strictObject({
  key: z.string().min(1).max(80),
  value: z.number('must be a number'),
  isRelaxed: z.boolean(),
  sourceKey: z.string().min(1).max(80),
  note: textSchema,
})

const requiredFieldSchema = z.strictObject({ field: fieldSchema, where: whereSchema, reason: saidSchema })

const PROFILE_FIELDS = {
  name: nameSchema,
  purpose: saidSchema,
  items: z.array(profileItemSchema).max(MAX_PROFILE_ENTRIES),
  limits: z.array(profileLimitSchema).max(MAX_PROFILE_ENTRIES),
  requiredFields: z.array(requiredFieldSchema).max(MAX_PROFILE_ENTRIES),
  // Absent in catalogues from before there were such demands.
  requiredSignatures: z
    .int('must be a whole number')
    .min(1, 'must be at least 1')
    .max(10, 'must be at most 10')
    .nullish(),
  leastSurvivalPct: z
    .number('must be a number')
    .gt(0, 'must be greater than 0 %')
    .lt(100, 'must be less than 100 %')
    .nullish(),
}

function checkProfile({ limits, requiredFields }: Pick<Profile, 'limits' | 'requiredFields'>, context: Refusing) {
  limits.forEach(({ sourceKey }, index) => {
    if (Object.hasOwn(SOURCES, sourceKey)) return
    const path = ['limits', index, 'sourceKey']
    context.addIssue({ code: 'custom', path, message: 'is not a source that the program knows' })
  })
  requiredFields.forEach(({ field, where }, index) => {
    checkField(field, where, ['requiredFields', index], context)
  })
}

/** A profile before it has an id. */
export const newProfileSchema = z.strictObject(PROFILE_FIELDS).superRefine(checkProfile)

const storedProfileSchema = z.strictObject({
  id: z.string().regex(OWN_ID, 'is not the id of an own profile'),
  ...PROFILE_FIELDS,
})

/** A profile of the workspace's own. */
export const profileSchema = storedProfileSchema.superRefine(checkProfile)

const templateLimitSchema = z.strictObject({ key: z.string().min(1).max(80), value: z.number(), note: textSchema })
const mostOwnItems = `holds more than ${MAX_OWN_ITEMS} own items`
const mostProfiles = `holds more than ${MAX_PROFILES} profiles`
const CHANGES = {
  itemChanges: z.array(itemChangeSchema).max(MAX_PROFILE_ENTRIES),
  limits: z.array(templateLimitSchema).max(MAX_PROFILE_ENTRIES),
}

/** The catalogue as one workspace has it, apart from what was delivered; as it is read from where it is kept. */
export const catalogueTemplateSchema = z.strictObject({
  ownItems: z.array(storedOwnItemSchema).max(MAX_OWN_ITEMS, mostOwnItems),
  ...CHANGES,
  /** Absent where the workspace has none of its own, as in versions from before there were any. */
  profiles: z.array(storedProfileSchema).max(MAX_PROFILES, mostProfiles).optional(),
  /** Flex tests of the workspace's own; left out where there are none, so that versions from before hash as they did. */
  flexTests: z.array(flexTestRowSchema).max(MAX_FLEX_TEST_ROWS).optional(),
})
export type CatalogueTemplate = z.infer<typeof catalogueTemplateSchema>

/** The same as it comes in from elsewhere, all checked. */
export const enteredTemplateSchema = z.strictObject({
  ownItems: z.array(ownItemSchema).max(MAX_OWN_ITEMS, mostOwnItems),
  ...CHANGES,
  profiles: z.array(profileSchema).max(MAX_PROFILES, mostProfiles).optional(),
  flexTests: z.array(flexTestRowSchema).max(MAX_FLEX_TEST_ROWS).optional(),
})

/** The catalogue as delivered. */
export const DELIVERED_TEMPLATE: CatalogueTemplate = { ownItems: [], itemChanges: [], limits: [] }

/**
 * What is wrong across the parts of a template, as sentences; empty when it can be used. A stored one is not asked: it
 * may name an item or a limit that a later delivery dropped, and is then passed over.
 */
export function findTemplateProblems(template: CatalogueTemplate): string[] {
  const problems: string[] = []
  const seen = new Set<string>()
  // The file has some lines more than its content.
  if (JSON.stringify(template).length > MAX_CATALOGUE_CHARACTERS - 1000) {
    problems.push(`The catalogue has more than ${MAX_CATALOGUE_CHARACTERS} characters.`)
  }
  for (const { id, question } of template.ownItems) {
    if (seen.has(id)) problems.push(`The item "${question}" has the id of another own item.`)
    seen.add(id)
  }
  const own = new Set(seen)
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
  for (const { row, message } of findFlexTestIssues(template.flexTests ?? [])) {
    problems.push(`Row ${row + 1} of the flex tests: ${message}.`)
  }
  const profiles = template.profiles ?? []
  const names = new Set(DELIVERED_PROFILES.map(({ name }) => name.toLowerCase()))
  for (const profile of profiles) {
    if (names.has(profile.name.toLowerCase())) problems.push(`There is another profile "${profile.name}".`)
    names.add(profile.name.toLowerCase())
    if (seen.has(`profile ${profile.id}`)) problems.push(`The profile "${profile.name}" has the id of another one.`)
    seen.add(`profile ${profile.id}`)
    problems.push(...findProfileProblems(profile, own).map((problem) => `Profile "${profile.name}": ${problem}`))
  }
  return problems
}

function findProfileProblems(profile: Profile, ownItemIds: ReadonlySet<string>): string[] {
  const problems: string[] = []
  const seen = new Set<string>()
  const once = (key: string, what: string) => {
    if (seen.has(key)) problems.push(`${what} stands there twice.`)
    seen.add(key)
  }
  for (const { itemId, asked, severity, decidedWhen, isForEveryDesign } of profile.items) {
    once(`item ${itemId}`, `item "${itemId}"`)
    if (findItem(itemId) === null && !ownItemIds.has(itemId)) problems.push(`there is no item "${itemId}".`)
    if (PROFILE_ITEM_IDS.includes(itemId)) problems.push(`item "${itemId}" is made from the required fields.`)
    if (asked === null && severity === null && decidedWhen === null && !isForEveryDesign) {
      problems.push(`item "${itemId}" is named and nothing about it changes.`)
    }
  }
  for (const { key, value } of profile.limits) {
    once(`limit ${key}`, `limit "${key}"`)
    const problem = findLimitProblem(key, value)
    if (problem !== null) problems.push(problem)
  }
  for (const { field, where } of profile.requiredFields) {
    once(`field ${JSON.stringify([field, where])}`, `required field "${field}"`)
  }
  return problems
}
