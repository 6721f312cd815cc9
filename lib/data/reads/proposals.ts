import 'server-only'
import { type Design, parseDesign } from '@/lib/engine'
import {
  applyGuardedPatch,
  compareContents,
  describeOperations,
  isAllowed,
  type PatchOperation,
  type PatchProblem,
} from '@/lib/review'
import {
  type Actor,
  makeProposalSubject,
  mayOnRevision,
  maySeeProposal,
  type PersonRights,
  requireRevisionInView,
} from '../records/authorization'
import { loadDoneBases } from '../records/done-since'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { getProposedDesign, readProposal } from '../records/proposal-patch'
import type { TransactionClient } from '../store/client'
import { NotFoundError } from '../store/errors'
import type { ProposalView } from '../views'
import { listComparedQuestions, makeComparedContent, makeVariantContent } from './compared-content'
import { toProposalSummary } from './proposal-view'
import { read } from './read'
import { listThreadViews } from './thread-view'

/** `operation 2 of 6 (test /bends/0/insideRadiusMm): bend Hinge inside radius: ...` */
export function describeProblem({ operation, path, sentence }: PatchProblem, patch: readonly PatchOperation[]): string {
  return `operation ${operation} of ${patch.length} (${patch[operation - 1]?.op ?? ''} ${path}): ${sentence}`
}

/** A proposal for a person who may see it. */
export async function requireProposal(tx: TransactionClient, rights: PersonRights, proposalId: string) {
  const row = await tx.proposal.findUnique({ where: { id: proposalId } })
  if (row === null) throw new NotFoundError('proposal')
  const scope = await requireRevisionInView(tx, rights, row.revisionId, 'proposal')
  if (!maySeeProposal(rights, scope.subject, row)) throw new NotFoundError('proposal')
  return { row, scope }
}

/** A proposal with what it would come to, and whether it still applies. */
export function getProposal(actor: Actor, proposalId: string): Promise<ProposalView> {
  return read(actor, async ({ tx, rights }) => {
    const { row: found, scope } = await requireProposal(tx, rights, proposalId)
    const loaded = await loadRevision(tx, found.revisionId)
    const row = loaded.record.proposals.find(({ id }) => id === found.id)
    if (row === undefined) throw new NotFoundError('proposal')
    const { fabricatorCompanyId, subject } = scope
    const { base, patch } = await readProposal(tx, row)
    const isOpen = row.state === 'proposed'
    const { obstacles, design: applied } = isOpen ? tryOnPresent(loaded, patch, base) : { obstacles: [], design: null }
    const before =
      applied === null
        ? makeVariantContent(loaded, fabricatorCompanyId, base)
        : makeComparedContent(loaded, fabricatorCompanyId)
    const after = makeVariantContent(loaded, fabricatorCompanyId, applied ?? getProposedDesign(base, patch))
    const comparison = compareContents(before, after)
    const threads = listThreadViews(loaded, await loadDoneBases(tx, loaded.record), rights, scope)
    return {
      ...toProposalSummary(loaded.record, row),
      designVersion: loaded.record.designVersion,
      patch,
      operations: describeOperations(patch, base),
      obstacles,
      comparedWith: applied === null ? 'base' : 'present',
      comparison,
      questions: listComparedQuestions(comparison, [loaded]),
      thread: threads.find(({ id }) => id === row.threadId) ?? null,
      may: {
        decide: isOpen && mayOnRevision(rights, 'proposal:decide', subject),
        withdraw: isOpen && isAllowed(rights, 'proposal:withdraw', makeProposalSubject(subject, row)),
      },
    }
  })
}

function tryOnPresent(
  { design }: LoadedRevision,
  patch: readonly PatchOperation[],
  base: Design,
): { readonly obstacles: string[]; readonly design: Design | null } {
  const patched = applyGuardedPatch(design, patch, base)
  if (!patched.ok) {
    return { obstacles: patched.problems.map((problem) => describeProblem(problem, patch)), design: null }
  }
  const parsed = parseDesign(patched.document)
  if (!parsed.ok) return { obstacles: parsed.issues.map(({ message }) => message), design: null }
  return { obstacles: [], design: parsed.value }
}
