import { readdir, readFile, stat } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { getSettings, replaceClock } from '@/lib/config'
import {
  type Actor,
  acceptInvitation,
  beginSending,
  claimMail,
  createInvitation,
  getMail,
  getRevision,
  listMail,
  openThread,
  queueDigests,
  replyToThread,
  revokeInvitation,
  sendBackRevision,
  sendMailAgain,
  setAccountState,
  setMailChoices,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { OPTIONAL_MAIL_KINDS, type OptionalMailKind } from '@/lib/mail'
import { deliverBySmtp, deliverToFolder } from '@/lib/server/mail/deliver'
import { sendDueMail } from '@/lib/server/mail/send-due'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import type { Team } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { type ReceivedMail, type SmtpProcess, startSmtpServer } from '@/test/setup/smtp-server'

const MINUTE_MS = 60_000

describeOnBothDatabases('mail', (current) => {
  let smtp: SmtpProcess
  let team: Team
  let revisionId: string
  let time = Date.parse('2026-11-02T03:00:00Z')
  let restoreClock: () => void

  const pass = (minutes: number) => {
    time += minutes * MINUTE_MS
  }
  const send = () => {
    const folder = deliverToFolder()
    return sendDueMail('smtp', { folder, smtp: deliverBySmtp(smtp.url) })
  }
  const sendAll = async () => {
    while ((await send()).sent > 0) pass(0)
  }
  const query = (title: string, text = 'Which foil is meant?') =>
    expectDone(
      openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'engineering-query',
        title,
        text,
      }),
    )
  /** Everybody of the team who may answer a query is written to: leads, members and quality, no observer or auditor. */
  const writtenTo = () => [team.lead, team.secondLead, team.member, team.quality]
  const addressesOf = (mails: readonly ReceivedMail[]) => mails.flatMap(({ to }) => to).toSorted()
  const addresses = (...people: { email: string }[]) => people.map(({ email }) => email).toSorted()

  beforeAll(async () => {
    restoreClock = replaceClock(() => new Date(time))
    smtp = await startSmtpServer()
    ;({ team, revisionId } = await current().startFrom('fabricator-review'))
    await db().mailMessage.deleteMany()
  }, 240_000)

  afterAll(async () => {
    restoreClock?.()
    await smtp?.stop()
  })

  beforeEach(async () => {
    for (const one of writtenTo()) await choose(one, OPTIONAL_MAIL_KINDS)
    await smtp.setMood('take')
    await sendAll()
    smtp.forget()
  })

  it('carries an engineering query to the team, each in a message of their own, as text and as HTML', async () => {
    const { threadId } = await query('Foil of L2')
    await sendAll()
    expect(addressesOf(smtp.received)).toEqual(addresses(...writtenTo()))
    for (const { from, to, raw } of smtp.received) {
      expect(from).toBe(getSettings().mailFrom)
      expect(to).toHaveLength(1)
      expect(raw).toMatch(/^Content-Type: multipart\/alternative/m)
      expect(raw).toMatch(/^Auto-Submitted: auto-generated/m)
      expect(raw).toContain('Which foil is meant?')
      expect(raw.replaceAll('=\r\n', '')).toContain(`threads#thread-${threadId}`)
    }
  })

  it('leaves no message of an act that was refused', async () => {
    const before = await db().mailMessage.count()
    await expectRefused(
      openThread(team.fabricator, {
        revisionId,
        anchor: { kind: 'layer', id: 'no such layer' },
        kind: 'engineering-query',
        title: 'Never opened',
        text: 'nothing',
      }),
    )
    expect(await db().mailMessage.count()).toBe(before)
  })

  it('tries again after a refusal for now, later each time, with the same Message-ID', async () => {
    await setOnly(team.lead)
    await smtp.setMood('later', 2)
    await query('Try again')
    expect(await send()).toEqual({ sent: 0, failed: 1 })
    const first = await db().mailMessage.findFirstOrThrow({ where: { state: 'waiting' } })
    expect(first).toMatchObject({ attempts: 1, lastError: expect.stringContaining('451') })
    expect(await send(), 'not before its time').toEqual({ sent: 0, failed: 0 })
    pass(1)
    expect(await send()).toEqual({ sent: 0, failed: 1 })
    pass(1)
    expect(await send(), 'the second pause is longer').toEqual({ sent: 0, failed: 0 })
    pass(1)
    expect(await send()).toEqual({ sent: 1, failed: 0 })
    expect(smtp.received).toHaveLength(1)
    expect(smtp.received[0]?.raw).toContain(`Message-ID: ${first.messageId}`)
  })

  it('gives up what is refused for good, until an admin has it sent again', async () => {
    await setOnly(team.lead)
    await smtp.setMood('refuse-recipient')
    await query('Refused for good')
    await send()
    pass(600)
    await send()
    expect(smtp.received).toEqual([])
    const { entries, counts } = await listMail(team.admin, 'given-up')
    expect(counts['given-up']).toBe(1)
    expect(entries[0]).toMatchObject({ lastError: expect.stringContaining('550'), attempts: 1 })
    const mailId = entries[0]?.id ?? ''
    await expectDone(sendMailAgain(team.admin, { mailId }))
    expect(await send()).toEqual({ sent: 1, failed: 0 })
    expect(await expectRefused(sendMailAgain(team.admin, { mailId }))).toMatchObject({ kind: 'clash' })
  })

  it('goes on trying a server that does not answer, and sends once it does', async () => {
    await setOnly(team.lead)
    await query('Nobody there')
    const folder = deliverToFolder()
    const nobody = { folder, smtp: deliverBySmtp('smtp://127.0.0.1:9') }
    expect(await sendDueMail('smtp', nobody)).toEqual({ sent: 0, failed: 1 })
    pass(2)
    expect(await send()).toEqual({ sent: 1, failed: 0 })
  })

  it('never sends twice what was handed over before the process died', async () => {
    await setOnly(team.lead)
    await query('Crash before the note')
    const [mail] = await claimMail('smtp')
    if (mail === undefined) throw new Error('nothing was queued')
    expect(await beginSending(mail)).toBe(true)
    await deliverBySmtp(smtp.url).send(mail)
    // Here the process dies: nothing is noted. Another one starts.
    expect(await send()).toEqual({ sent: 0, failed: 0 })
    pass(6)
    await send()
    pass(60 * 24)
    await send()
    expect(smtp.received).toHaveLength(1)
    expect((await getMail(team.admin, mail.id)).state).toBe('uncertain')
    await expectDone(sendMailAgain(team.admin, { mailId: mail.id }))
    await send()
    expect(smtp.received.map(({ raw }) => raw.includes(mail.messageId))).toEqual([true, true])
  })

  it('takes up again what was claimed and never handed over', async () => {
    await setOnly(team.lead)
    await query('Crash before the hand-over')
    const [mail] = await claimMail('smtp')
    if (mail === undefined) throw new Error('nothing was queued')
    expect(await send()).toEqual({ sent: 0, failed: 0 })
    pass(6)
    expect(await send()).toEqual({ sent: 1, failed: 0 })
    expect(await beginSending(mail), 'the first claim counts no more').toBe(false)
    expect(smtp.received).toHaveLength(1)
  })

  it('does not repeat a message whose receipt was cut off', async () => {
    await setOnly(team.lead)
    await smtp.setMood('cut')
    await query('Cut in the middle')
    expect(await send()).toEqual({ sent: 0, failed: 1 })
    pass(60 * 24)
    await send()
    expect(smtp.received).toHaveLength(1)
    expect((await listMail(team.admin, 'uncertain')).entries[0]?.subject).toContain('Cut in the middle')
  })

  it('is sent once by two workers at the same time', async () => {
    for (let index = 0; index < 4; index += 1) await query(`Race ${index}`)
    await Promise.all([send(), send(), send()])
    await sendAll()
    const ids = smtp.received.map(({ raw }) => /^Message-ID: (.*)$/m.exec(raw)?.[1])
    expect(ids).toHaveLength(16)
    expect(new Set(ids).size).toBe(16)
  })

  it('tells who asked that there is an answer, and who is mentioned that they are', async () => {
    const { threadId } = await query('An answer')
    await sendAll()
    smtp.forget()
    await expectDone(
      replyToThread(team.member, { threadId, text: `See the drawing, @${team.lead.name}.`, isAnswer: true }),
    )
    await sendAll()
    expect(addressesOf(smtp.received)).toEqual(addresses(team.lead, team.fabricator))
    const toLead = smtp.received.find(({ to }) => to.includes(team.lead.email))
    expect(toLead?.raw).toContain('mentions you')
  })

  it('does not tell somebody who is mentioned and may not see the thread', async () => {
    await query('For us alone', `@${team.rivalFabricator.name} and @${team.outsider.name} should see this`)
    await sendAll()
    expect(addressesOf(smtp.received)).toEqual(addresses(...writtenTo()))
  })

  it('never names another fabricator to a fabricator', async () => {
    const rival = (await db().company.findUniqueOrThrow({ where: { id: team.companies.ostrel } })).name
    await expectDone(
      openThread(team.member, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'should-change',
        title: `As ${rival} does it`,
        text: `@${team.fabricator.name}: ${team.rivalFabricator.name.toUpperCase()} can do 75 um.`,
        companyId: team.companies.brackenfold,
      }),
    )
    const { version } = await getRevision(team.lead, revisionId)
    const reason = `${rival} needs more time`
    await expectDone(sendBackRevision(team.lead, { revisionId, seenVersion: version, reason }))
    await sendAll()
    const toFabricator = smtp.received.filter(({ to }) => to.includes(team.fabricator.email))
    expect(toFabricator).toHaveLength(2)
    for (const { raw } of toFabricator) {
      expect(raw.toLowerCase()).not.toContain('ostrel')
      expect(raw.toLowerCase()).not.toContain('odile')
    }
    const toSecondLead = smtp.received.filter(({ to }) => to.includes(team.secondLead.email))
    expect(toSecondLead.some(({ raw }) => raw.includes('needs more time'))).toBe(true)
  })

  it('is left out for a kind that the person switched off, and for an account that was disabled since', async () => {
    await expectDone(setMailChoices(team.lead, { kinds: ['answer'] }))
    await query('Not for the lead')
    await expectDone(setAccountState(team.admin, { userId: team.member.userId, isDisabled: true }))
    await sendAll()
    expect(addressesOf(smtp.received)).toEqual(addresses(team.secondLead, team.quality))
    await expectDone(setAccountState(team.admin, { userId: team.member.userId, isDisabled: false }))
  })

  it('carries an invitation whose token is stored nowhere, and none that was withdrawn', async () => {
    const invite = (email: string) =>
      expectDone(createInvitation(team.lead, { projectId: team.projectId, role: 'observer', email }))
    const kept = await invite('ruan.pell@example.org')
    const withdrawn = await invite('nobody.there@example.org')
    await expectDone(revokeInvitation(team.lead, { invitationId: withdrawn.invitation.id }))
    const stored = JSON.stringify(await db().mailMessage.findMany({ where: { kind: 'invitation' } }))
    expect(stored).not.toContain(kept.token)
    await sendAll()
    expect(addressesOf(smtp.received)).toEqual(['ruan.pell@example.org'])
    const link = /invitation\/([\w-]{43})/.exec(smtp.received[0]?.raw.replaceAll('=\r\n', '') ?? '')
    expect(link?.[1]).toBe(kept.token)
    const mail = (await listMail(team.admin)).entries.find(({ to }) => to === 'ruan.pell@example.org')
    expect((await getMail(team.admin, mail?.id ?? '')).text).not.toContain(kept.token)
    await expectDone(
      acceptInvitation({
        token: link?.[1] ?? '',
        name: 'Ruan Pell',
        email: 'ruan.pell@example.org',
        password: 'whimbrel-godwit-7',
      }),
    )
  })

  it('stays in the data folder where no server is set, a file each, for its owner alone', async () => {
    await query('Kept here')
    const folder = deliverToFolder()
    expect(await sendDueMail('folder', { folder, smtp: folder })).toMatchObject({ failed: 0 })
    expect(smtp.received).toEqual([])
    const place = path.join(getSettings().dataFolder, 'mail')
    const files = (await readdir(place)).filter((name) => name.includes('-query-'))
    expect(files.length).toBeGreaterThanOrEqual(4)
    const texts = await Promise.all(files.map((name) => readFile(path.join(place, name), 'utf8')))
    expect(texts.filter((text) => text.includes('Kept here')).length).toBeGreaterThanOrEqual(4)
    expect((await stat(path.join(place, files[0] ?? ''))).mode & 0o077).toBe(0)
  })

  it('sends the day’s digest once a person and day, from the hour on, to whom something waits', async () => {
    time = Date.parse('2027-01-11T05:59:00Z')
    expect(await queueDigests()).toBe(0)
    pass(1)
    await Promise.all([queueDigests(), queueDigests()])
    expect(await queueDigests()).toBe(0)
    await sendAll()
    const digests = smtp.received.filter(({ raw }) => /^Subject: .*waiting for you/m.test(raw))
    const to = addressesOf(digests)
    expect(new Set(to).size).toBe(to.length)
    expect(to).toContain(team.member.email)
    expect(to).not.toContain(team.outsider.email)
    smtp.forget()
    pass(24 * 60)
    await queueDigests()
    await sendAll()
    expect(addressesOf(smtp.received)).toContain(team.member.email)
  })

  function choose(one: Actor, kinds: readonly OptionalMailKind[]): Promise<null> {
    return expectDone(setMailChoices(one, { kinds: [...kinds] }))
  }

  /** Only this person of the team gets mail, so that one act makes one message. */
  async function setOnly(person: Actor): Promise<void> {
    for (const one of writtenTo()) {
      await choose(one, one === person ? OPTIONAL_MAIL_KINDS : [])
    }
  }
})
