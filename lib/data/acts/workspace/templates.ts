import 'server-only'
import isSame from 'fast-deep-equal'
import { type CatalogueTemplate, findItem, findTemplateProblems, type OwnItem } from '@/lib/engine/catalogue'
import { readItemProse } from '@/lib/engine/catalogue/prose'
import { findFlexTestIssues } from '@/lib/engine/flex-tests'
import type {
  AddOwnItemInput,
  ChangeDeliveredItemInput,
  ChangeOwnItemInput,
  RemoveOwnItemInput,
  SaveWorkspaceFlexTestsInput,
} from '@/lib/inputs'
import { compareTemplates } from '@/lib/review'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { loadLatestTemplate, type TemplateRecord } from '../../records/template-record'
import { NotFoundError, refuseClash, refuseField, refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

export interface ChangedTemplate {
  /** The new version; the old one where nothing changed. */
  readonly version: number
}

/** Adds an item of the workspace's own. Reviews that are under way keep their version until they are brought up to it. */
export function addOwnItem(
  actor: Actor,
  input: AddOwnItemInput,
): Promise<ActResult<ChangedTemplate & { itemId: string }>> {
  return write(actor, 'add-own-item', input, async (context) => {
    const { content, version } = await requireCatalogueSeen(context, input.seenVersion)
    const item: OwnItem = { ...input.item, id: await makeOwnItemId(context, input.item.question, version) }
    const after = { ...content, ownItems: [...content.ownItems, item] }
    return { ...(await storeTemplate(context, after, item.ground)), itemId: item.id }
  })
}

export function changeOwnItem(actor: Actor, input: ChangeOwnItemInput): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'change-own-item', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    requireOwnItem(content, input.item.id)
    const ownItems = content.ownItems.map((item) => (item.id === input.item.id ? input.item : item))
    return storeTemplate(context, { ...content, ownItems }, input.reason)
  })
}

export function removeOwnItem(actor: Actor, input: RemoveOwnItemInput): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'remove-own-item', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    requireOwnItem(content, input.itemId)
    const ownItems = content.ownItems.filter(({ id }) => id !== input.itemId)
    return storeTemplate(context, { ...content, ownItems }, input.reason)
  })
}

/** Rewords a delivered item, changes who answers it, or switches it off with a reason. Its calculation stays. */
export function changeDeliveredItem(
  actor: Actor,
  input: ChangeDeliveredItemInput,
): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'change-delivered-item', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    const { change } = input
    const delivered = findItem(change.itemId)
    if (delivered === null) throw new NotFoundError('item')
    const prose = readItemProse(delivered)
    // What is as delivered is not stored, so that a later delivery's better wording comes through.
    const own = <T>(value: T | null, usual: T) => (isSame(value, usual) ? null : value)
    const stored = {
      ...change,
      question: own(change.question, delivered.question),
      why: own(change.why, prose.why),
      howToCheck: own(change.howToCheck, prose.howToCheck),
      answeredBy: own(change.answeredBy, [...delivered.answeredBy]),
    }
    const isAsDelivered =
      !stored.isOff &&
      [stored.question, stored.why, stored.howToCheck, stored.answeredBy].every((part) => part === null)
    const others = content.itemChanges.filter(({ itemId }) => itemId !== change.itemId)
    const itemChanges = isAsDelivered ? others : [...others, stored]
    return storeTemplate(context, { ...content, itemChanges }, change.reason)
  })
}

/** Flex tests of the workspace's own, as a version of the catalogue: reviews under way keep theirs until they are brought up to it. */
export function saveWorkspaceFlexTests(
  actor: Actor,
  input: SaveWorkspaceFlexTestsInput,
): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'save-workspace-flex-tests', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    const issues = findFlexTestIssues(input.rows)
    if (issues.length > 0) {
      refuseInvalid(issues.map(({ row, field, code, message }) => ({ code, path: ['rows', row, field], message })))
    }
    const { flexTests: _before, ...others } = content
    // None is stored as none, so that a version without them is what it was before there were any.
    return storeTemplate(context, input.rows.length === 0 ? others : { ...others, flexTests: input.rows }, input.reason)
  })
}

/** The limits of the workspace as they are now, as a version of the catalogue of their own. */
export async function storeWorkspaceLimits(context: WriteContext, reason: string): Promise<void> {
  const rows = await context.tx.limit.findMany({ where: { companyId: null }, orderBy: { key: 'asc' } })
  const { content } = await loadLatestTemplate(context.tx)
  const limits = rows.map(({ key, value, note }) => ({ key, value, note }))
  await storeTemplate(context, { ...content, limits }, reason)
}

export async function requireCatalogueSeen({ tx, rights }: WriteContext, seenVersion: number): Promise<TemplateRecord> {
  requireInWorkspace(rights, 'catalogue:edit')
  const latest = await loadLatestTemplate(tx)
  if (latest.version !== seenVersion) refuseStale(seenVersion, latest.version, [], 'the catalogue')
  return latest
}

function requireOwnItem(content: CatalogueTemplate, itemId: string): void {
  if (!content.ownItems.some(({ id }) => id === itemId)) throw new NotFoundError('item')
}

/** From the question, so that it can be read in a file; never that of an item which was there before. */
async function makeOwnItemId({ tx }: WriteContext, question: string, version: number): Promise<string> {
  const id = makeOwnId(question, 'item', version)
  const used = await tx.answer.findFirst({ where: { itemId: id }, select: { id: true } })
  if (used !== null) refuseClash(`There are answers to another item "${id}". Word the question differently.`)
  return id
}

/** @param version  before the change: the version that brings something in is its alone, so two never have the same id, not even after a removal */
export function makeOwnId(text: string, fallback: string, version: number): string {
  const words = text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-+$/, '')
  return `own-${[...(words === '' ? [fallback] : [words]), version + 1].join('-')}`
}

/** How many changes a version's summary spells out; the rest is a number. */
const MAX_CHANGES_IN_SUMMARY = 3

export async function storeTemplate(
  { tx, rights, at, record }: WriteContext,
  content: CatalogueTemplate,
  reason: string,
): Promise<ChangedTemplate> {
  const before = await loadLatestTemplate(tx)
  const problems = findTemplateProblems(content)
  if (problems.length > 0) refuseField('item', 'not-possible', problems.join(' '))
  const changes = compareTemplates(before.content, content).map(({ sentence }) => sentence)
  if (changes.length === 0 && isSame(before.content, content)) {
    return { version: before.version }
  }
  const rest = changes.length - MAX_CHANGES_IN_SUMMARY
  const summary =
    changes.length === 0
      ? 'notes changed'
      : `${changes.slice(0, MAX_CHANGES_IN_SUMMARY).join('; ')}${rest > 0 ? `; and ${rest} more` : ''}`
  const version = before.version + 1
  await tx.catalogueTemplate.create({
    data: {
      version,
      contentJson: JSON.stringify(content),
      summary,
      reason,
      changedById: rights.userId,
      changedAt: at,
    },
  })
  await record({
    action: 'catalogue-changed',
    subject: { kind: 'catalogue', id: String(version) },
    details: { version, summary, reason },
  })
  return { version }
}
