import 'server-only'
import { makeBlankDesign } from '@/lib/engine'
import { beginWithKept, findStartingConstruction, listStartingConstructions } from '@/lib/engine/starting-constructions'
import type { EvaluateAgainInput, ImportDesignInput, NewRevisionInput, SaveDesignInput } from '@/lib/inputs'
import { carryAuthorsOver, carryImportedAuthors, carryTakenAuthors } from '../../consequences/carry-authors'
import { carryNeedsOver } from '../../consequences/carry-needs'
import { carryAnswersOver } from '../../consequences/carry-over'
import { evaluateContentAgain } from '../../consequences/changed-content'
import { replaceDesign, requireDesignSeen, type SavedDesign } from '../../consequences/design-save'
import { type WriteContext, write } from '../../consequences/write'
import {
  type Actor,
  requireInWorkspace,
  requireProject,
  requireRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { listDesignAuthorIds } from '../../records/authors'
import { type CheckedDesign, checkDesign, checkDesignText, stampDesign } from '../../records/design-input'
import { recordEvaluation } from '../../records/evaluation'
import { findLibraryEntry } from '../../records/library-record'
import { loadRevision } from '../../records/loaded-revision'
import { foldName } from '../../records/names'
import { loadWorkspace } from '../../records/settings-record'
import { readProjectPolicy, writePolicy } from '../../records/sign-off-policy-record'
import { findLatestTemplateVersion } from '../../records/template-record'
import { outcomeOf, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * A new revision from a starting construction, a blank design, an imported document or a copy. A copy takes the design,
 * the artwork, and the answers for as long as their inputs are the same; it is reviewed again.
 */
export function createRevision(actor: Actor, input: NewRevisionInput): Promise<ActResult<{ revisionId: string }>> {
  return write(actor, 'create-revision', input, async (context) => {
    const { tx, rights, at, record } = context
    const project = await requireProject(tx, rights, input.projectId, 'revision:create')
    if (project.archivedAt !== null) {
      refuseClash('This project is archived. Bring it back before you begin a revision in it.')
    }
    const labelKey = foldName(input.label)
    const sameLabel = { projectId_labelKey: { projectId: project.id, labelKey } }
    if ((await tx.revision.findUnique({ where: sameLabel, select: { id: true } })) !== null) {
      refuseField('label', 'taken', `"${input.label}" is the label of another revision of this project`)
    }
    const {
      checked: first,
      basedOnId,
      copiedLabel = null,
      taken = null,
    } = await makeFirstDesign(context, input, project.name)
    const checked = stampDesign(first, input.label, copiedLabel)
    const { id: revisionId } = await tx.revision.create({
      data: {
        projectId: project.id,
        label: input.label,
        labelKey,
        stage: 'preparing',
        designJson: checked.designJson,
        designHash: checked.designHash,
        basedOnId,
        createdById: rights.userId,
        createdAt: at,
        stageSince: at,
        templateVersion: await findLatestTemplateVersion(tx),
        profilesJson: project.profilesJson,
        signOffPolicyJson: writePolicy(readProjectPolicy(project, (await loadWorkspace(tx)).settings)),
      },
    })
    if (basedOnId !== null) {
      await copyArtwork(context, basedOnId, revisionId)
      await carryAuthorsOver(context, basedOnId, revisionId)
      await carryAnswersOver(context, basedOnId, revisionId)
      await carryNeedsOver(context, basedOnId, revisionId)
    }
    if (taken !== null) await carryTakenAuthors(context, revisionId, taken.authorIds, taken.why)
    if (input.origin.kind === 'import') {
      await carryImportedAuthors(context, { projectId: project.id, revisionId, checked })
    }
    await recordEvaluation(tx, await loadRevision(tx, revisionId), at)
    await record({
      action: 'revision-created',
      subject: { kind: 'revision', id: revisionId },
      projectId: project.id,
      revisionId,
      details: { label: input.label, origin: input.origin.kind, basedOn: basedOnId, designHash: checked.designHash },
    })
    if (taken?.from !== undefined) {
      await record({
        action: 'design-copied-elsewhere',
        subject: { kind: 'revision', id: taken.from.id },
        projectId: taken.from.projectId,
        revisionId: taken.from.id,
        details: { label: taken.from.label, designHash: first.designHash, toRevisionId: revisionId },
      })
    }
    return { revisionId }
  })
}

interface FirstDesign {
  readonly checked: CheckedDesign
  /** The revision of the same project that it goes on from. */
  readonly basedOnId: string | null
  readonly copiedLabel?: string
  /** What was taken from elsewhere: those who made it stay its authors. */
  readonly taken?: {
    readonly authorIds: readonly string[]
    readonly why: string
    /** The revision of another project, whose people are to know. */
    readonly from?: { readonly id: string; readonly projectId: string; readonly label: string }
  }
}

async function makeFirstDesign(
  { tx, rights }: WriteContext,
  { origin, projectId }: NewRevisionInput,
  projectName: string,
): Promise<FirstDesign> {
  switch (origin.kind) {
    case 'blank':
      return { checked: checkDesign(makeBlankDesign(projectName)), basedOnId: null }
    case 'import':
      return { checked: checkDesignText(origin.designText), basedOnId: null }
    case 'starting-construction': {
      const construction = findStartingConstruction(origin.constructionId)
      if (construction === null) {
        const known = listStartingConstructions().map(({ id }) => id)
        refuseField('origin', 'unknown-construction', `is not a starting construction; there are ${known.join(', ')}`)
      }
      return { checked: checkDesign(construction.makeDesign(projectName)), basedOnId: null }
    }
    case 'kept-construction': {
      requireInWorkspace(rights, 'library:view')
      const kept = await findLibraryEntry(tx, origin.entryId)
      if (kept === null || kept.kind !== 'construction' || kept.isWithdrawn) {
        refuseField('origin', 'unknown-construction', 'is not a starting construction that the workspace offers')
      }
      const { design, authorIds, name } = kept.content
      return {
        checked: checkDesign(beginWithKept(design, projectName)),
        basedOnId: null,
        taken: { authorIds, why: `the starting construction “${name}” is theirs` },
      }
    }
    case 'copy': {
      const { revision } = await requireRevisionInView(tx, rights, origin.revisionId)
      if (revision.projectId !== projectId) return takeFromElsewhere(tx, rights, revision.id)
      const source = await tx.revision.findUniqueOrThrow({ where: { id: revision.id } })
      return { checked: checkDesignText(source.designJson), basedOnId: revision.id, copiedLabel: source.label }
    }
  }
}

/** The design alone: answers, waivers, artwork and needs are of the other project's review. */
async function takeFromElsewhere(
  tx: WriteContext['tx'],
  rights: WriteContext['rights'],
  revisionId: string,
): Promise<FirstDesign> {
  const { revision } = await requireRevision(tx, rights, revisionId, 'revision:copy-elsewhere')
  const { record } = await loadRevision(tx, revision.id)
  return {
    checked: checkDesignText(record.designJson),
    basedOnId: null,
    copiedLabel: record.label,
    taken: {
      authorIds: listDesignAuthorIds(record),
      why: `the design was taken over from revision ${record.label} of another project`,
      from: { id: revision.id, projectId: revision.projectId, label: record.label },
    },
  }
}

async function copyArtwork({ tx, rights, at }: WriteContext, fromId: string, toId: string): Promise<void> {
  const files = await tx.artwork.findMany({ where: { revisionId: fromId, removedAt: null }, orderBy: { id: 'asc' } })
  for (const { sha256, originalName, sizeBytes, mediaType } of files) {
    await tx.artwork.create({
      data: {
        revisionId: toId,
        sha256,
        originalName,
        sizeBytes,
        mediaType,
        uploadedById: rights.userId,
        createdAt: at,
      },
    })
  }
  const roles = await tx.artworkRole.findMany({
    where: { revisionId: fromId, withdrawnAt: null },
    orderBy: { id: 'asc' },
  })
  for (const { fileName, sha256, role, side, layerNumber, setById, setAt } of roles) {
    await tx.artworkRole.create({
      data: { revisionId: toId, fileName, sha256, role, side, layerNumber, setById, setAt },
    })
  }
}

/**
 * Checks references, saves, evaluates, stores the results and voids signatures that no longer cover the content.
 * `seenVersion` is the design's version; a design that is the same as the stored one changes nothing.
 */
export function saveDesign(actor: Actor, input: SaveDesignInput): Promise<ActResult<SavedDesign>> {
  return outcomeWith(
    () => checkDesign(input.design),
    (checked) => storeDesign(actor, 'save-design', input, checked),
  )
}

/** Replaces the design by an imported document. */
export function importDesign(actor: Actor, input: ImportDesignInput): Promise<ActResult<SavedDesign>> {
  return outcomeWith(
    () => checkDesignText(input.designText),
    (checked) => storeDesign(actor, 'import-design', input, checked),
  )
}

/** Checks outside the transaction what needs no database, so that a large bad file holds nobody up. */
async function outcomeWith<C, T>(check: () => C, run: (checked: C) => Promise<ActResult<T>>): Promise<ActResult<T>> {
  const checked = await outcomeOf(async () => check())
  return checked.ok ? run(checked.value) : checked
}

async function storeDesign(
  actor: Actor,
  action: 'save-design' | 'import-design',
  input: Pick<SaveDesignInput, 'revisionId' | 'seenVersion' | 'requestKey'>,
  checked: CheckedDesign,
): Promise<ActResult<SavedDesign>> {
  return write(actor, action, { ...input, designHash: checked.designHash }, async (context) => {
    const { tx, rights } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'revision:edit')
    const stored = await loadRevision(tx, revision.id)
    requireDesignSeen(stored, input.seenVersion)
    if (action === 'save-design') return replaceDesign(context, stored, checked, 'design-saved')
    const at = { projectId: revision.projectId, revisionId: revision.id, checked }
    return replaceDesign(context, stored, checked, 'design-imported', () => carryImportedAuthors(context, at))
  })
}

/** With the present engine, limits and day. */
export async function evaluateAgain(actor: Actor, input: EvaluateAgainInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'evaluate-again', input, async (context) => {
    const { revision } = await requireRevision(context.tx, context.rights, input.revisionId, 'revision:edit')
    const stored = await loadRevision(context.tx, revision.id)
    // A design from before its letter followed the label is put right here.
    if (stored.design.brief.revisionLabel !== stored.record.label && stored.design.brief.revisionLabel !== '') {
      await replaceDesign(context, stored, checkDesign(stored.design), 'design-saved')
    }
    return evaluateContentAgain(context, revision.id)
  })
}
