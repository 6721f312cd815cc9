import 'server-only'
import type { AnswerItemInput, DecideWaiverInput, ProposeWaiverInput } from '@/lib/inputs'
import {
  checkAnswer,
  checkWaiverDecision,
  checkWaiverProposal,
  type ItemStanding,
  isAllowed,
  listStandings,
  type ReviewSnapshot,
} from '@/lib/review'
import { makeAnswerBasis } from './answer-basis'
import {
  type Actor,
  type RevisionScope,
  requireAnswerer,
  requireAtStage,
  requireRevision,
  requireRevisionInView,
  type Standing,
} from './authorization'
import { type ConfirmedBy, confirmPerson, requireConfirmed } from './confirmation'
import { changeContent } from './content'
import { keepDesignState } from './design-states'
import { NotFoundError, outcomeOf, refuseClash, refuseInvalid, refuseStale } from './errors'
import { type LoadedRevision, loadRevision } from './loaded-revision'
import { makeSnapshot } from './snapshot'
import type { Outcome } from './views'
import { type WriteContext, write } from './write'

/** The item as it stands for this person. @throws NotFoundError for an id that the catalogue lacks */
function getStandingOf(snapshot: ReviewSnapshot, itemId: string): ItemStanding {
  const standing = listStandings(snapshot).find(({ item }) => item.id === itemId)
  if (standing === undefined) throw new NotFoundError('item')
  return standing
}

/**
 * Records a person's answer to an item. A failed calculation cannot be overruled by it. `seenVersion` is the version of
 * the answer that the person saw, 0 for none.
 */
