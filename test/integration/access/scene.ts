import type { DatabaseKind } from '@/lib/config'
import {
  acceptInvitation,
  addArtwork,
  attachFile,
  closeThread,
  createInvitation,
  createRevision,
  decideWaiver,
  getProject,
  getRevision,
  grantCapacity,
  openThread,
  proposeChange,
  type RevisionView,
  runKeptJob,
  saveOwnMaterial,
  stateNeed,
  takeOnAction,
  withdrawCapacity,
  withdrawProposal,
  withdrawReview,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { USUAL_ITEMS } from '@/lib/engine/catalogue'
import type { Design } from '@/lib/engine/design'
import { expectDone } from '@/test/factories/act-results'
import { makeOwnMaterial } from '@/test/factories/own-materials'
import { addCompanyPeople, makeUser, PASSWORD, type Team, type WholeTeam } from '@/test/factories/people'
import { declareReview, makeRevisionAt, makeSignInput } from '@/test/factories/reviews'
import type { TestDatabase } from '@/test/setup/databases'

/** Records at every stage, in which each cell of the access table finds what it needs. */
export interface AccessScene {
  readonly kind: DatabaseKind
  readonly team: WholeTeam
  readonly projectName: string
  readonly teamCompanyName: string
  readonly usedInvitationId: string
  readonly design: Design
  /** In preparation, not shared. */
  readonly draftId: string
  readonly draftLabel: string
  readonly artworkId: string
  readonly artworkName: string
  readonly artworkBytes: Uint8Array<ArrayBuffer>
  readonly addFreshArtwork: () => Promise<string>
  /** Reads the draft's artwork as it is now, so that it has a picture. */
  readonly readDraftArtwork: () => Promise<void>
  /** In fabricator review, shared with both fabricators. */
  readonly reviewId: string
  readonly teamItemId: string
  readonly fabricatorItemId: string
  readonly metItemId: string
  readonly declinedWaiverId: string
  readonly attachedBytes: Uint8Array<ArrayBuffer>
  readonly attachFresh: () => Promise<string>
  readonly teamThreadId: string
  readonly brackenfoldThreadId: string
  readonly brackenfoldCommentId: string
  readonly brackenfoldAttachmentId: string
  readonly closedThreadId: string
  /** The lead's to do, within the team. */
  readonly teamActionId: string
  /** Brackenfold's to do. */
  readonly brackenfoldActionId: string
  /** Of Brackenfold, on the revision in fabricator review. */
  readonly conditionId: string
  /** Made and taken back by Brackenfold. */
  readonly withdrawnProposalId: string
  /** Awaiting signature. */
  readonly signingId: string
  readonly signInput: ReturnType<typeof makeSignInput>
  readonly releasedId: string
  /** Declared and withdrawn by quality, on the revision that awaits signature. */
  readonly withdrawnReviewId: string
  /** Let stand by the lead and taken up again, on the revision in review. */
  readonly takenUpDifferenceId: string
  readonly needId: string
  /** A capacity that the member had and that was withdrawn. */
  readonly withdrawnGrantId: string
  /** A message that waits to be sent. */
  readonly mailId: string
  /** A material that the workspace keeps. */
  readonly libraryEntryId: string
}

let count = 0

/** A text file like no other. */
export function freshBytes(): Uint8Array<ArrayBuffer> {
  count += 1
  return new TextEncoder().encode(`file number ${count}\n`)
}

export async function addThrowawayMember(team: Team): Promise<string> {
  const userId = await makeUser('Passing Guest')
  await db().membership.create({
    data: { userId, projectId: team.projectId, companyId: team.companies.team, role: 'observer' },
  })
  return userId
}

export async function makeAccessScene({ kind, startFrom }: TestDatabase): Promise<AccessScene> {
  const start = await startFrom('released')
  const team = await addCompanyPeople(start.team)
  const { member, lead, secondLead } = team
  const releasedId = start.revisionId
  const signingId = await makeRevisionAt(team, 'awaiting-signature')
  const withdrawnReviewId = await makeWithdrawnReview(team, signingId)
  const reviewId = await makeRevisionAt(team, 'fabricator-review')
  const review = await getRevision(lead, reviewId)
  const items = findItems(review)
  const draft = await makeDraft(team)
  const threads = await makeThreads(team, reviewId)
  const attachTo = (bytes: Uint8Array<ArrayBuffer>) =>
    expectDone(
      attachFile(member, {
        revisionId: reviewId,
        target: { kind: 'item', itemId: items.teamItemId },
        fileName: 'photo.txt',
        bytes,
      }),
    )
  const attachedBytes = freshBytes()
  await attachTo(attachedBytes)
  const waiver = await db().waiver.create({
    data: {
      revisionId: reviewId,
      itemId: items.teamItemId,
      state: 'proposed',
      reason: 'to be declined',
      basisHash: '',
      proposedById: member.userId,
    },
  })
  await expectDone(decideWaiver(secondLead, { waiverId: waiver.id, decision: 'decline', reason: 'no need' }))
  return {
    kind,
    team,
    projectName: (await getProject(lead, team.projectId)).name,
    teamCompanyName: (await db().company.findUniqueOrThrow({ where: { id: team.companies.team } })).name,
    usedInvitationId: await makeUsedInvitation(team),
    design: review.design,
    ...draft,
    reviewId,
    ...items,
    declinedWaiverId: waiver.id,
    attachedBytes,
    attachFresh: async () => (await attachTo(freshBytes())).id,
    ...threads,
    ...(await makeActions(team, reviewId)),
    ...(await makeCondition(team, reviewId)),
    withdrawnProposalId: await makeWithdrawnProposal(team, reviewId),
    signingId,
    signInput: makeSignInput(await getRevision(lead, signingId)),
    releasedId,
    withdrawnReviewId,
    takenUpDifferenceId: await makeTakenUpDifference(team, reviewId),
    needId: await makeNeed(team, reviewId),
    withdrawnGrantId: await makeWithdrawnGrant(team),
    mailId: (await db().mailMessage.findFirstOrThrow()).id,
    libraryEntryId: await keepMaterial(team),
  }
}

async function keepMaterial({ lead }: Team): Promise<string> {
  const input = { entryId: null, seenVersion: 0, material: makeOwnMaterial(), reason: 'measured' }
  return (await expectDone(saveOwnMaterial(lead, input))).entryId
}

/** A fabricator's condition. */
async function makeCondition({ fabricator, companies }: Team, revisionId: string) {
  const declaration = await db().declaration.create({
    data: {
      revisionId,
      companyId: companies.brackenfold,
      isBuildable: false,
      verdict: 'with-conditions',
      note: '',
      contentHash: 'f'.repeat(64),
      madeById: fabricator.userId,
    },
  })
  const condition = await db().declarationCondition.create({
    data: { declarationId: declaration.id, ordinal: 1, text: 'Only with our coverlay.' },
  })
  return { conditionId: condition.id }
}

function findItems(review: RevisionView) {
  const isFor = (roles: readonly string[]) => {
    const definition = USUAL_ITEMS.find(({ answeredBy }) => JSON.stringify(answeredBy) === JSON.stringify(roles))
    if (definition === undefined) throw new Error(`no item is answered by ${roles.join(' and ')}`)
    return definition.id
  }
  const met = review.items.find(({ state, result }) => state === 'meets' && result.verdict === 'meets')
  if (met === undefined) throw new Error('the design meets nothing')
  return { teamItemId: isFor(['member']), fabricatorItemId: isFor(['fabricator']), metItemId: met.itemId }
}

async function makeDraft({ member, projectId }: Team) {
  const draftLabel = 'Draft'
  const origin = { kind: 'starting-construction' as const, constructionId: 'double-sided' }
  const { revisionId: draftId } = await expectDone(createRevision(member, { projectId, label: draftLabel, origin }))
  const add = (fileName: string, bytes: Uint8Array<ArrayBuffer>) =>
    expectDone(addArtwork(member, { revisionId: draftId, fileName, bytes }))
  const artworkName = 'layer-1.txt'
  const artworkBytes = freshBytes()
  const { id: artworkId } = await add(artworkName, artworkBytes)
  const addFreshArtwork = async () => (await add(`extra-${count}.txt`, freshBytes())).id
  const readDraftArtwork = async () => {
    const waiting = await db().job.findMany({ where: { revisionId: draftId, kind: 'artwork', state: 'waiting' } })
    for (const { id } of waiting) await runKeptJob(id)
  }
  return { draftId, draftLabel, artworkId, artworkName, artworkBytes, addFreshArtwork, readDraftArtwork }
}

async function makeThreads({ member, fabricator }: Team, revisionId: string) {
  const open = (actor: typeof member, kind: 'note' | 'must-change', title: string) =>
    expectDone(
      openThread(actor, { revisionId, anchor: { kind: 'revision', id: '' }, kind, title, text: 'See the title.' }),
    )
  const { threadId: teamThreadId } = await open(member, 'note', 'Among ourselves')
  const { threadId: brackenfoldThreadId } = await open(fabricator, 'must-change', 'Coverlay web too narrow')
  const { threadId: closedThreadId } = await open(fabricator, 'note', 'Panel size')
  await expectDone(closeThread(fabricator, { threadId: closedThreadId, seenVersion: 1, reason: 'settled' }))
  const comment = await db().comment.findFirstOrThrow({ where: { threadId: brackenfoldThreadId } })
  const attachment = await expectDone(
    attachFile(fabricator, {
      revisionId,
      target: { kind: 'comment', commentId: comment.id },
      fileName: 'web.txt',
      bytes: freshBytes(),
    }),
  )
  return {
    teamThreadId,
    brackenfoldThreadId,
    closedThreadId,
    brackenfoldCommentId: comment.id,
    brackenfoldAttachmentId: attachment.id,
  }
}

async function makeActions({ member, lead, fabricator, companies }: Team, revisionId: string) {
  const takeOn = async (ownerId: string, companyId?: string) => {
    const origin = { kind: 'revision' as const, id: '' }
    const what = { text: 'Measure the first articles', ownerId, due: 'before-series' as const, dueOn: '' }
    const audience = companyId === undefined ? {} : { companyId }
    return (await expectDone(takeOnAction(member, { revisionId, origin, ...what, ...audience }))).actionId
  }
  return {
    teamActionId: await takeOn(lead.userId),
    brackenfoldActionId: await takeOn(fabricator.userId, companies.brackenfold),
  }
}

async function makeWithdrawnProposal({ fabricator }: Team, revisionId: string): Promise<string> {
  const { design, designVersion: seenVersion } = await getRevision(fabricator, revisionId)
  const proposed = { ...design, bends: design.bends.map((bend) => ({ ...bend, note: 'former on the tool' })) }
  const texts = { title: 'Former', why: 'Ours has one.', kind: 'note' as const }
  const { proposalId } = await expectDone(
    proposeChange(fabricator, { revisionId, seenVersion, design: proposed, ...texts }),
  )
  await expectDone(withdrawProposal(fabricator, { proposalId, reason: 'not needed' }))
  return proposalId
}

async function makeWithdrawnGrant({ lead, member, projectId }: Team): Promise<string> {
  const words = { capacity: 'layout engineer', statement: 'answers for the layout' }
  const { grantId } = await expectDone(grantCapacity(lead, { projectId, userId: member.userId, ...words }))
  await expectDone(withdrawCapacity(lead, { grantId, reason: 'moved to another project' }))
  return grantId
}

/** Withdrawn, and declared once more, so that the revision can still be signed. */
async function makeWithdrawnReview({ quality }: Team, revisionId: string): Promise<string> {
  const { id: reviewId } = await db().reviewStatement.findFirstOrThrow({ where: { revisionId } })
  await expectDone(withdrawReview(quality, { reviewId, reason: 'a sheet was missing', password: PASSWORD }))
  await declareReview(quality, revisionId)
  return reviewId
}

async function makeTakenUpDifference({ lead }: Team, revisionId: string): Promise<string> {
  const at = new Date()
  const row = await db().differenceAcknowledgement.create({
    data: {
      revisionId,
      differenceKey: 'f'.repeat(64),
      fact: 'Class',
      said: 'class 3',
      against: 'class 2',
      reason: 'agreed',
      acknowledgedById: lead.userId,
      acknowledgedAt: at,
      withdrawnById: lead.userId,
      withdrawnAt: at,
    },
  })
  return row.id
}

async function makeNeed({ member }: Team, revisionId: string): Promise<string> {
  const need = {
    revisionId,
    text: 'Bears ten turns round the housing.',
    itemIds: [],
    method: 'test' as const,
    plannedOn: '',
  }
  return (await expectDone(stateNeed(member, need))).needId
}

async function makeUsedInvitation({ lead, projectId }: Team): Promise<string> {
  const { token, invitation } = await expectDone(createInvitation(lead, { projectId, role: 'observer' }))
  const person = { name: 'Rasmus Hale', email: `rasmus.${Date.now()}@example.org`, password: 'whimbrel-knot-ruff' }
  await expectDone(acceptInvitation({ token, ...person }))
  return invitation.id
}
