import 'server-only'
import isSame from 'fast-deep-equal'
import { findOwnMaterialIssues, type Material, makeOwnMaterialId } from '@/lib/engine/design'
import { makeKeptConstruction } from '@/lib/engine/starting-constructions'
import type { KeepConstructionInput, SaveOwnMaterialInput, WithdrawLibraryEntryInput } from '@/lib/inputs'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireInWorkspace, requireRevision } from '../../records/authorization'
import { listDesignAuthorIds } from '../../records/authors'
import { checkDesign } from '../../records/design-input'
import {
  findLibraryEntry,
  getMaterial,
  type LibraryContent,
  type LibraryKind,
  type LibraryRecord,
  listOffered,
  makeMaterialContent,
  writeLibraryContent,
} from '../../records/library-record'
import { loadRevision } from '../../records/loaded-revision'
import { foldName } from '../../records/names'
import { NotFoundError, refuseField, refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

export interface SavedLibraryEntry {
  readonly entryId: string
  /** The new version; the old one where nothing changed. */
  readonly version: number
}

/** So many of a kind at a time: every editor of a construction gets the materials along. Our choice. */
const MAX_OFFERED: Readonly<Record<LibraryKind, number>> = { material: 200, construction: 100 }

/** A new material of the workspace's own, or a new version of one. Designs keep the version that they took. */
export function saveOwnMaterial(actor: Actor, input: SaveOwnMaterialInput): Promise<ActResult<SavedLibraryEntry>> {
  return write(actor, 'save-own-material', input, async (context) => {
    requireInWorkspace(context.rights, 'library:edit')
    const present =
      input.entryId === null ? null : await requireEntrySeen(context, { ...input, entryId: input.entryId })
    if (present !== null && present.kind !== 'material') throw new NotFoundError('material')
    const issues = findOwnMaterialIssues(input.material)
    if (issues.length > 0) refuseInvalid(issues.map((issue) => ({ ...issue, path: ['material', ...issue.path] })))
    const offered = await requireFreeName(context, 'material', input.material.name, ['material', 'name'], present)
    const entryId = present?.entryId ?? (await makeEntryId(context, input.material.name))
    const version = (present?.version ?? 0) + 1
    const material: Material = { ...input.material, id: makeOwnMaterialId(entryId, version) }
    if (present !== null && isSame({ ...getMaterial(present), id: material.id }, material)) {
      return { entryId, version: present.version }
    }
    if (present === null) requireRoom('material', offered)
    // The reading of a design is asked as well, so that nothing is kept that no design could hold.
    const content = makeMaterialContent(material)
    checkDesign(content.design)
    await storeEntry(context, { kind: 'material', entryId, version, content, reason: input.reason })
    await context.record({
      action: 'material-saved',
      subject: { kind: 'library', id: entryId },
      details: { name: material.name, version, reason: input.reason },
    })
    return { entryId, version }
  })
}

/** Keeps layers, zones and bends of a revision as a starting construction for every team of the workspace. */
export function keepConstruction(actor: Actor, input: KeepConstructionInput): Promise<ActResult<SavedLibraryEntry>> {
  return write(actor, 'keep-construction', input, async (context) => {
    const { tx, rights, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'construction:keep')
    requireInWorkspace(rights, 'library:edit')
    const stored = await loadRevision(tx, revision.id)
    if (stored.record.designVersion !== input.seenVersion) {
      refuseStale(input.seenVersion, stored.record.designVersion, [], 'the design')
    }
    if (stored.design.construction.layers.length === 0 || stored.design.construction.zones.length === 0) {
      refuseField('revisionId', 'empty', 'has no layers or no zones yet: there is no construction to keep')
    }
    requireRoom('construction', await requireFreeName(context, 'construction', input.name, ['name'], null))
    const entryId = await makeEntryId(context, input.name)
    const { design } = checkDesign({ ...makeKeptConstruction(stored.design), name: input.name })
    const content: LibraryContent = {
      name: input.name,
      purpose: input.purpose,
      design,
      authorIds: listDesignAuthorIds(stored.record),
      from: { revisionId: revision.id, label: stored.record.label, designHash: stored.record.designHash },
    }
    await storeEntry(context, { kind: 'construction', entryId, version: 1, content, reason: input.purpose })
    await record({
      action: 'construction-kept',
      subject: { kind: 'revision', id: revision.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      details: { entryId, name: input.name, designHash: stored.record.designHash },
    })
    return { entryId, version: 1 }
  })
}

/** Offered no longer. What began with it, or is made of it, keeps its copy. */
export function withdrawLibraryEntry(
  actor: Actor,
  input: WithdrawLibraryEntryInput,
): Promise<ActResult<SavedLibraryEntry>> {
  return write(actor, 'withdraw-library-entry', input, async (context) => {
    requireInWorkspace(context.rights, 'library:edit')
    const { kind, entryId, version: seen, content } = await requireEntrySeen(context, input)
    const version = seen + 1
    await storeEntry(context, { kind, entryId, version, content, reason: input.reason, isWithdrawn: true })
    await context.record({
      action: 'library-entry-withdrawn',
      subject: { kind: 'library', id: entryId },
      details: { kind, name: content.name, reason: input.reason },
    })
    return { entryId, version }
  })
}

async function requireEntrySeen(
  { tx }: WriteContext,
  { entryId, seenVersion }: { readonly entryId: string; readonly seenVersion: number },
): Promise<LibraryRecord> {
  const present = await findLibraryEntry(tx, entryId)
  if (present === null) throw new NotFoundError('entry of the library')
  if (present.version !== seenVersion) {
    refuseStale(seenVersion, present.version, [], `"${present.content.name}"`)
  }
  if (present.isWithdrawn) throw new NotFoundError('entry of the library')
  return present
}

/** @returns what is offered of the kind */
async function requireFreeName(
  { tx }: WriteContext,
  kind: LibraryKind,
  name: string,
  path: readonly string[],
  self: LibraryRecord | null,
): Promise<readonly LibraryRecord[]> {
  const offered = await listOffered(tx, kind)
  const isTaken = offered.some(
    ({ entryId, content }) => entryId !== self?.entryId && foldName(content.name) === foldName(name),
  )
  if (isTaken) {
    refuseInvalid([{ code: 'taken', path: [...path], message: `the workspace has another ${kind} "${name}"` }])
  }
  return offered
}

function requireRoom(kind: LibraryKind, offered: readonly LibraryRecord[]): void {
  if (offered.length >= MAX_OFFERED[kind]) {
    refuseField('name', 'too-many', `the workspace keeps at most ${MAX_OFFERED[kind]} of them; withdraw one first`)
  }
}

/** So many letters of the name, which leaves room for number and version within the length of an id in a design. */
const MAX_STEM = 22

/** From the name, so that it can be read in a design file; never that of an entry which was there before. */
async function makeEntryId({ tx }: WriteContext, name: string): Promise<string> {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, MAX_STEM)
    .replace(/-+$/, '')
  const count = await tx.libraryEntry.count({ where: { version: 1 } })
  return `own-${words === '' ? '' : `${words}-`}${count + 1}`
}

async function storeEntry(
  { tx, rights, at }: WriteContext,
  entry: Pick<LibraryRecord, 'kind' | 'entryId' | 'version' | 'content' | 'reason'> & {
    readonly isWithdrawn?: boolean
  },
): Promise<void> {
  const { content, ...row } = entry
  await tx.libraryEntry.create({
    data: { ...row, contentJson: writeLibraryContent(content), changedById: rights.userId, changedAt: at },
  })
}