export function answerItem(
  actor: Actor,
  input: AnswerItemInput,
): Promise<Outcome<{ answerVersion: number; version: number }>> {
  return write(actor, 'answer-item', input, async (context) => {
    const { tx, standing, at, record } = context
    const scope = await requireRevisionInView(tx, standing, input.revisionId)
    const { revision, fabricatorCompanyId } = scope
    const loaded = await loadRevision(tx, revision.id)
    const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
    const { item, result } = getStandingOf(snapshot, input.itemId)
    requireAnswerer(standing, scope.subject, item.answeredBy)
    const stored = loaded.record.answers.find(({ itemId }) => itemId === item.id)
    requireAnswerSeen(stored, input.seenVersion, snapshot)
    const checked = checkAnswer(result, input)
    if (!checked.ok) refuseInvalid(checked.issues, 'The item cannot be answered so.')
    const { state, reason } = checked.value
    const answerVersion = (stored?.version ?? 0) + 1
    const answer = { state, reason, version: answerVersion }
    const change = { part: 'answer' as const, summary: [`${item.question}: ${state.replaceAll('-', ' ')}`] }
    const { version } = await changeContent(context, loaded, change, async () => {
      await keepDesignState(tx, { hash: loaded.record.designHash, designJson: loaded.record.designJson }, at)
      const fields = {
        ...answer,
        answeredById: standing.userId,
        companyId: fabricatorCompanyId,
        answeredAt: at,
        ...makeAnswerBasis(loaded.record),
        carriedFromId: null,
      }
      const { id: answerId } = await tx.answer.upsert({
        where: { revisionId_itemId: { revisionId: revision.id, itemId: item.id } },
        create: { revisionId: revision.id, itemId: item.id, ...fields },
        update: fields,
      })
      await tx.answerHistory.create({
        data: { answerId, ...answer, userId: standing.userId, companyId: fabricatorCompanyId, at },
      })
      await record({
        action: 'item-answered',
        subject: { kind: 'item', id: item.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: fabricatorCompanyId,
        details: { question: item.question, state, reason, verdict: result?.verdict },
      })
    })
    return { answerVersion, version }
  })
}

interface StoredAnswer {
  readonly version: number
  readonly state: string
  readonly itemId: string
  readonly answeredAt: Date
}

function requireAnswerSeen(stored: StoredAnswer | undefined, seenVersion: number, snapshot: ReviewSnapshot): void {
  const version = stored?.version ?? 0
  if (version === seenVersion) return
  const answer = snapshot.answers.find(({ itemId }) => itemId === stored?.itemId)
  const changes =
    stored === undefined || answer === undefined
      ? []
      : [{ by: answer.answeredByName, at: answer.answeredAt, what: [`answered ${stored.state.replaceAll('-', ' ')}`] }]
  refuseStale(seenVersion, version, changes, 'the answer')
}

/** Proposes to release against an item, on its present numbers and no others. An earlier proposal is replaced. */
export function proposeWaiver(actor: Actor, input: ProposeWaiverInput): Promise<Outcome<{ waiverId: string }>> {
  return write(actor, 'propose-waiver', input, async (context) => {
    const { tx, standing, at, record } = context
    const { revision } = await requireRevision(tx, standing, input.revisionId, 'waiver:propose')
    const { snapshot } = makeSnapshot(await loadRevision(tx, revision.id), null)
    const { item, result, answer } = getStandingOf(snapshot, input.itemId)
    const checked = checkWaiverProposal(result, answer, input.reason)
    if (!checked.ok) refuseInvalid(checked.issues, 'A waiver cannot be proposed here.')
    const earlier = snapshot.waivers.find(({ itemId, state }) => itemId === item.id && state === 'proposed')
    if (earlier !== undefined && earlier.basisHash === checked.value.basisHash) {
      refuseClash(`A waiver of this item is already proposed by ${earlier.proposedByName} and waits for a lead.`)
    }
    if (earlier !== undefined) {
      await tx.waiver.update({
        where: { id: earlier.id },
        data: {
          state: 'declined',
          decidedById: standing.userId,
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
        proposedById: standing.userId,
        proposedAt: at,
      },
    })
    await record({
      action: 'waiver-proposed',
      subject: { kind: 'waiver', id: waiver.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      details: { itemId: item.id, question: item.question, reason: waiver.reason, headline: result?.headline },
    })
    return { waiverId: waiver.id }
  })
}

/**
 * A lead approves or declines. Approval takes a second person where the workspace asks for one, and asks for the person
 * again, as signing does.
 */
export async function decideWaiver(actor: Actor, input: DecideWaiverInput): Promise<Outcome<{ version: number }>> {
  const isApproval = input.decision === 'approve'
  const confirmed = await outcomeOf(async () =>
    isApproval ? confirmPerson(actor, { ...input, password: input.password ?? '' }) : null,
  )
  if (!confirmed.ok) return confirmed
  return write(actor, 'decide-waiver', input, async (context) => {
    const { tx, standing } = context
    const row = await tx.waiver.findUnique({ where: { id: input.waiverId } })
    if (row === null) throw new NotFoundError('waiver')
    const scope = await requireRevisionInView(tx, standing, row.revisionId, 'waiver')
    const loaded = await loadRevision(tx, row.revisionId)
    const { snapshot } = makeSnapshot(loaded, null)
    const waiver = snapshot.waivers.find(({ id }) => id === row.id)
    if (waiver === undefined) throw new NotFoundError('waiver')
    const { item, result } = getStandingOf(snapshot, waiver.itemId)
    const needsSecondPerson = snapshot.settings.waiverNeedsSecondPerson
    requireDecider(standing, scope, input.decision, waiver.proposedBy, needsSecondPerson)
    const checked = checkWaiverDecision(waiver, result, {
      approve: input.decision === 'approve',
      userId: standing.userId,
      needsSecondPerson,
    })
    if (!checked.ok) refuseClash(checked.issues[0]?.message ?? 'The waiver cannot be decided now.', checked.issues)
    const confirmedBy = confirmed.value === null ? null : await requireConfirmed(context, confirmed.value)
    return storeDecision(context, loaded, { ...input, confirmedBy }, item)
  })
}

function requireDecider(
  standing: Standing,
  scope: RevisionScope,
  decision: DecideWaiverInput['decision'],
  proposedBy: string,
  needsSecondPerson: boolean,
): void {
  const makeSubject = (subject: RevisionScope['subject']) =>
    ({ ...subject, kind: 'waiver', proposedBy, needsSecondPerson }) as const
  const isOwn = decision === 'approve' && needsSecondPerson && proposedBy === standing.userId
  // A lead who would approve the own proposal is told so, rather than that approving is not theirs.
  if (isOwn && isAllowed(standing, 'waiver:decline', makeSubject(scope.subject))) {
    refuseClash('Whoever proposed a waiver does not approve it: another lead must.')
  }
  requireAtStage(standing, scope.subject, decision === 'approve' ? 'waiver:approve' : 'waiver:decline', makeSubject)
}

async function storeDecision(
  context: WriteContext,
  loaded: LoadedRevision,
  input: DecideWaiverInput & { readonly confirmedBy: ConfirmedBy | null },
  item: ItemStanding['item'],
): Promise<{ version: number }> {
  const { tx, standing, at, record } = context
  const state = input.decision === 'approve' ? ('approved' as const) : ('declined' as const)
  // To decide on a waiver is not to edit: the decision has its own record, and its author stays a second pair of eyes.
  const { version } = await changeContent(context, loaded, null, async () => {
    await tx.waiver.update({
      where: { id: input.waiverId },
      data: { state, decidedById: standing.userId, decidedAt: at, decisionNote: input.reason },
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
        ...(input.confirmedBy === null ? {} : { confirmedBy: input.confirmedBy }),
      },
    })
  })
  return { version }
}
