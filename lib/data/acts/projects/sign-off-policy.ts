import 'server-only'
import type { FollowSignOffPolicyInput, SetSignOffPolicyInput } from '@/lib/inputs'
import {
  combinePolicies,
  comparePolicies,
  OPEN_STAGES,
  type PinnedSignOffPolicy,
  type PolicyChange,
  type SignOffPolicy,
} from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireProject, requireRevision } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { loadWorkspace } from '../../records/settings-record'
import { readPinnedPolicy, readProjectPolicy, writePolicy } from '../../records/sign-off-policy-record'
import { refuseClash, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireRevisionSeen } from '../review/stage-moves'

/**
 * Sets what a project asks of its sign-off. What is tightened holds at once in every open revision; what is loosened reaches
 * one only when a lead puts it under the new policy. Either way each open revision's trail says so.
 */
export function setSignOffPolicy(actor: Actor, input: SetSignOffPolicyInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'set-sign-off-policy', input, async (context) => {
    const { tx, rights, record } = context
    const { id } = await requireProject(tx, rights, input.projectId, 'policy:edit')
    const project = await tx.project.findUniqueOrThrow({ where: { id } })
    const before = readProjectPolicy(project, (await loadWorkspace(tx)).settings)
    if (before.version !== input.seenVersion) {
      refuseStale(input.seenVersion, before.version, [], "the project's sign-off policy")
    }
    const rules = toRules(input)
    const changes = comparePolicies(before.rules, rules)
    if (changes.length === 0) return { version: before.version }
    const after: PinnedSignOffPolicy = { version: before.version + 1, rules }
    await tx.project.update({
      where: { id },
      data: { signOffPolicyJson: writePolicy(after), signOffPolicyVersion: after.version },
    })
    await record({
      action: 'sign-off-policy-changed',
      subject: { kind: 'project', id },
      projectId: id,
      details: { version: after.version, ...sortChanges(changes), reason: input.reason },
    })
    await reachOpenRevisions(context, id, after, { changes, reason: input.reason })
    return { version: after.version }
  })
}

const toRules = (input: SetSignOffPolicyInput): SignOffPolicy => ({
  waiverBlocking: input.waiverBlocking,
  waiverMajor: input.waiverMajor,
  waiverMinor: input.waiverMinor,
  review: input.review,
  authorSigns: input.authorSigns,
  authorReleases: input.authorReleases,
  differences: input.differences,
  requiredSignatures: input.requiredSignatures,
  requiredCapacities: input.requiredCapacities.map(({ name }) => name).sort(),
})

const sortChanges = (changes: readonly PolicyChange[]) => ({
  tightened: changes.filter(({ direction }) => direction === 'tightened').map(({ sentence }) => sentence),
  loosened: changes.filter(({ direction }) => direction === 'loosened').map(({ sentence }) => sentence),
})

async function reachOpenRevisions(
  context: WriteContext,
  projectId: string,
  project: PinnedSignOffPolicy,
  { changes, reason }: { readonly changes: readonly PolicyChange[]; readonly reason: string },
): Promise<void> {
  const { tx, record } = context
  const open = await tx.revision.findMany({
    where: { projectId, stage: { in: [...OPEN_STAGES] } },
    select: { id: true, signOffPolicyJson: true },
    orderBy: { createdAt: 'asc' },
  })
  for (const { id: revisionId, signOffPolicyJson } of open) {
    const pinned = readPinnedPolicy(signOffPolicyJson)
    const note = () =>
      record({
        action: 'sign-off-policy-moved',
        subject: { kind: 'revision', id: revisionId },
        projectId,
        revisionId,
        details: { version: project.version, ...sortChanges(changes), reason },
      })
    const rules = pinned === null ? null : combinePolicies(pinned.rules, project.rules)
    if (pinned === null || rules === null || comparePolicies(pinned.rules, rules).length === 0) {
      await note()
      continue
    }
    // Where the combination is the project's policy itself, the revision follows it; else it keeps what is stricter of its own.
    const version = comparePolicies(rules, project.rules).length === 0 ? project.version : pinned.version
    const loaded = await loadRevision(tx, revisionId)
    const summary = sortChanges(changes).tightened.map((sentence) => `sign-off policy: ${sentence}`)
    await changeContent(context, loaded, { part: 'policy', summary }, async () => {
      await tx.revision.update({
        where: { id: revisionId },
        data: { signOffPolicyJson: writePolicy({ version, rules }) },
      })
      await note()
    })
  }
}

/** Puts an open revision under the project's present policy, looser rules included. Signatures cover the policy, so they lapse. */
export function followSignOffPolicy(
  actor: Actor,
  input: FollowSignOffPolicyInput,
): Promise<ActResult<{ version: number }>> {
  return write(actor, 'follow-sign-off-policy', input, async (context) => {
    const { tx, rights, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'policy:follow')
    const loaded = await loadRevision(tx, revision.id)
    requireRevisionSeen(loaded, input.seenVersion, null)
    const project = readProjectPolicy(loaded.record.project, loaded.workspace.settings)
    if (project.version !== input.toVersion) {
      refuseClash('The policy of the project was changed again. Look at what would change and try again.')
    }
    const pinned = readPinnedPolicy(loaded.record.signOffPolicyJson)
    const changes = pinned === null ? [] : comparePolicies(pinned.rules, project.rules)
    if (pinned !== null && changes.length === 0) return { version: revision.version }
    const { version } = await changeContent(
      context,
      loaded,
      { part: 'policy', summary: changes.map(({ sentence }) => `sign-off policy: ${sentence}`) },
      async () => {
        await tx.revision.update({
          where: { id: revision.id },
          data: { signOffPolicyJson: writePolicy(project) },
        })
        await record({
          action: 'sign-off-policy-followed',
          subject: { kind: 'revision', id: revision.id },
          projectId: revision.projectId,
          revisionId: revision.id,
          details: {
            from: pinned?.version ?? null,
            to: project.version,
            ...sortChanges(changes),
            reason: input.reason,
          },
        })
      },
    )
    return { version }
  })
}
