// Run by demo-trail.test.ts on the demo data, in a process of its own with their data folder: takes Skua, revision B, from where the scenario
// leaves it to its release, so that its package can be audited as Pipit's is.
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { runJobsInPlace } from '@/lib/jobs'
import { CAST, DEMO_PASSWORD as password } from '@/seed/sign-ins'
import { expectDone } from '@/test/factories/act-results'
import { getActorOf } from '@/test/factories/people'
import { answer } from '@/test/factories/reviews'

runJobsInPlace()

type Who = Exclude<keyof typeof CAST, 'observer' | 'auditor' | 'admin'>

async function actorOf(who: Who): Promise<data.Actor> {
  const { id } = await db().user.findUniqueOrThrow({ where: { email: CAST[who].email }, select: { id: true } })
  return getActorOf(id)
}

const { id: revisionId } = await db().revision.findFirstOrThrow({ where: { label: 'B', project: { name: 'Skua' } } })
const see = async (who: Who) => data.getRevision(await actorOf(who), revisionId)
const at = async (who: Who) => ({ revisionId, seenVersion: (await see(who)).version })

async function settleThreads(): Promise<void> {
  for (const { id: threadId } of (await see('ostrel')).threads.filter(({ kind }) => kind === 'engineering-query')) {
    const text = 'Over the contact line and 1 mm beyond it on either side.'
    await expectDone(data.replyToThread(await actorOf('designer'), { threadId, text, isAnswer: true }))
    const thread = (await see('ostrel')).threads.find(({ id }) => id === threadId)
    const closing = { threadId, seenVersion: thread?.version ?? 0, reason: 'That is how we plate them.' }
    await expectDone(data.closeThread(await actorOf('ostrel'), { ...closing, done: { kind: 'no-change' } }))
  }
}

async function declineProposals(): Promise<void> {
  for (const { id: proposalId } of await db().proposal.findMany({ where: { revisionId, state: 'proposed' } })) {
    const { designVersion: seenVersion } = await see('lead')
    const decision = { proposalId, seenVersion, decision: 'decline' as const, reason: 'The mount needs 1 mm there.' }
    await expectDone(data.decideProposal(await actorOf('lead'), decision))
  }
}

async function answerTheRest(): Promise<void> {
  for (const who of ['designer', 'mechanical', 'brackenfold', 'ostrel', 'lead', 'quality'] as const) {
    const actor = await actorOf(who)
    for (const item of (await see(who)).items) {
      if (item.state === 'open' && item.mayAnswer) await answer(actor, revisionId, item)
    }
  }
  for (const { itemId } of (await see('designer')).items.filter(({ needsWaiver }) => needsWaiver)) {
    const waiver = {
      revisionId,
      itemId,
      reason: 'Accepted for ten prototypes, which are flexed before more are made.',
      consequence: 'A prototype may fail before the end of its test.',
      quantityLimit: 10,
    }
    const { waiverId } = await expectDone(data.proposeWaiver(await actorOf('designer'), waiver))
    const decision = { waiverId, decision: 'approve' as const, reason: 'Prototypes alone.', password }
    await expectDone(data.decideWaiver(await actorOf('quality'), decision))
  }
}

async function letDifferencesStand(): Promise<void> {
  for (const { key, acknowledged, isDecidedInChecklist } of (await see('quality')).signOff.differences) {
    if (acknowledged !== null || isDecidedInChecklist) continue
    const stand = { ...(await at('quality')), key, reason: 'Read on both, and agreed with the lead.' }
    await expectDone(data.acknowledgeDifference(await actorOf('quality'), stand))
  }
}

async function advance(): Promise<void> {
  await expectDone(data.advanceRevision(await actorOf('lead'), await at('lead')))
}

/** A concern that was carried over from the revision before is answered again where the present numbers meet. */
async function answerCarriedConcerns(): Promise<void> {
  for (const item of (await see('designer')).items) {
    const { state, carriedFrom, result, mayAnswer } = item
    if (state !== 'concern' || carriedFrom === null || result.verdict !== 'meets' || !mayAnswer) continue
    const input = { revisionId, itemId: item.itemId, seenVersion: item.answerVersion, state: 'meets' as const }
    await expectDone(
      data.answerItem(await actorOf('designer'), { ...input, reason: 'Settled by the construction of this revision.' }),
    )
  }
}

await settleThreads()
await declineProposals()
await answerCarriedConcerns()
await answerTheRest()
await expectDone(
  data.declareBuildable(await actorOf('ostrel'), {
    ...(await at('ostrel')),
    verdict: 'buildable',
    note: '',
    conditions: [],
    password,
  }),
)
await answerTheRest()
await advance()
await letDifferencesStand()
const note = 'Drawing against the artwork, and every item that is not computed.'
await expectDone(data.declareReviewed(await actorOf('quality'), { ...(await at('quality')), note, password }))
const { contentHash, statement } = await see('lead')
const signing = { ...(await at('lead')), contentHash, capacity: 'lead engineer', statement, password }
await expectDone(data.signRevision(await actorOf('lead'), signing))
await expectDone(
  data.releaseRevision(await actorOf('lead'), {
    ...(await at('lead')),
    purpose: 'prototypes',
    isConditional: true,
    quantityLimit: 10,
    changeNumber: 'QI-0219',
    reason: 'One thinner layer through the hinge.',
    effectivity: 'first lot',
    password,
  }),
)
