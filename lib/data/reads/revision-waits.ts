import 'server-only'
import {
  countRequiredSignatures,
  decideSigning,
  explainMissingReview,
  explainNoApproval,
  findAuthorReleasing,
  findBlockers,
  getSignOffPolicy,
  isAllowed,
  isAuthor,
  listApprovals,
  listItemStates,
  listReviews,
  listSigningCapacities,
  type ReviewSnapshot,
  STAGE_LABELS,
  TRANSITIONS,
} from '@/lib/review'
import { getMembership, mayOnRevision, type PersonRights, type RevisionScope } from '../records/authorization'
import type { LoadedRevision } from '../records/loaded-revision'
import { getPersonName } from '../records/revision-record'
import { listConditionWaits, listDeclarationWaits, listNotBuildableWaits } from './declaration-waits'
import { listThreadWaits } from './thread-waits'
import type { Wait, WaitContext } from './wait'

/** What of one revision waits for one person who sees it. */
export function listRevisionWaits(
  loaded: LoadedRevision,
  snapshot: ReviewSnapshot,
  rights: PersonRights,
  { subject, fabricatorCompanyId }: RevisionScope,
): Wait[] {
  const context: WaitContext = { loaded, snapshot, rights, subject, fabricatorCompanyId }
  return [
    ...listThreadWaits(context),
    ...listSharedWaits(context),
    ...listItemWaits(context),
    ...listDeclarationWaits(context),
    ...listConditionWaits(context),
    ...listNotBuildableWaits(context),
    ...listWaiverWaits(context),
    ...listProposalWaits(context),
    ...listReviewWaits(context),
    ...listSigningWaits(context),
    ...listLeadWaits(context),
  ]
}

/** Items that nobody has answered and that are due before the present stage can be left. */
function listItemWaits({ loaded, snapshot, rights, subject, fabricatorCompanyId }: WaitContext): Wait[] {
  if (snapshot.stage === 'preparing') return []
  const open = listItemStates(snapshot).filter(
    ({ item, state }) =>
      state === 'open' &&
      (item.decidedWhen === 'early' || snapshot.stage !== 'early-review') &&
      // What a fabricator alone can judge waits for them, the rest for the team.
      item.answeredBy.includes('fabricator') === (fabricatorCompanyId !== null) &&
      isAllowed(rights, 'item:answer', { ...subject, kind: 'item', answeredBy: item.answeredBy }),
  )
  if (open.length === 0) return []
  return [
    {
      since: loaded.record.stageSince.toISOString(),
      reason: open.length === 1 ? 'One item is unanswered' : `${open.length} items are unanswered`,
      nextAct: 'Answer the checklist',
      target: { tab: 'checklist', id: open.length === 1 ? (open[0]?.item.id ?? null) : null },
    },
  ]
}

/** Shared, and nobody of the company has opened it. Where a declaration waits as well, that says it already. */
function listSharedWaits(context: WaitContext): Wait[] {
  const { loaded, fabricatorCompanyId } = context
  const share = loaded.record.shares.find(({ companyId }) => companyId === fabricatorCompanyId)
  if (share === undefined || share.lookedAt !== null || listDeclarationWaits(context).length > 0) return []
  return [
    {
      since: share.createdAt.toISOString(),
      reason: 'It was shared with your company, and nobody there has opened it yet',
      nextAct: 'Review it and ask about anything unclear',
      target: { tab: 'construction', id: null },
    },
  ]
}

/** Proposed changes wait for the team, but not for the person who proposed them. */
function listProposalWaits({ loaded, rights, subject }: WaitContext): Wait[] {
  if (!mayOnRevision(rights, 'proposal:decide', subject)) return []
  return loaded.record.proposals
    .filter(({ state, proposedById }) => state === 'proposed' && proposedById !== rights.userId)
    .map((proposal) => ({
      since: proposal.proposedAt.toISOString(),
      reason: `${getPersonName(loaded.record, proposal.proposedById)} proposes a change: "${proposal.title}"`,
      nextAct: 'Accept or decline it',
      target: { tab: 'proposals', id: proposal.id },
    }))
}

