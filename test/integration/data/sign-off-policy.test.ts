import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { SetSignOffPolicyInput } from '@/lib/inputs'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { PASSWORD, type Team } from '@/test/factories/people'
import { answerEverything, declareReview, makeSignInput, type Stage, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const USUAL: Omit<SetSignOffPolicyInput, 'projectId' | 'seenVersion' | 'reason'> = {
  waiverBlocking: 'no-author',
  waiverMajor: 'no-author',
  waiverMinor: 'second-person',
  review: 'no-author',
  authorSigns: 'no',
  authorReleases: 'no',
  differences: 'acknowledged',
  requiredSignatures: 1,
  requiredCapacities: [],
}

const editBrief = async (actor: data.Actor, revisionId: string, quantityPerYear: number) => {
  const { design, designVersion: seenVersion } = await data.getRevision(actor, revisionId)
  const changed = { ...design, brief: { ...design.brief, quantityPerYear } }
  await expectDone(data.saveDesign(actor, { revisionId, seenVersion, design: changed }))
}

const blockers = async (actor: data.Actor, revisionId: string) =>
  (await data.getRevision(actor, revisionId)).signingBlockers.map(({ code }) => code)

const sentencesOf = async (actor: data.Actor, revisionId: string) =>
  (await data.listRevisionTrail(actor, revisionId)).entries.map(({ actorName, sentence }) => `${actorName} ${sentence}`)

describeOnBothDatabases('who made it neither reviews nor approves it', (current) => {
  let team: Team

  /** A copy of its own for each test. */
  const startFrom = async (stage: Stage): Promise<string> => {
    const start = await current().startFrom(stage)
    team = start.team
    return start.revisionId
  }

  const setPolicy = async (change: Partial<SetSignOffPolicyInput>) => {
    const { projectId } = team
    const { version: seenVersion } = await data.getProjectSignOffPolicy(team.lead, projectId)
    const input = { projectId, seenVersion, ...USUAL, reason: 'agreed with the customer', ...change }
    return expectDone(data.setSignOffPolicy(team.lead, input))
  }

  it('a typo that the lead puts right makes the lead an author; an answer and a fabricator’s word make nobody one', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const { signOff } = await data.getRevision(team.lead, revisionId)
    // Fabricators and the member answered, declared and commented; the member alone began the design.
    expect(signOff.authors.map(({ userId, parts }) => [userId, parts])).toEqual([[team.member.userId, ['design']]])
    expect(await blockers(team.lead, revisionId)).toEqual([])

    await editBrief(team.lead, revisionId, 4321)
    expect(await blockers(team.lead, revisionId)).toContain('author-signs')
    const refused = await expectRefused(
      data.signRevision(team.lead, makeSignInput(await data.getRevision(team.lead, revisionId))),
    )
    expect(refused.kind).toBe('blocked')
    const { version } = await data.getRevision(team.lead, revisionId)
    const reviewing = data.declareReviewed(team.lead, {
      revisionId,
      seenVersion: version,
      note: '',
      password: PASSWORD,
    })
    expect((await expectRefused(reviewing)).message).toMatch(/not an author must review/)
  })

  it('a copy keeps its authors: who presses the button becomes none, and who made it stays one', async () => {
    const sourceId = await startFrom('early-review')
    const origin = { kind: 'copy', revisionId: sourceId } as const
    const order = { projectId: team.projectId, label: 'copied', origin }
    const { revisionId } = await expectDone(data.createRevision(team.secondLead, order))
    const { signOff } = await data.getRevision(team.lead, revisionId)
    expect(signOff.authors.map(({ userId }) => userId)).toEqual([team.member.userId])
    expect(signOff.authors[0]?.changes).toBeNull()
  })

  it('a proposal of the team’s that is taken over makes its proposer an author; a fabricator’s does not', async () => {
    const revisionId = await startFrom('fabricator-review')
    const propose = async (actor: data.Actor, note: string) => {
      const { design, designVersion: seenVersion } = await data.getRevision(actor, revisionId)
      const bends = design.bends.map((bend) => ({ ...bend, note }))
      const words = { title: note, why: 'Ours has one.', kind: 'note' as const }
      const order = { revisionId, seenVersion, design: { ...design, bends }, ...words }
      const { proposalId } = await expectDone(data.proposeChange(actor, order))
      const seen = (await data.getRevision(team.member, revisionId)).designVersion
      const decision = { proposalId, decision: 'accept', reason: 'yes', seenVersion: seen } as const
      await expectDone(data.decideProposal(team.member, decision))
    }
    await propose(team.fabricator, 'former on the tool')
    await propose(team.secondLead, 'former of brass')
    const { signOff } = await data.getRevision(team.lead, revisionId)
    const ids = signOff.authors.map(({ userId }) => userId)
    expect(ids.sort()).toEqual([team.member.userId, team.secondLead.userId].sort())
  })

  it('capacities: granted by somebody else, chosen among one’s own, withdrawn for what comes after', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const { projectId, lead, member } = team
    const order = { projectId, capacity: 'Chief Medical Officer', statement: 'answers for the patients' }
    expect(await expectRefused(data.grantCapacity(lead, { ...order, userId: lead.userId }))).toMatchObject({
      issues: [{ path: ['userId'], code: 'own' }],
    })
    for (const person of [team.observer, team.auditor, team.fabricator]) {
      expect(await expectRefused(data.grantCapacity(lead, { ...order, userId: person.userId }))).toMatchObject({
        issues: [{ path: ['userId'], code: 'role' }],
      })
    }
    const input = makeSignInput(await data.getRevision(lead, revisionId))
    const asOfficer = await expectRefused(data.signRevision(lead, { ...input, capacity: 'Chief Medical Officer' }))
    expect(asOfficer.message).toMatch(/is not granted to you/)
    const { grantId } = await expectDone(data.grantCapacity(lead, { ...order, userId: member.userId }))
    const repeated = { ...order, userId: member.userId, capacity: 'chief medical officer' }
    expect(await expectRefused(data.grantCapacity(lead, repeated))).toMatchObject({ issues: [{ code: 'taken' }] })
    await expectDone(data.withdrawCapacity(lead, { grantId, reason: 'a slip' }))
    expect((await data.getRevision(member, revisionId)).may.sign).toBe(false)

    await sign(lead, revisionId)
    const row = await db().signature.findFirstOrThrow({ where: { revisionId } })
    expect(JSON.parse(row.grantJson ?? '{}')).toMatchObject({ grantedByName: team.admin.name })
  })

  it('what is refused is in the trail, without names, and no more often than confirmations may fail', async () => {
    const revisionId = await startFrom('awaiting-signature')
    const input = makeSignInput(await data.getRevision(team.lead, revisionId))
    await expectRefused(data.signRevision(team.lead, { ...input, password: 'a wrong guess' }))
    await expectRefused(data.signRevision(team.lead, { ...input, seenVersion: 1 }))
    await expect(
      data.withdrawRevision(team.member, { revisionId, seenVersion: 1, reason: 'because', password: PASSWORD }),
    ).rejects.toThrow(data.NotAllowedError)
    const sentences = await sentencesOf(team.auditor, revisionId)
    expect(sentences).toEqual(
      expect.arrayContaining([
        `${team.lead.name} was refused (sign): the password was wrong`,
        `${team.lead.name} was refused (sign): the content had changed meanwhile`,
        `${team.member.name} was refused (withdraw revision): not allowed for this person`,
      ]),
    )
    for (let count = 0; count < 12; count++)
      await expectRefused(data.signRevision(team.lead, { ...input, seenVersion: 1 }))
    const noted = await db().trailRecord.count({
      where: { revisionId, action: 'act-refused', actorId: team.lead.userId },
    })
    expect(noted).toBe(8)
    // A stranger leaves nothing, and learns nothing.
    const byOutsider = data.signRevision(team.outsider, input)
    await expect(byOutsider).rejects.toThrow(data.NotFoundError)
    expect((await sentencesOf(team.auditor, revisionId)).filter((text) => text.startsWith(team.outsider.name))).toEqual(
      [],
    )
  })

  it('what is loosened reaches an open revision only when a lead puts it there; what is tightened at once, and the application voids', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await editBrief(team.lead, revisionId, 777)
    await declareAgain(revisionId)
    // Some answers rested on the number.
    await answerEverything(team, revisionId)
    await setPolicy({ authorSigns: 'yes' })
    expect(await blockers(team.lead, revisionId)).toEqual(['author-signs'])
    expect((await sentencesOf(team.auditor, revisionId))[0]).toContain('changed the sign-off policy of the project')

    const { version: seenVersion, signOff } = await data.getRevision(team.lead, revisionId)
    expect(signOff.toFollow?.changes.map(({ direction }) => direction)).toEqual(['loosened'])
    const toVersion = signOff.toFollow?.version ?? 0
    const order = { revisionId, seenVersion, toVersion, reason: 'two people in the shop' }
    await expect(data.followSignOffPolicy(team.member, order)).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.followSignOffPolicy(team.lead, order))
    await sign(team.lead, revisionId)
    const loosened = await data.getRevision(team.lead, revisionId)
    expect(loosened.signOff.loosenedUses).toEqual([`${team.lead.name}, an author of the content, signed it`])
    expect(loosened.signatures[0]?.voidedAt).toBeNull()

    await setPolicy({ authorSigns: 'no' })
    const tightened = await data.getRevision(team.lead, revisionId)
    expect(tightened.signatures[0]).toMatchObject({ isWithdrawn: false, voidedBy: { id: team.lead.userId } })
    expect(tightened.signatures[0]?.voidedAt).not.toBeNull()
    expect(tightened.signatures[0]?.changes.join()).toContain('sign-off policy')
    expect(await blockers(team.lead, revisionId)).toContain('author-signs')
    const voiding = (await sentencesOf(team.auditor, revisionId)).find((text) => text.includes('voided a signature'))
    expect(voiding).toMatch(new RegExp(`^Bendworthy voided a signature, because of a change by ${team.lead.name}`))
    expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
  })

  /** The edit left word and review on other content. */
  async function declareAgain(revisionId: string): Promise<void> {
    for (const actor of [team.fabricator, team.rivalFabricator]) {
      const { version: seenVersion } = await data.getRevision(actor, revisionId)
      const word = {
        revisionId,
        seenVersion,
        verdict: 'buildable' as const,
        conditions: [],
        note: '',
        password: PASSWORD,
      }
      await expectDone(data.declareBuildable(actor, word))
    }
    await declareReview(team.quality, revisionId)
  }

  it('a revision from before policies is under none, and waits until a lead puts it under one', async () => {
    const revisionId = await startFrom('awaiting-signature')
    // As a migration leaves it: outside of every act.
    await db().$executeRawUnsafe(`UPDATE "Revision" SET "signOffPolicyJson" = '' WHERE "id" = '${revisionId}'`)
    expect(await blockers(team.lead, revisionId)).toEqual(['policy-missing'])
    const { version: seenVersion, signOff } = await data.getRevision(team.lead, revisionId)
    expect(signOff.policy).toBeNull()
    const order = { revisionId, seenVersion, toVersion: signOff.toFollow?.version ?? -1, reason: 'the update' }
    await expectDone(data.followSignOffPolicy(team.lead, order))
    expect(await blockers(team.lead, revisionId)).toEqual([])
  })
})
