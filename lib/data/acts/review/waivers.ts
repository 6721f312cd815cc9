import 'server-only'
import type { DecideWaiverInput, ProposeWaiverInput } from '@/lib/inputs'
import {
  ACT_MEANINGS,
  checkWaiverDecision,
  checkWaiverProposal,
  explainNoApproval,
  type ItemState,
  isAllowed,
} from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type WriteContext, write } from '../../consequences/write'
import {
  type Actor,
  getMembership,
  type PersonRights,
  type RevisionScope,
  requireAtStage,
  requireRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { NotFoundError, outcomeOf, refuseClash, refuseField, refuseInvalid } from '../../store/errors'
import type { ActResult } from '../../views'
import { type ConfirmedBy, confirmPerson, requireConfirmed } from '../access/confirmation'
import { notingRefusals } from '../access/confirmed-write'
import { getItemStateOf } from './answers'

/** Proposes to release against an item, on its present numbers and no others. An earlier proposal is replaced. */
export function proposeWaiver(actor: Actor, input: ProposeWaiverInput): Promise<ActResult<{ waiverId: string }>> {
  return write(actor, 'propose-waiver', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'waiver:propose')
    const { snapshot } = makeSnapshot(await loadRevision(tx, revision.id), null)
    const itemState = getItemStateOf(snapshot, input.itemId)
    const { item, result, answer, followers } = itemState
    const checked = checkWaiverProposal(result, answer, input.reason, itemState)
    if (!checked.ok) refuseInvalid(checked.issues, 'A waiver cannot be proposed here.')
    const validUntil = (input.validUntil ?? '') === '' ? null : (input.validUntil ?? null)
    if (validUntil !== null && validUntil < at.toISOString().slice(0, 10)) {
      refuseField('validUntil', 'past', 'is over already')
    }
    const earlier = snapshot.waivers.find(({ itemId, state }) => itemId === item.id && state === 'proposed')
    if (earlier !== undefined && earlier.basisHash === checked.value.basisHash) {
      refuseClash(`A waiver of this item was already proposed by ${earlier.proposedByName} and awaits a decision.`)
    }
    if (earlier !== undefined) {
      await tx.waiver.update({
        where: { id: earlier.id },
        data: {
          state: 'declined',
          decidedById: rights.userId,
          decidedAt: at,
          decisionNote: 'replaced by a proposal on newer numbers',
        },
      })
    }
    const waiver = await tx.waiver.create({
      data: {
        revisionId: revision.id,
        itemId: item.id,
        state: 'proposed',
        reason: checked.value.reason,
        basisHash: checked.value.basisHash,
        proposedById: rights.userId,
        proposedAt: at,
        consequence: input.consequence ?? '',
        validUntil,
        quantityLimit: input.quantityLimit ?? null,
        needsCustomerConsent: input.needsCustomerConsent ?? false,
      },
    })
    await record({
      action: 'waiver-proposed',
      subject: { kind: 'waiver', id: waiver.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      details: {
        itemId: item.id,
        question: item.question,
        reason: waiver.reason,
        headline: result?.headline,
        ...(validUntil === null ? {} : { validUntil }),
        ...(input.quantityLimit == null ? {} : { quantityLimit: input.quantityLimit }),
        ...(input.needsCustomerConsent === true ? { needsCustomerConsent: true } : {}),
        ...(followers.length === 0 ? {} : { followers: followers.map(({ itemId }) => itemId) }),
      },
    })
    return { waiverId: waiver.id }
  })
}

/**
 * A lead or quality approves or declines, as far as the policy of the project lets them. Approval asks for the person again, as
 * signing does.
 */
export function decideWaiver(actor: Actor, input: DecideWaiverInput): Promise<ActResult<{ version: number }>> {
  return input.decision === 'approve'
    ? notingRefusals(actor, 'approve-waiver', input, () => decide(actor, input))
    : decide(actor, input)
}

