import 'server-only'
import { randomUUID } from 'node:crypto'
import type { Design, Issue } from '@/lib/engine'
import type { DecideProposalInput, ProposeChangeInput, WithdrawProposalInput } from '@/lib/inputs'
import {
  applyGuardedPatch,
  compareDesigns,
  type Done,
  makeDesignPatch,
  type PatchOperation,
  type PatchProblem,
} from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { MAX_CHANGES_IN_WORDS, replaceDesign, requireDesignSeen } from '../../consequences/design-save'
import { type WriteContext, write } from '../../consequences/write'
import type { Proposal } from '../../generated/sqlite/client'
import { describeProblem, requireProposal } from '../../reads/proposals'
import {
  type Actor,
  makeProposalSubject,
  type RevisionScope,
  requireAtStage,
  requireOnRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { type CheckedDesign, checkDesign } from '../../records/design-input'
import { keepDesignState } from '../../records/design-states'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { type ReadProposal, readProposal } from '../../records/proposal-patch'
import { getPersonName } from '../../records/revision-record'
import { outcomeOf, refuseClash, refuseField, refuseInvalid } from '../../store/errors'
import type { ActResult } from '../../views'
import { addComment, createThread, findAudience, getOwnCompanyId } from './threads'

/** Parts of the design that a proposal may change; own materials come along with the layers that are made of them. */
const PROPOSABLE_AREAS: readonly string[] = ['materials', 'construction', 'bends', 'features', 'plan']

/**
 * Proposes a change as an edit: kept as a patch on the design that the person saw, with a thread of its own. A
 * fabricator's is seen by the team and by its own company; the team's own as a thread of theirs is.
 */
export async function proposeChange(
  actor: Actor,
  input: ProposeChangeInput,
): Promise<ActResult<{ proposalId: string; threadId: string }>> {
  const checked = await outcomeOf(async () => checkDesign(input.design))
  if (!checked.ok) return checked
  const proposed = checked.value
  return write(actor, 'propose-change', { ...input, designHash: proposed.designHash }, async (context) => {
    const { tx, rights, at, record } = context
    const scope = await requireRevisionInView(tx, rights, input.revisionId)
    requireOnRevision(rights, scope, 'proposal:make')
    const stored = await loadRevision(tx, scope.revision.id)
    requireDesignSeen(stored, input.seenVersion)
    const changes = requireProposable(stored.design, proposed.design)
    const audienceCompanyId = scope.fabricatorCompanyId ?? findAudience(scope, input.companyId)
    const { designHash: hash, designJson, projectId, id: revisionId, designVersion } = stored.record
    const proposalId = randomUUID()
    const { value: threadId } = await changeContent(context, stored, null, async () => {
      await keepDesignState(tx, { hash, designJson }, at)
      const ownCompanyId = getOwnCompanyId(rights, projectId)
      const { thread } = await createThread(
        context,
        scope,
        stored,
        {
          audienceCompanyId,
          openedByCompanyId: ownCompanyId,
          anchorKind: 'proposal',
          anchorId: proposalId,
          anchorLabel: input.title,
          anchorXMm: null,
          anchorYMm: null,
          kind: input.kind,
          title: input.title,
        },
        input.why,
      )
      await tx.proposal.create({
        data: {
          id: proposalId,
          revisionId,
          audienceCompanyId,
          title: input.title,
          patchJson: JSON.stringify(makeDesignPatch(stored.design, proposed.design)),
          baseVersion: designVersion,
          baseHash: hash,
          state: 'proposed',
          threadId: thread.id,
          proposedById: rights.userId,
          proposedByCompanyId: ownCompanyId,
          proposedAt: at,
        },
      })
      await record({
        action: 'proposal-made',
        subject: { kind: 'proposal', id: proposalId },
        projectId,
        revisionId,
        companyId: audienceCompanyId ?? ownCompanyId,
        details: {
          title: input.title,
          baseVersion: designVersion,
          baseHash: hash,
          proposedHash: proposed.designHash,
          changeCount: changes.length,
          changes: changes.slice(0, MAX_CHANGES_IN_WORDS),
        },
      })
      return thread.id
    })
    return { proposalId, threadId }
  })
}

/** @returns what would change, a sentence each */
function requireProposable(present: Design, proposed: Design): string[] {
  const changes = compareDesigns(present, proposed)
  if (changes.length === 0) refuseField('design', 'unchanged', 'is the current design: change something first')
  const outside = changes.filter(({ area }) => !PROPOSABLE_AREAS.includes(area))
  if (outside.length > 0) {
    refuseInvalid(
      outside.map(({ path, sentence }) => ({
        code: 'not-proposable',
        path: ['design', ...path],
        message: `is not part of construction, bends or features: ${sentence}`,
      })),
      'A proposal can change construction, bends and features only.',
    )
  }
  return changes.map(({ sentence }) => sentence)
}

/**
 * Accepts or declines. Accepting applies the patch to the design as it stands, if it still applies: every value that it
 * was made on must still be there. It is a save like any other: checked, evaluated, voiding signatures.
 */
export function decideProposal(
  actor: Actor,
  input: DecideProposalInput,
): Promise<ActResult<{ designVersion: number; voidedSignatures: number }>> {
  return write(actor, 'decide-proposal', input, async (context) => {
    const { tx, rights } = context
    const { row, scope } = await requireProposal(tx, rights, input.proposalId)
    requireOnRevision(rights, scope, 'proposal:decide')
    const stored = await loadRevision(tx, row.revisionId)
    requireUndecided(stored, row)
    if (input.decision === 'decline') {
      await changeContent(context, stored, null, () => storeDecision(context, scope, row, { ...input, made: null }))
      return { designVersion: stored.record.designVersion, voidedSignatures: 0 }
    }
    requireDesignSeen(stored, input.seenVersion)
    const checked = applyProposal(stored, await readProposal(tx, row))
    const { designVersion, voidedSignatures } = await replaceDesign(context, stored, checked, 'design-saved', (made) =>
      storeDecision(context, scope, row, { ...input, made }),
    )
    return { designVersion, voidedSignatures }
  })
}

function requireUndecided({ record }: LoadedRevision, row: Proposal): void {
  if (row.state === 'proposed') return
  const who = row.decidedById === null ? 'somebody' : getPersonName(record, row.decidedById)
  refuseClash(`The proposal was already ${row.state} by ${who}.`)
}

function applyProposal(stored: LoadedRevision, { base, patch }: ReadProposal): CheckedDesign {
  const patched = applyGuardedPatch(stored.design, patch, base)
  if (!patched.ok) {
    refuseClash(
      'The proposal no longer applies to the current design. Nothing was changed.',
      patched.problems.map((problem) => toIssue(problem, patch)),
    )
  }
  return checkDesign(patched.document)
}

function toIssue(problem: PatchProblem, patch: readonly PatchOperation[]): Issue {
  return {
    code: `patch-${problem.code}`,
    path: ['patch', problem.operation - 1],
    message: describeProblem(problem, patch),
  }
}

interface StoredDecision {
  readonly decision: 'accept' | 'decline'
  readonly reason: string
  /** The design's version that accepting made. */
  readonly made: number | null
}

/** The proposal is settled, and so is its thread: closed with what was accepted, answered with why it was not. */
async function storeDecision(
  context: WriteContext,
  scope: RevisionScope,
  row: Proposal,
  { decision, reason, made }: StoredDecision,
): Promise<void> {
  const { tx, rights, at } = context
  const state = decision === 'accept' ? ('accepted' as const) : ('declined' as const)
  await tx.proposal.update({
    where: { id: row.id },
    data: { state, decidedById: rights.userId, decidedAt: at, decisionNote: reason, madeVersion: made },
  })
  const thread = await tx.thread.findUniqueOrThrow({ where: { id: row.threadId } })
  if (thread.state !== 'closed') {
    await addComment(context, scope, thread, {
      text: `${decision === 'accept' ? 'Accepted' : 'Declined'}: ${reason}`,
      isAnswer: true,
    })
    await tx.thread.update({
      where: { id: thread.id },
      data:
        decision === 'accept'
          ? {
              state: 'closed',
              closedById: rights.userId,
              closedAt: at,
              closeReason: 'the proposal was accepted',
              doneJson: writeDone({ kind: 'proposal', id: row.id, title: row.title }),
            }
          : { state: 'answered', answeredById: rights.userId, answeredAt: at },
    })
    await tx.thread.update({ where: { id: thread.id }, data: { version: { increment: 1 } } })
  }
  await recordProposal(context, row, { action: `proposal-${state}`, reason, made })
}

/** The proposer withdraws it; it stays readable. */
export function withdrawProposal(actor: Actor, input: WithdrawProposalInput): Promise<ActResult<null>> {
  return write(actor, 'withdraw-proposal', input, async (context) => {
    const { tx, rights, at } = context
    const { row, scope } = await requireProposal(tx, rights, input.proposalId)
    requireAtStage(rights, scope.subject, 'proposal:withdraw', (subject) => makeProposalSubject(subject, row))
    const stored = await loadRevision(tx, row.revisionId)
    requireUndecided(stored, row)
    await changeContent(context, stored, null, async () => {
      const settled = { decidedById: rights.userId, decidedAt: at, decisionNote: input.reason }
      await tx.proposal.update({ where: { id: row.id }, data: { state: 'withdrawn', ...settled } })
      await tx.thread.updateMany({
        where: { id: row.threadId, state: { not: 'closed' } },
        data: {
          state: 'closed',
          closedById: rights.userId,
          closedAt: at,
          closeReason: input.reason === '' ? 'the proposal was withdrawn' : `withdrawn: ${input.reason}`,
          doneJson: writeDone({ kind: 'no-change' }),
          version: { increment: 1 },
        },
      })
      await recordProposal(context, row, { action: 'proposal-withdrawn', reason: input.reason, made: null })
    })
    return null
  })
}

const writeDone = (done: Done) => JSON.stringify(done)

async function recordProposal(
  { tx, record }: WriteContext,
  row: Proposal,
  {
    action,
    reason,
    made,
  }: {
    action: 'proposal-accepted' | 'proposal-declined' | 'proposal-withdrawn'
    reason: string
    made: number | null
  },
): Promise<void> {
  const where = { id: row.revisionId }
  const { projectId } = await tx.revision.findUniqueOrThrow({ where, select: { projectId: true } })
  await record({
    action,
    subject: { kind: 'proposal', id: row.id },
    projectId,
    revisionId: row.revisionId,
    // What the team proposes among itself is no fabricator's to read in an extract of the trail.
    companyId: row.audienceCompanyId ?? row.proposedByCompanyId,
    details: { title: row.title, reason, ...(made === null ? {} : { designVersion: made }) },
  })
}
