import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import {
  type Actor,
  declareBuildable,
  getPackageFile,
  getRevision,
  listWaits,
  openThread,
  releaseRevision,
  replyToThread,
  setMailChoices,
  shareRevision,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { OPTIONAL_MAIL_KINDS } from '@/lib/mail'
import { sha256Hex } from '@/lib/review'
import { deliverBySmtp, deliverToFolder } from '@/lib/server/mail/deliver'
import { sendDueMail } from '@/lib/server/mail/send-due'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { makeRevision, type Stage, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { type ReceivedMail, type SmtpProcess, startSmtpServer } from '@/test/setup/smtp-server'

const addresses = (...people: Actor[]) => people.map(({ email }) => email).toSorted()
const addressesOf = (mails: readonly ReceivedMail[]) => mails.flatMap(({ to }) => to).toSorted()

/** A header of the message, unfolded (RFC 5322, 2.2.3). */
function headerOf({ raw }: ReceivedMail, name: string): string | null {
  const head = (raw.split('\r\n\r\n')[0] ?? '').replaceAll(/\r\n[ \t]+/g, ' ')
  return new RegExp(`^${name}: (.*)$`, 'im').exec(head)?.[1]?.trim() ?? null
}

/** The plain text, as quoted-printable lines are put together again. */
const textOf = ({ raw }: ReceivedMail) => raw.replaceAll('=\r\n', '').replaceAll('=3D', '=').replaceAll('\r\n', '\n')

describeOnBothDatabases('messages about the main events of a review', (current) => {
  let smtp: SmtpProcess
  let team: Team

  /** A copy of its own for each test. */
  const startFrom = async (stage: Stage): Promise<string> => {
    const start = await current().startFrom(stage)
    team = start.team
    return start.revisionId
  }

  const sendAll = async () => {
    const deliveries = { folder: deliverToFolder(), smtp: deliverBySmtp(smtp.url) }
    while ((await sendDueMail('smtp', deliveries)).sent > 0);
  }
  const receive = async () => {
    smtp.forget()
    await sendAll()
    return smtp.received
  }
  const mailTo = (mails: readonly ReceivedMail[], { email }: Actor): ReceivedMail => {
    const found = mails.filter(({ to }) => to.includes(email))
    if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} messages to ${email}`)
    return found[0]
  }

  beforeAll(async () => {
    smtp = await startSmtpServer()
  }, 400_000)
  afterAll(() => smtp?.stop())
  beforeEach(async () => {
    await db().mailMessage.deleteMany()
  })

  it('a revision that is shared: everybody of that company in the project, and nobody of another', async () => {
    team = await makeTeam()
    const revisionId = await makeRevision(team)
    await receive()
    await expectDone(shareRevision(team.lead, { revisionId, companyId: team.companies.brackenfold }))
    const mails = [...(await receive())]
    expect(addressesOf(mails)).toEqual(addresses(team.fabricator))
    const mail = mailTo(mails, team.fabricator)
    expect(headerOf(mail, 'Reply-To')).toBe(`${team.lead.name} <${team.lead.email}>`)
    expect(textOf(mail)).toContain(`/projects/${team.projectId}/revisions/${revisionId}`)
    expect(textOf(mail)).toMatch(/Please review it, .*( by \d{4}-\d\d-\d\d, when|\. The brief states no date)/)
    expect(mail.raw).not.toContain('Ostrel')

    // It waits for the company until somebody of it has opened the revision.
    const waiting = async (who: Actor) =>
      (await listWaits(who)).filter((wait) => wait.revisionId === revisionId).map(({ reason }) => reason)
    expect(await waiting(team.fabricator)).toContain(
      'It was shared with your company, and nobody there has opened it yet',
    )
    expect(await waiting(team.rivalFabricator)).toEqual([])
    await getRevision(team.fabricator, revisionId)
    expect(await waiting(team.fabricator)).toEqual([])

    await expectDone(
      setMailChoices(team.rivalFabricator, { kinds: OPTIONAL_MAIL_KINDS.filter((kind) => kind !== 'shared') }),
    )
    await expectDone(shareRevision(team.lead, { revisionId, companyId: team.companies.ostrel }))
    expect(addressesOf(await receive())).toEqual([])
    await expectDone(setMailChoices(team.rivalFabricator, { kinds: [...OPTIONAL_MAIL_KINDS] }))
  }, 400_000)

  it('"not buildable": the team is told and has something to do, until the fabricator says otherwise', async () => {
    const revisionId = await startFrom('fabricator-review')
    await receive()
    const say = async (isBuildable: boolean, note: string) => {
      const { version } = await getRevision(team.fabricator, revisionId)
      await expectDone(
        declareBuildable(team.fabricator, {
          revisionId,
          seenVersion: version,
          verdict: isBuildable ? 'buildable' : 'not-buildable',
          note,
          conditions: [],
          password: PASSWORD,
        }),
      )
    }
    await say(false, 'The web between the openings is too narrow.')
    const mails = [...(await receive())]
    expect(addressesOf(mails)).toEqual(addresses(team.lead, team.secondLead, team.member, team.quality))
    const mail = mailTo(mails, team.member)
    expect(headerOf(mail, 'Reply-To')).toBe(`${team.fabricator.name} <${team.fabricator.email}>`)
    expect(textOf(mail)).toContain('The web between the openings is too narrow.')
    expect(textOf(mail)).toContain('Please change the design')
    // Quality learns of it, and is not asked for what it may not do.
    const toQuality = textOf(mailTo(mails, team.quality))
    expect(toQuality).toContain('The web between the openings is too narrow.')
    expect(toQuality).not.toContain('Please')

    const waiting = async (who: Actor) =>
      (await listWaits(who)).filter((wait) => wait.revisionId === revisionId && /cannot be built/.test(wait.reason))
    for (const who of [team.lead, team.member]) {
      expect(await waiting(who)).toMatchObject([
        { reason: expect.stringContaining('The web between'), target: { tab: 'sign-off' } },
      ])
    }
    for (const who of [team.observer, team.fabricator, team.rivalFabricator]) expect(await waiting(who)).toEqual([])
    await say(true, '')
    expect(await waiting(team.lead)).toEqual([])
    expect(addressesOf(await receive())).toEqual(addresses(team.lead, team.secondLead, team.member, team.quality))
  }, 400_000)

  it('conditions: a lead is asked to decide on them, others of the team are told', async () => {
    const revisionId = await startFrom('fabricator-review')
    await receive()
    const { version } = await getRevision(team.fabricator, revisionId)
    const conditions = [{ text: 'Only with our coverlay.', field: '', value: '' }]
    const declared = { revisionId, seenVersion: version, verdict: 'with-conditions' as const, note: '', conditions }
    await expectDone(declareBuildable(team.fabricator, { ...declared, password: PASSWORD }))
    const mails = [...(await receive())]
    for (const who of [team.lead, team.secondLead, team.member, team.quality]) {
      const text = textOf(mailTo(mails, who))
      expect(text).toContain('Only with our coverlay.')
      const isLead = who === team.lead || who === team.secondLead
      expect(text.includes('Please decide on each condition')).toBe(isLead)
    }
  }, 400_000)

  it('a release: everybody who may see it, each with the link and the hash of its own edition', async () => {
    const revisionId = await startFrom('awaiting-signature')
    await sign(team.lead, revisionId)
    const { version } = await getRevision(team.lead, revisionId)
    await db().mailMessage.deleteMany()
    await expectDone(
      releaseRevision(team.lead, { revisionId, seenVersion: version, purpose: 'prototypes', password: PASSWORD }),
    )
    const mails = [...(await receive())]
    const ownReaders = [team.secondLead, team.member, team.quality, team.observer, team.auditor]
    const readers = [...ownReaders, team.fabricator, team.rivalFabricator]
    expect(addressesOf(mails)).toEqual(addresses(...readers))
    const hashes = new Set<string>()
    for (const reader of readers) {
      const mail = mailTo(mails, reader)
      const sha256 = sha256Hex((await getPackageFile(reader, revisionId)).bytes)
      expect(textOf(mail)).toContain(`SHA-256 of your package: ${sha256}`)
      expect(textOf(mail)).toContain(`/revisions/${revisionId}/sign-off`)
      hashes.add(sha256)
    }
    expect(hashes.size).toBe(3)
    expect(mailTo(mails, team.fabricator).raw).not.toContain('Ostrel')
    expect(mailTo(mails, team.rivalFabricator).raw).not.toContain('Brackenfold')
  }, 400_000)

  it('threads: later messages about one thing name the earlier ones to the same person, and no other', async () => {
    const revisionId = await startFrom('fabricator-review')
    await receive()
    const open = (title: string) =>
      expectDone(
        openThread(team.fabricator, {
          revisionId,
          anchor: { kind: 'revision', id: '' },
          kind: 'engineering-query',
          title,
          text: 'Which foil is meant?',
        }),
      )
    const { threadId } = await open('Foil of L2')
    const first = mailTo([...(await receive())], team.lead)
    expect(headerOf(first, 'In-Reply-To')).toBeNull()
    const answer = { threadId, isAnswer: true }
    await expectDone(replyToThread(team.member, { ...answer, text: `Rolled-annealed. @${team.lead.name} agrees.` }))
    const mails = [...(await receive())]
    const second = mailTo(mails, team.lead)
    const id = headerOf(first, 'Message-ID')
    expect(id).toMatch(/^<[^ ]+>$/)
    expect(headerOf(second, 'In-Reply-To')).toBe(id)
    expect(headerOf(second, 'References')).toBe(id)
    expect(headerOf(second, 'Reply-To')).toBe(`${team.member.name} <${team.member.email}>`)
    // The fabricator opened the thread and was sent nothing before the answer.
    expect(headerOf(mailTo(mails, team.fabricator), 'In-Reply-To')).toBeNull()
    await expectDone(replyToThread(team.member, { threadId, isAnswer: false, text: `@${team.lead.name} see above.` }))
    const third = mailTo([...(await receive())], team.lead)
    expect(headerOf(third, 'In-Reply-To')).toBe(headerOf(second, 'Message-ID'))
    expect(headerOf(third, 'References')).toBe(`${id} ${headerOf(second, 'Message-ID')}`)

    await open('Coverlay')
    const other = mailTo([...(await receive())], team.lead)
    expect(headerOf(other, 'In-Reply-To')).toBeNull()
    expect(OPTIONAL_MAIL_KINDS).toEqual(expect.arrayContaining(['shared', 'declaration', 'released']))
  }, 400_000)
})