async function decide(actor: Actor, input: DecideWaiverInput): Promise<ActResult<{ version: number }>> {
  const isApproval = input.decision === 'approve'
  const confirmed = await outcomeOf(async () =>
    isApproval ? confirmPerson(actor, { ...input, password: input.password ?? '' }) : null,
  )
  if (!confirmed.ok) return confirmed
  return write(actor, 'decide-waiver', input, async (context) => {
    const { tx, rights } = context
    const row = await tx.waiver.findUnique({ where: { id: input.waiverId } })
    if (row === null) throw new NotFoundError('waiver')
    const scope = await requireRevisionInView(tx, rights, row.revisionId, 'waiver')
    const loaded = await loadRevision(tx, row.revisionId)
    const { snapshot } = makeSnapshot(loaded, null)
    const waiver = snapshot.waivers.find(({ id }) => id === row.id)
    if (waiver === undefined) throw new NotFoundError('waiver')
    const { item, result, followers } = getItemStateOf(snapshot, waiver.itemId)
    const consent = input.customerConsent ?? ''
    if (isApproval && row.needsCustomerConsent === true && consent === '') {
      refuseField('customerConsent', 'missing', 'is empty: the waiver needs the customer’s consent')
    }
    if (isApproval && row.validUntil !== null && row.validUntil < context.at.toISOString().slice(0, 10)) {
      refuseClash(`The waiver was to end on ${row.validUntil}, which has passed. Propose it again.`)
    }
    const role = getMembership(rights, scope.revision.projectId)?.role ?? ''
    const whyNot = explainNoApproval(snapshot, item, { proposedBy: waiver.proposedBy, userId: rights.userId, role })
    requireDecider(rights, scope, input.decision, whyNot)
    const checked = checkWaiverDecision(waiver, result, { approve: input.decision === 'approve', whyNot }, followers)
    if (!checked.ok) refuseClash(checked.issues[0]?.message ?? 'The waiver cannot be decided now.', checked.issues)
    const confirmedBy = confirmed.value === null ? null : await requireConfirmed(context, confirmed.value)
    return storeDecision(context, loaded, { ...input, confirmedBy }, item)
  })
}

/** @param whyNot  why the policy does not let the person approve; empty where it does */
function requireDecider(
  rights: PersonRights,
  scope: RevisionScope,
  decision: DecideWaiverInput['decision'],
  whyNot: string,
): void {
  const isIndependent = whyNot === ''
  const makeSubject = (subject: RevisionScope['subject']) => ({ ...subject, kind: 'waiver', isIndependent }) as const
  // Somebody who may approve waivers, but not this one, is told why.
  if (decision === 'approve' && !isIndependent && isAllowed(rights, 'waiver:decline', makeSubject(scope.subject))) {
    refuseClash(`You cannot approve this waiver: ${whyNot}.`)
  }
  requireAtStage(rights, scope.subject, decision === 'approve' ? 'waiver:approve' : 'waiver:decline', makeSubject)
}

async function storeDecision(
  context: WriteContext,
  loaded: LoadedRevision,
  input: DecideWaiverInput & { readonly confirmedBy: ConfirmedBy | null },
  item: ItemState['item'],
): Promise<{ version: number }> {
  const { tx, rights, at, record } = context
  const state = input.decision === 'approve' ? ('approved' as const) : ('declined' as const)
  const role = getMembership(rights, loaded.record.projectId)?.role ?? null
  // To decide on a waiver is not to edit: the decision has its own record, and its author stays a second pair of eyes.
  const { version } = await changeContent(context, loaded, null, async () => {
    await tx.waiver.update({
      where: { id: input.waiverId },
      data: {
        state,
        decidedById: rights.userId,
        decidedAt: at,
        decisionNote: input.reason,
        decidedAsRole: role,
        customerConsent: input.customerConsent ?? '',
      },
    })
    await record({
      action: `waiver-${state}`,
      subject: { kind: 'waiver', id: input.waiverId },
      projectId: loaded.record.projectId,
      revisionId: loaded.record.id,
      details: {
        itemId: item.id,
        question: item.question,
        reason: input.reason,
        ...((input.customerConsent ?? '') === '' ? {} : { customerConsent: input.customerConsent ?? '' }),
        ...(input.confirmedBy === null
          ? {}
          : { meaning: ACT_MEANINGS['approve-waiver'], confirmedBy: input.confirmedBy }),
      },
    })
  })
  return { version }
}
