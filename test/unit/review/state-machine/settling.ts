import {
  decideSignatureWithdrawal,
  getRevisionSubject,
  isAllowed,
  isOpenStage,
  listDifferences,
  type ReviewAction,
  type ReviewSnapshot,
} from '@/lib/review'
import { TEAM } from '../snapshot-factory'
import { ACTORS, type Step } from './steps'

type Voiding = (before: ReviewSnapshot, after: ReviewSnapshot) => ReviewSnapshot

/** After the release actions move nothing that was signed, as in the data layer. */
function withActions(withVoids: Voiding, snapshot: ReviewSnapshot, actions: readonly ReviewAction[]): ReviewSnapshot {
  const after = { ...snapshot, actions }
  return isOpenStage(snapshot.stage) ? withVoids(snapshot, after) : after
}

type Settling = Extract<
  Step,
  { readonly kind: 'take-on' | 'settle-action' | 'take-back' | 'withdraw-review' | 'let-stand' }
>

/** Actions, what people take back, and differences that somebody lets stand. */
export function settle(snapshot: ReviewSnapshot, step: Settling, withVoids: Voiding): ReviewSnapshot {
  const subject = getRevisionSubject(snapshot)
  switch (step.kind) {
    case 'take-on': {
      if (!isAllowed(ACTORS[step.actor], 'review-action:take-on', subject)) return snapshot
      const owner = ACTORS[step.owner]
      const action: ReviewAction = {
        id: `action-${snapshot.actions.length}`,
        number: snapshot.actions.length + 1,
        origin: { kind: 'revision', id: '', label: 'the revision' },
        audienceCompanyId: null,
        text: 'Measure the first lot.',
        ownerId: owner.userId,
        ownerName: owner.userId,
        ownerCompanyName: 'Quillmoor Instruments',
        due: step.due,
        dueOn: null,
        isAfterRelease: !isOpenStage(snapshot.stage),
        state: 'open',
        takenOnByName: step.actor,
        takenOnAt: '2027-03-02T09:00:00.000Z',
        evidence: '',
        files: [],
        reportedByName: null,
        reportedAt: null,
        closedByName: null,
        closedAt: null,
        closeNote: '',
      }
      return withActions(withVoids, snapshot, [...snapshot.actions, action])
    }
    case 'settle-action': {
      const last = snapshot.actions.findLast(({ state }) => state === 'open' || state === 'reported')
      if (last === undefined || (step.to === 'closed' && last.state !== 'reported')) return snapshot
      const actor = ACTORS[step.actor]
      const rule = { reported: 'report', closed: 'close', dropped: 'drop' } as const
      const may = isAllowed(actor, `review-action:${rule[step.to]}`, {
        ...subject,
        kind: 'review-action',
        ownerId: last.ownerId,
        ownerCompanyId: TEAM,
        reportedById: last.reportedByName,
        audienceCompanyId: null,
      })
      if (!may) return snapshot
      const by = step.to === 'reported' ? { reportedByName: actor.userId } : { closedByName: actor.userId }
      return withActions(
        withVoids,
        snapshot,
        snapshot.actions.map((one) => (one === last ? { ...one, state: step.to, ...by } : one)),
      )
    }
    case 'take-back': {
      const actor = ACTORS[step.actor]
      const own = snapshot.signatures.findLast(({ userId, voided }) => voided === null && userId === actor.userId)
      const decision = decideSignatureWithdrawal(snapshot, actor, own?.id ?? '', 'radius misread')
      if (!decision.ok) return snapshot
      const voided = { at: '2027-03-05T09:00:00.000Z', reason: decision.value.reason, changes: [] }
      return {
        ...snapshot,
        signatures: snapshot.signatures.map((one) => (one === own ? { ...one, voided } : one)),
      }
    }
    case 'withdraw-review': {
      if (!isOpenStage(snapshot.stage)) return snapshot
      const withdrawnAt = '2027-03-05T09:00:00.000Z'
      return withVoids(snapshot, { ...snapshot, reviews: snapshot.reviews.map((one) => ({ ...one, withdrawnAt })) })
    }
    case 'let-stand': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'difference:let-stand', subject)) return snapshot
      const open = listDifferences(snapshot).filter((one) => one.acknowledged === null && one.saidById !== actor.userId)
      const made = open.map(({ key, fact, said, against }) => ({
        id: `stand-${key}`,
        key,
        fact,
        said,
        against,
        reason: 'agreed',
        byId: actor.userId,
        byName: actor.userId,
        at: '2027-03-03T09:00:00.000Z',
      }))
      return withVoids(snapshot, { ...snapshot, acknowledgements: [...snapshot.acknowledgements, ...made] })
    }
  }
}
