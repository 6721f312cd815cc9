import 'server-only'
import type { Compared } from '@/lib/inputs'
import { type ComparedContent, compareContents } from '@/lib/review'
import {
  type Actor,
  maySeeProposal,
  type PersonRights,
  type RevisionScope,
  requireProject,
  requireRevisionInView,
} from '../records/authorization'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { getProposedDesign, readProposal } from '../records/proposal-patch'
import type { TransactionClient } from '../store/client'
import { NotFoundError } from '../store/errors'
import type { ComparableView, ComparisonView } from '../views'
import { listComparedQuestions, makeComparedContent, makeSignedSide, makeVariantContent } from './compared-content'
import { read } from './read'

export interface ComparisonRequest {
  readonly projectId: string
  readonly from: Compared
  readonly to: Compared
}

interface Side {
  readonly view: ComparableView
  readonly content: ComparedContent
  readonly loaded: LoadedRevision
}

/**
 * Compares two contents of one project: revisions as they stand, as they were signed, as proposed. To a fabricator
 * nothing of another fabricator.
 */
export function compareInProject(actor: Actor, request: ComparisonRequest): Promise<ComparisonView> {
  return read(actor, async ({ tx, rights }) => {
    await requireProject(tx, rights, request.projectId)
    const from = await loadSide(tx, rights, request.projectId, request.from)
    const to = await loadSide(tx, rights, request.projectId, request.to)
    const comparison = compareContents(from.content, to.content)
    const questions = listComparedQuestions(comparison, [from.loaded, to.loaded])
    return { from: from.view, to: to.view, comparison, questions }
  })
}

async function loadSide(
  tx: TransactionClient,
  rights: PersonRights,
  projectId: string,
  { kind, id }: Compared,
): Promise<Side> {
  const requireScope = async (revisionId: string): Promise<RevisionScope> => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    if (scope.revision.projectId !== projectId) throw new NotFoundError('revision')
    return scope
  }
  const makeSide = (scope: RevisionScope, what: string, loaded: LoadedRevision, content: ComparedContent): Side => ({
    view: { ref: `${kind}:${id}`, label: labelOf(scope.revision.label, what), revisionId: scope.revision.id },
    content,
    loaded,
  })
  if (kind === 'revision') {
    const scope = await requireScope(id)
    const loaded = await loadRevision(tx, id)
    return makeSide(scope, '', loaded, makeComparedContent(loaded, scope.fabricatorCompanyId))
  }
  if (kind === 'signature') {
    const row = await tx.signature.findUnique({ where: { id } })
    if (row === null) throw new NotFoundError('signature')
    const scope = await requireScope(row.revisionId)
    const loaded = await loadRevision(tx, row.revisionId)
    const content = makeSignedSide(loaded, scope.fabricatorCompanyId, row.contentJson)
    return makeSide(scope, describeSignature(row), loaded, content)
  }
  const row = await tx.proposal.findUnique({ where: { id } })
  if (row === null) throw new NotFoundError('proposal')
  const scope = await requireScope(row.revisionId)
  if (!maySeeProposal(rights, scope.subject, row)) throw new NotFoundError('proposal')
  const { base, patch } = await readProposal(tx, row)
  const design = kind === 'base' ? base : getProposedDesign(base, patch)
  const loaded = await loadRevision(tx, row.revisionId)
  const content = makeVariantContent(loaded, scope.fabricatorCompanyId, design)
  return makeSide(scope, kind === 'base' ? describeBase(row) : describeProposal(row), loaded, content)
}

/** Everything in a project that the person may compare, newest revision first. */
export function listComparable(actor: Actor, projectId: string): Promise<readonly ComparableView[]> {
  return read(actor, async ({ tx, rights }) => {
    await requireProject(tx, rights, projectId)
    const rows = await tx.revision.findMany({
      where: { projectId },
      orderBy: { createdAt: 'desc' },
      select: {
        id: true,
        signatures: { select: { id: true, signerName: true, signedAt: true }, orderBy: { signedAt: 'desc' } },
        proposals: {
          select: { id: true, title: true, audienceCompanyId: true, proposedById: true, baseVersion: true },
          orderBy: { proposedAt: 'desc' },
        },
      },
    })
    const options: ComparableView[] = []
    for (const row of rows) {
      const scope = await findScope(tx, rights, row.id)
      if (scope === null) continue
      const add = (ref: string, what: string) =>
        options.push({ ref, label: labelOf(scope.revision.label, what), revisionId: row.id })
      add(`revision:${row.id}`, '')
      for (const signature of row.signatures) add(`signature:${signature.id}`, describeSignature(signature))
      for (const proposal of row.proposals) {
        if (!maySeeProposal(rights, scope.subject, proposal)) continue
        add(`base:${proposal.id}`, describeBase(proposal))
        add(`proposal:${proposal.id}`, describeProposal(proposal))
      }
    }
    return options
  })
}

async function findScope(
  tx: TransactionClient,
  rights: PersonRights,
  revisionId: string,
): Promise<RevisionScope | null> {
  try {
    return await requireRevisionInView(tx, rights, revisionId)
  } catch (error) {
    if (error instanceof NotFoundError) return null
    throw error
  }
}

const labelOf = (revisionLabel: string, what: string) =>
  what === '' ? `revision ${revisionLabel}, current` : `revision ${revisionLabel}, ${what}`
const describeSignature = (row: { signerName: string; signedAt: Date }) =>
  `as signed by ${row.signerName} on ${row.signedAt.toISOString().slice(0, 10)}`
const describeBase = (row: { title: string; baseVersion: number }) =>
  `version ${row.baseVersion}, before the proposal “${row.title}”`
const describeProposal = (row: { title: string }) => `as proposed in “${row.title}”`
