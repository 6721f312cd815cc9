import 'server-only'
import type { CatalogueTemplate } from '@/lib/engine/catalogue'
import type { ImportCatalogueInput } from '@/lib/inputs'
import { readCatalogueFile } from '@/lib/review'
import { type WriteContext, write } from '../../consequences/write'
import { WORKSPACE_OWNER } from '../../reads/limits'
import type { Actor } from '../../records/authorization'
import { readTemplate } from '../../records/template-record'
import { refuseClash, refuseInvalid } from '../../store/errors'
import type { ActResult } from '../../views'
import { listFollowedIds } from './profiles'
import { type ChangedTemplate, requireCatalogueSeen, storeTemplate } from './templates'

/**
 * Takes over a catalogue from a file in place of the workspace's, as a new version: own items, changes of delivered ones, limits and profiles, all or
 * nothing. Reviews that are under way keep theirs.
 */
export function importCatalogue(actor: Actor, input: ImportCatalogueInput): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'import-catalogue', input, async (context) => {
    const latest = await requireCatalogueSeen(context, input.seenVersion)
    const read = readCatalogueFile(input.text)
    if (!read.ok) refuseInvalid(read.issues, 'The file cannot be imported.')
    const { content } = read
    await refuseForeignAnswers(context, latest.content, content)
    await refuseFollowedProfiles(context, content)
    await replaceLimits(context, content)
    return storeTemplate(context, content, input.reason)
  })
}

/** An own item of the file whose id stood for another question here: its answers were given to that one. */
async function refuseForeignAnswers(
  { tx }: WriteContext,
  before: CatalogueTemplate,
  after: CatalogueTemplate,
): Promise<void> {
  const known = new Map(before.ownItems.map(({ id, question }) => [id, question]))
  const strange = after.ownItems.filter(({ id, question }) => known.get(id) !== question)
  if (strange.length === 0) return
  const ids = strange.map(({ id }) => id)
  const answers = await tx.answer.findMany({ where: { itemId: { in: ids } }, select: { itemId: true } })
  const answered = new Set(answers.map(({ itemId }) => itemId))
  if (answered.size === 0) return
  const versions = await tx.catalogueTemplate.findMany({ select: { contentJson: true } })
  const asked = versions.flatMap(({ contentJson }) => readTemplate(contentJson).ownItems)
  const clash = strange.find(
    ({ id, question }) => answered.has(id) && !asked.some((item) => item.id === id && item.question === question),
  )
  if (clash !== undefined) {
    const index = after.ownItems.findIndex(({ id }) => id === clash.id)
    const message = `There are answers here to another item "${clash.id}"`
    refuseClash(message, [{ path: ['content', 'ownItems', index, 'id'], code: 'taken', message }])
  }
}

async function refuseFollowedProfiles({ tx }: WriteContext, { profiles = [] }: CatalogueTemplate): Promise<void> {
  const kept = new Set(profiles.map(({ id }) => id))
  for (const [id, projects] of await listFollowedIds(tx)) {
    if (!id.startsWith('own-') || kept.has(id)) continue
    refuseClash(
      `The file has no profile "${id}", which projects follow: ${projects.join(', ')}. Choose others there first.`,
    )
  }
}

/** The workspace's limits are rows of their own; a version of the catalogue holds what they were. */
async function replaceLimits({ tx, rights, at }: WriteContext, { limits }: CatalogueTemplate): Promise<void> {
  const stored = await tx.limit.findMany({ where: { companyId: null }, orderBy: { key: 'asc' } })
  const wanted = new Map(limits.map((limit) => [limit.key, limit]))
  for (const { key } of stored) {
    if (wanted.has(key)) continue
    await tx.limit.delete({ where: { ownerKey_key: { ownerKey: WORKSPACE_OWNER, key } } })
  }
  for (const { key, value, note } of limits) {
    const before = stored.find((row) => row.key === key)
    if (before !== undefined && before.value === value && before.note === note) continue
    const fields = { value, note, version: (before?.version ?? 0) + 1, setById: rights.userId, setAt: at }
    await tx.limit.upsert({
      where: { ownerKey_key: { ownerKey: WORKSPACE_OWNER, key } },
      create: { ownerKey: WORKSPACE_OWNER, companyId: null, key, ...fields },
      update: fields,
    })
  }
}
