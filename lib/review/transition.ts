import type { Blocker } from './blocker'
import { findBlockers, findSigningBlockers } from './blockers'
import { findAuthorReleasing } from './independence-blockers'
import { isAllowed, type RevisionSubject, type Rights } from './policy'
import { listLiveSignatures } from './signed-content'
import type { GrantedCapacity, ReviewSnapshot } from './snapshot'
import { MOVES_WITH_REASON, type Move, STAGE_LABELS, type Stage, TRANSITIONS } from './stages'

/** Why a move or a signature is refused. */
export type MoveRefusal =
  | { readonly kind: 'blocked'; readonly blockers: readonly Blocker[] }
  | { readonly kind: 'illegal'; readonly sentence: string }
  | { readonly kind: 'not-allowed'; readonly sentence: string }
  | { readonly kind: 'reason-missing'; readonly sentence: string }

export type Decision<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: MoveRefusal }

export interface StageChange {
  readonly from: Stage
  readonly to: Stage
  readonly move: Move
  readonly reason: string
  /** Signatures that this change voids, with the reason to record. */
  readonly voids: readonly { readonly signatureId: string; readonly reason: string }[]
  /** The change is the release: the package is built and earlier releases of the project are superseded. */
  readonly isRelease: boolean
}

export interface MoveRequest {
  readonly move: Move
  readonly reason?: string
}

/** What policy needs to know of a revision. */
export function getRevisionSubject(snapshot: ReviewSnapshot): RevisionSubject {
  return {
    kind: 'revision',
    projectId: snapshot.projectId,
    stage: snapshot.stage,
    sharedWithCompanyIds: snapshot.sharedWith.map(({ companyId }) => companyId),
    hasLiveSignature: listLiveSignatures(snapshot).length > 0,
  }
}

/** Capacities that this person was granted, in their order by name. */
export function listSigningCapacities({ capacityGrants }: ReviewSnapshot, { userId }: Rights): GrantedCapacity[] {
  return capacityGrants
    .filter((grant) => grant.userId === userId)
    .sort((a, b) => (a.capacity < b.capacity ? -1 : a.capacity > b.capacity ? 1 : 0))
}

/** May this person move the revision so, now? Legality first, then rights, then reason, then what blocks. */
export function decideTransition(
  snapshot: ReviewSnapshot,
  rights: Rights,
  request: MoveRequest,
): Decision<StageChange> {
  const { move } = request
  const from = snapshot.stage
  const to = Object.hasOwn(TRANSITIONS, from) ? TRANSITIONS[from][move] : undefined
  if (to === undefined) {
    return refuse({
      kind: 'illegal',
      sentence: `A revision that is ${STAGE_LABELS[from] ?? from} cannot be moved this way (${MOVE_WORDS[move] ?? move})`,
    })
  }
  const isRelease = to === 'released'
  if (!isAllowed(rights, actionOf(move, isRelease), subjectOf(snapshot, move))) {
    return refuse({ kind: 'not-allowed', sentence: `Only a lead of this project may ${MOVE_WORDS[move]}` })
  }
  const reason = request.reason?.trim() ?? ''
  if (MOVES_WITH_REASON.includes(move) && reason === '') {
    return refuse({ kind: 'reason-missing', sentence: `A reason is required to ${MOVE_WORDS[move]}` })
  }
  if (move === 'advance') {
    const blockers = [...findBlockers(snapshot), ...(isRelease ? findAuthorReleasing(snapshot, rights.userId) : [])]
    if (blockers.length > 0) return refuse({ kind: 'blocked', blockers })
  }
  const voids =
    move === 'send-back' || (move === 'withdraw' && from !== 'released')
      ? snapshot.signatures
          .filter((signature) => signature.voided === null)
          .map(({ id }) => ({
            signatureId: id,
            reason: move === 'withdraw' ? `withdrawn: ${reason}` : `sent back to ${STAGE_LABELS[to]}: ${reason}`,
          }))
      : []
  return { ok: true, value: { from, to, move, reason, voids, isRelease } }
}

