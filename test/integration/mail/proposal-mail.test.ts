import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import {
  type Actor,
  decideProposal,
  getProposal,
  getRevision,
  listLiveEvents,
  proposeChange,
  setMailChoices,
  withdrawProposal,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { OPTIONAL_MAIL_KINDS } from '@/lib/mail'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('word of a proposal', () => {
  let team: Team
  let revisionId: string
  let radiusMm = 20

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 240_000)

  beforeEach(async () => {
    await db().mailMessage.deleteMany()
  })

  afterAll(async () => {
    await db().mailMessage.deleteMany()
  })

  const propose = async (actor: Actor, texts: { title?: string; why?: string } = {}, companyId?: string) => {
    const { design, designVersion: seenVersion } = await getRevision(actor, revisionId)
    radiusMm += 1
    const bends = design.bends.map((bend, index) => (index === 0 ? { ...bend, insideRadiusMm: radiusMm } : bend))
    const base = { revisionId, seenVersion, design: { ...design, bends }, kind: 'must-change' as const }
    return expectDone(
      proposeChange(actor, {
        ...base,
        title: texts.title ?? 'Wider bend',
        why: texts.why ?? 'The press brake has no smaller tool.',
        ...(companyId === undefined ? {} : { companyId }),
      }),
    )
  }
  const decide = async (actor: Actor, proposalId: string, decision: 'accept' | 'decline', reason = 'agreed') => {
    const { designVersion: seenVersion } = await getProposal(actor, proposalId)
    return expectDone(decideProposal(actor, { proposalId, seenVersion, decision, reason }))
  }
  /** Addresses of what is queued, with its kind; emptied. */
  const takeMail = async () => {
    const rows = await db().mailMessage.findMany({ orderBy: { address: 'asc' } })
    await db().mailMessage.deleteMany()
    return rows
  }
  const told = (rows: Awaited<ReturnType<typeof takeMail>>) => rows.map(({ kind, address }) => `${kind} ${address}`)
  const expected = (...people: Actor[]) => people.map(({ email }) => `proposal ${email}`).toSorted()

  it('goes to who decides, once each, with what would change and a link to the proposal', async () => {
    const { proposalId } = await propose(team.fabricator, { why: `@${team.lead.name}: no smaller tool.` })
    const mails = await takeMail()
    expect(told(mails)).toEqual(expected(team.lead, team.secondLead, team.member))
    expect(mails[0]?.subject).toMatch(/Bram Tolley proposes a change "Wider bend"$/)
    expect(mails[0]?.bodyText).toMatch(/It would change: .*inside radius/)
    expect(mails[0]?.bodyText).toContain(`/proposals/${proposalId}`)
    expect(mails[0]?.bodyText).toContain('> @Imke Dahl: no smaller tool.')
  })

  it('of the decision goes to who proposed it and to nobody of another fabricator', async () => {
    const declined = await propose(team.fabricator)
    await takeMail()
    await decide(team.lead, declined.proposalId, 'decline', 'the former cannot grow')
    const mails = await takeMail()
    expect(told(mails)).toEqual(expected(team.fabricator))
    expect(mails[0]?.bodyText).toContain('the former cannot grow')
    const accepted = await propose(team.fabricator)
    await takeMail()
    await decide(team.lead, accepted.proposalId, 'accept')
    const after = (await takeMail()).filter(({ kind }) => kind === 'proposal')
    expect(told(after)).toEqual(expected(team.fabricator))
    expect(after[0]?.subject).toContain('accepted the proposed change')
  })

  it('of the team stays in the team, unless a fabricator takes part, who is told and asked nothing', async () => {
    await propose(team.member)
    expect(told(await takeMail())).toEqual(expected(team.lead, team.secondLead))
    const { proposalId } = await propose(team.member, {}, team.companies.brackenfold)
    const mails = await takeMail()
    expect(told(mails)).toEqual(expected(team.lead, team.secondLead, team.fabricator))
    const toFabricator = mails.find(({ address }) => address === team.fabricator.email)
    expect(toFabricator?.bodyText).not.toContain('Accept or decline')
    expect(toFabricator?.bodyText).toContain('Open the proposal')
    await expectDone(withdrawProposal(team.member, { proposalId, reason: 'found a better one' }))
    expect(told(await takeMail())).toEqual(expected(team.lead, team.secondLead, team.fabricator))
  })

  it('never names another fabricator to a fabricator', async () => {
    const rival = (await db().company.findUniqueOrThrow({ where: { id: team.companies.ostrel } })).name
    const texts = { title: `As ${rival} does it`, why: `${team.rivalFabricator.name.toUpperCase()} bends it so.` }
    const { proposalId } = await propose(team.member, texts, team.companies.brackenfold)
    await decide(team.lead, proposalId, 'decline', `${rival} says no`)
    const mails = (await takeMail()).filter(({ address }) => address === team.fabricator.email)
    expect(mails).toHaveLength(2)
    for (const { subject, bodyText, bodyHtml } of mails) {
      expect(`${subject} ${bodyText} ${bodyHtml}`.toLowerCase()).not.toMatch(/ostrel|odile/)
    }
  })

  it('comes as a mention to the person who switched proposals off, and not at all without either', async () => {
    const without = (...kinds: string[]) => OPTIONAL_MAIL_KINDS.filter((kind) => !kinds.includes(kind))
    await expectDone(setMailChoices(team.lead, { kinds: without('proposal') }))
    await expectDone(setMailChoices(team.member, { kinds: without('proposal', 'mention') }))
    await propose(team.fabricator, { why: `See this, @${team.lead.name} and @${team.member.name}` })
    expect(told(await takeMail())).toEqual(
      [`mention ${team.lead.email}`, `proposal ${team.secondLead.email}`].toSorted(),
    )
    for (const actor of [team.lead, team.member]) {
      await expectDone(setMailChoices(actor, { kinds: [...OPTIONAL_MAIL_KINDS] }))
    }
  })

  it('arrives on open pages of those who see it, said once, with the proposal to open', async () => {
    const start = (await db().trailRecord.findFirstOrThrow({ orderBy: { sequence: 'desc' } })).sequence
    const own = await propose(team.fabricator)
    await decide(team.lead, own.proposalId, 'decline', 'no')
    const inTeam = await propose(team.member)
    await expectDone(withdrawProposal(team.member, { proposalId: inTeam.proposalId, reason: '' }))
    const events = async (actor: Actor) =>
      (await listLiveEvents(actor, revisionId, start)).events.map(({ sentence, proposalId }) => [sentence, proposalId])
    const ofFabricator = [
      ['Bram Tolley proposed "Wider bend" (one input)', own.proposalId],
      ['Imke Dahl declined the proposal "Wider bend": no', own.proposalId],
    ]
    expect(await events(team.fabricator)).toEqual(ofFabricator)
    expect(await events(team.rivalFabricator)).toEqual([])
    expect(await events(team.lead)).toEqual([
      ...ofFabricator,
      ['Jorun Vey proposed "Wider bend" (one input)', inTeam.proposalId],
      ['Jorun Vey withdrew the proposal "Wider bend"', inTeam.proposalId],
    ])
  })
})