function listWaiverWaits({ snapshot, rights, subject }: WaitContext): Wait[] {
  const role = getMembership(rights, snapshot.projectId)?.role ?? ''
  return snapshot.waivers
    .filter(({ state, itemId, proposedBy }) => {
      const item = snapshot.items.find(({ id }) => id === itemId)
      if (state !== 'proposed' || item === undefined) return false
      const isIndependent = explainNoApproval(snapshot, item, { proposedBy, userId: rights.userId, role }) === ''
      return isAllowed(rights, 'waiver:approve', { ...subject, kind: 'waiver', isIndependent })
    })
    .map(({ itemId, proposedByName, proposedAt }) => ({
      since: proposedAt,
      reason: `${proposedByName} proposed a waiver`,
      nextAct: 'Approve or decline it',
      target: { tab: 'checklist', id: itemId },
    }))
}

/** For a lead: a stage that nothing blocks, a release that is ready. */
function listLeadWaits({ loaded, snapshot, rights, subject }: WaitContext): Wait[] {
  if (!mayOnRevision(rights, 'stage:move', subject)) return []
  const since = loaded.record.stageSince.toISOString()
  const target = { tab: 'sign-off', id: null } as const
  const next = TRANSITIONS[snapshot.stage].advance
  if (next === undefined || findBlockers(snapshot).length > 0) return []
  if (next === 'released' && findAuthorReleasing(snapshot, rights.userId).length > 0) return []
  return next === 'released'
    ? [{ since, reason: 'It is signed and nothing blocks the release', nextAct: 'Release it', target }]
    : [{ since, reason: 'Nothing blocks the next stage', nextAct: `Move it to ${STAGE_LABELS[next]}`, target }]
}

/** A review that is missing before anybody signs waits for everybody who made none of the content. */
function listReviewWaits({ loaded, snapshot, rights, subject }: WaitContext): Wait[] {
  if (snapshot.stage !== 'awaiting-signature' || !mayOnRevision(rights, 'review:declare', subject)) return []
  if (isAuthor(snapshot, rights.userId) || explainMissingReview(snapshot) === '') return []
  // Of quality it is asked where quality alone counts; and nobody is asked twice.
  const isQuality = getMembership(rights, snapshot.projectId)?.role === 'quality'
  const hasOwn = listReviews(snapshot).some(({ userId }) => userId === rights.userId)
  if (hasOwn || (getSignOffPolicy(snapshot).review === 'quality' && !isQuality)) return []
  return [
    {
      since: loaded.record.stageSince.toISOString(),
      reason: 'The present content has no review that counts',
      nextAct: 'Review it and declare it reviewed',
      target: { tab: 'sign-off', id: null },
    },
  ]
}

/**
 * A signature that is missing waits for everybody who could give it now: in a capacity of theirs that nobody has signed in
 * yet, by somebody who has not signed and whom the policy lets sign.
 */
function listSigningWaits({ loaded, snapshot, rights }: WaitContext): Wait[] {
  if (!decideSigning(snapshot, rights).ok) return []
  const policy = getSignOffPolicy(snapshot)
  const approvals = listApprovals(snapshot)
  const given = new Set(approvals.map(({ capacity }) => capacity))
  const granted = listSigningCapacities(snapshot, rights).map(({ capacity }) => capacity)
  const own = policy.requiredCapacities.filter((name) => granted.includes(name) && !given.has(name))
  const isAnyCapacity = policy.requiredCapacities.every((name) => given.has(name))
  const isNeeded = new Set(approvals.map(({ userId }) => userId)).size < countRequiredSignatures(policy)
  if (!isNeeded || (own.length === 0 && !isAnyCapacity)) return []
  return [
    {
      since: loaded.record.stageSince.toISOString(),
      reason: own.length === 0 ? 'A signature is missing' : `The signature as ${own.join(' or ')} is missing`,
      nextAct: 'Review and sign it',
      target: { tab: 'sign-off', id: null },
    },
  ]
}