/**
 * May this person sign the present content?
 * @param capacity  in which they want to sign; null asks whether there is one
 */
export function decideSigning(
  snapshot: ReviewSnapshot,
  rights: Rights,
  capacity: string | null = null,
): Decision<{ readonly contentStage: Stage }> {
  if (snapshot.stage !== 'awaiting-signature') {
    return refuse({
      kind: 'illegal',
      sentence: `A revision can be signed only while it awaits signature; this one is ${STAGE_LABELS[snapshot.stage]}`,
    })
  }
  if (!isAllowed(rights, 'revision:sign', { ...getRevisionSubject(snapshot), hasCapacity: true })) {
    return refuse({ kind: 'not-allowed', sentence: 'Only a lead, a member or quality of this project may sign' })
  }
  const own = listSigningCapacities(snapshot, rights)
  if (own.length === 0) {
    return refuse({
      kind: 'illegal',
      sentence: 'No capacity is granted to you in this project, so you cannot sign: a lead or an admin grants it',
    })
  }
  if (capacity !== null && !own.some((grant) => grant.capacity === capacity)) {
    return refuse({
      kind: 'illegal',
      sentence: `"${capacity}" is not granted to you: you may sign as ${own.map((grant) => grant.capacity).join(' or ')}`,
    })
  }
  if (listLiveSignatures(snapshot).some(({ userId }) => userId === rights.userId)) {
    return refuse({ kind: 'illegal', sentence: 'You have already signed this content' })
  }
  const blockers = findSigningBlockers(snapshot, rights.userId)
  if (blockers.length > 0) return refuse({ kind: 'blocked', blockers })
  return { ok: true, value: { contentStage: snapshot.stage } }
}

/** How the reason of a signature begins that its signer took back. */
export const WITHDRAWN_BY_SIGNER = 'withdrawn by the signer'

/** May this person withdraw this signature? It takes a reason; the signature stays readable, voided. */
export function decideSignatureWithdrawal(
  snapshot: ReviewSnapshot,
  rights: Rights,
  signatureId: string,
  reason: string,
): Decision<{ readonly reason: string }> {
  const signature = snapshot.signatures.find(({ id }) => id === signatureId)
  if (signature === undefined || signature.voided !== null) {
    return refuse({ kind: 'illegal', sentence: 'There is no such valid signature' })
  }
  const subject = { ...getRevisionSubject(snapshot), kind: 'signature' as const, signerId: signature.userId }
  if (!isAllowed(rights, 'signature:withdraw', { ...subject, stage: 'awaiting-signature' })) {
    return refuse({ kind: 'not-allowed', sentence: 'A signature can be withdrawn only by the person who signed' })
  }
  if (!isAllowed(rights, 'signature:withdraw', subject)) {
    return refuse({
      kind: 'illegal',
      sentence: `The revision is ${STAGE_LABELS[snapshot.stage]}: a signature can no longer be withdrawn`,
    })
  }
  const said = reason.trim()
  if (said === '') return refuse({ kind: 'reason-missing', sentence: 'A reason is required to withdraw a signature' })
  return { ok: true, value: { reason: `${WITHDRAWN_BY_SIGNER}: ${said}` } }
}

function refuse(refusal: MoveRefusal): { readonly ok: false; readonly refusal: MoveRefusal } {
  return { ok: false, refusal }
}

const MOVE_WORDS: Readonly<Record<Move, string>> = {
  advance: 'move it to the next stage',
  'send-back': 'send it back',
  withdraw: 'withdraw it',
  supersede: 'supersede it',
}

function actionOf(move: Move, isRelease: boolean) {
  if (move === 'withdraw') return 'revision:withdraw'
  if (isRelease || move === 'supersede') return 'revision:release'
  return 'stage:move'
}

/** Superseding is judged by the right to release the later revision, which stands where this one stood. */
function subjectOf(snapshot: ReviewSnapshot, move: Move): RevisionSubject {
  const subject = getRevisionSubject(snapshot)
  return move === 'supersede' ? { ...subject, stage: 'awaiting-signature' } : subject
}
