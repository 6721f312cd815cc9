import { afterEach, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { VISIT_HERE, visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { runAccountRecover, typeAccountRecover } from './commands'

const NEW_PASSWORD = 'godwit-curlew-dunlin'

let restoreClock = () => {}
afterEach(() => restoreClock())

function setClock(time: string): void {
  restoreClock()
  restoreClock = replaceClock(() => new Date(time))
}

/** The token of the newest link of this kind that was mailed to the address, as the message has it. */
async function readMailedToken(address: string, page: string): Promise<string | null> {
  const claimed = await data.claimMail('folder', 100)
  const texts = claimed.filter((mail) => mail.address === address).map(({ text }) => text)
  for (const text of texts.reverse()) {
    const found = new RegExp(`/${page}/([A-Za-z0-9_-]{43})`).exec(text)?.[1]
    if (found !== undefined) return found
  }
  return null
}

const tokenOf = (link: string): string => link.split('/').at(-1) ?? ''
const listActions = async (userId: string) =>
  (await db().trailRecord.findMany({ where: { subjectId: userId }, orderBy: { sequence: 'asc' } })).map(
    ({ action }) => action,
  )

describeOnBothDatabases('a reset by mail', () => {
  it('is answered alike for every address, sets a password once, ends sessions, and is in the trail', async () => {
    const { member } = await makeTeam()
    const { sessionId } = await data.openSession(member.userId, 'invitation', VISIT_HERE)
    const known = await data.askForReset({ email: member.email }, visitFrom('a'))
    const unknown = await data.askForReset({ email: 'nobody@example.org' }, visitFrom('a'))
    expect(known).toEqual(unknown)
    // Both are noted the same way; who has an account is found out afterwards.
    expect(await db().resetRequest.count()).toBe(2)
    await data.answerResetRequests()
    expect(await db().resetRequest.count()).toBe(0)
    expect(await db().mailMessage.count({ where: { address: 'nobody@example.org' } })).toBe(0)

    const token = await readMailedToken(member.email, 'reset-password')
    if (token === null) throw new Error('no link was mailed')
    const stored = JSON.stringify([await db().oneTimeToken.findMany(), await db().mailMessage.findMany()])
    expect(stored).not.toContain(token)
    expect(await data.previewReset(token)).toMatchObject({ email: member.email })
    const weak = await expectRefused(data.setPasswordByLink({ token, newPassword: 'password1234' }, visitFrom('a')))
    expect(weak).toMatchObject({ kind: 'invalid', issues: [{ path: ['newPassword'] }] })

    const uses = await Promise.all([
      data.setPasswordByLink({ token, newPassword: NEW_PASSWORD }, visitFrom('a')),
      data.setPasswordByLink({ token, newPassword: NEW_PASSWORD }, visitFrom('b')),
    ])
    expect(uses.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await data.previewReset(token)).toBeNull()
    expect(await data.findActor(sessionId, VISIT_HERE)).toBeNull()
    await expectSignedIn(data.authenticate({ email: member.email, password: NEW_PASSWORD }, visitFrom('a')))
    expect(await listActions(member.userId)).toEqual(['reset-mailed', 'password-reset'])
  }, 400_000)

  it('is over after an hour, and with the next one', async () => {
    const { member } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const ask = async () => {
      await expectDone(data.askForReset({ email: member.email }, visitFrom('a')))
      await data.answerResetRequests()
      return (await readMailedToken(member.email, 'reset-password')) ?? ''
    }
    const first = await ask()
    const second = await ask()
    expect(await data.previewReset(first)).toBeNull()
    expect(await data.previewReset(second)).not.toBeNull()
    setClock('2027-03-01T09:01:00Z')
    expect(await data.previewReset(second)).toBeNull()
    expect(
      await expectRefused(data.setPasswordByLink({ token: second, newPassword: NEW_PASSWORD }, visitFrom('a'))),
    ).toMatchObject({ kind: 'clash' })
  }, 400_000)

  it('buries nobody under messages', async () => {
    const { member } = await makeTeam()
    for (let index = 0; index < 6; index += 1) {
      await data.askForReset({ email: member.email }, visitFrom(`place ${index}`))
      await data.answerResetRequests()
    }
    expect(await db().mailMessage.count({ where: { address: member.email, kind: 'password-reset' } })).toBe(3)
  })
})

describeOnBothDatabases('a reset by hand', () => {
  it('is an admin’s link, single-use, and the owner is told', async () => {
    const { admin, lead, member } = await makeTeam()
    await expect(data.makeResetLink(lead, { userId: member.userId })).rejects.toThrow(data.NotAllowedError)
    const { link } = await expectDone(data.makeResetLink(admin, { userId: member.userId }))
    await expectDone(data.setPasswordByLink({ token: tokenOf(link), newPassword: NEW_PASSWORD }, visitFrom('a')))
    const again = { token: tokenOf(link), newPassword: 'another-godwit-curlew' }
    expect(await expectRefused(data.setPasswordByLink(again, visitFrom('a')))).toMatchObject({ kind: 'clash' })
    const told = await db().mailMessage.findMany({ where: { recipientId: member.userId, kind: 'account' } })
    expect(told.map(({ subject }) => subject).toSorted()).toEqual([
      'A link to reset your password was made',
      'Your password was reset',
    ])
    expect(await listActions(member.userId)).toEqual(['reset-link-made', 'password-reset'])
    expect(JSON.stringify(await db().idempotencyKey.findMany())).not.toContain(tokenOf(link))
  }, 400_000)

  it('by the command brings the last admin back, disabled or not', async () => {
    const { admin } = await makeTeam()
    await db().user.update({ where: { id: admin.userId }, data: { disabledAt: new Date() } })
    const made = await data.recoverAccount(admin.email, { removeSecondFactor: false })
    await expectDone(
      data.setPasswordByLink({ token: tokenOf(made?.link ?? ''), newPassword: NEW_PASSWORD }, visitFrom('a')),
    )
    await expectSignedIn(data.authenticate({ email: admin.email, password: NEW_PASSWORD }, visitFrom('a')))
    expect(await data.recoverAccount('nobody@example.org', { removeSecondFactor: false })).toBeNull()
    expect(await listActions(admin.userId)).toEqual(['account-enabled', 'reset-link-made', 'password-reset'])
  }, 400_000)
})

describeOnBothDatabases('the command that recovers an account', (current) => {
  it('prints a link that works once, removes the second factor where it is told to, and exits as it says', async () => {
    const { admin, lead } = await makeTeam()
    await db().user.update({ where: { id: admin.userId }, data: { totpSealed: 'lost with the telephone' } })
    await db().user.update({ where: { id: lead.userId }, data: { totpSealed: 'kept' } })

    const kept = await runAccountRecover(current(), [lead.email])
    expect(kept).toMatchObject({ status: 0 })
    expect((await db().user.findUniqueOrThrow({ where: { id: lead.userId } })).totpSealed).toBe('kept')

    const { status, output } = await runAccountRecover(current(), [admin.email, '--remove-second-factor'])
    expect(output).toMatch(/Open this within a day/)
    expect(status).toBe(0)
    const [, link = ''] = /(https?:\/\/\S+\/reset-password\/\S+)/.exec(output) ?? []
    const newPassword = NEW_PASSWORD
    await expectDone(data.setPasswordByLink({ token: tokenOf(link), newPassword }, visitFrom('a')))
    expect(
      await expectRefused(data.setPasswordByLink({ token: tokenOf(link), newPassword }, visitFrom('a'))),
    ).toMatchObject({
      kind: 'clash',
    })
    await expectSignedIn(data.authenticate({ email: admin.email, password: NEW_PASSWORD }, visitFrom('a')))
    expect(await listActions(admin.userId)).toEqual(['second-factor-removed', 'reset-link-made', 'password-reset'])
  }, 400_000)

  it('says what is wrong and writes nothing: no such account, no address, two of them, an option that there is not', async () => {
    const { admin } = await makeTeam()
    const before = await db().oneTimeToken.count()
    expect(await runAccountRecover(current(), ['nobody@example.org'])).toEqual({
      status: 1,
      output: 'No account has the address nobody@example.org.\n',
    })
    for (const typed of [['no address'], [], [admin.email, admin.email], [admin.email, '--remove-everything']]) {
      const { status, output } = await runAccountRecover(current(), typed)
      expect(status).toBe(2)
      expect(output).not.toMatch(/reset-password|at \S+:\d+/)
    }
    const help = await typeAccountRecover(current(), ['--help'])
    expect(help).toMatchObject({ status: 0, output: expect.stringContaining('--remove-second-factor') })
    expect(await db().oneTimeToken.count()).toBe(before)
  }, 400_000)
})

describeOnBothDatabases('a change of address', () => {
  it('waits for the link that went to the new one, and tells the old one', async () => {
    const { member } = await makeTeam()
    const email = `jorun.${member.userId.slice(0, 8)}@example.org`
    expect(await expectRefused(data.askForAddressChange(member, { email, password: 'a wrong guess' }))).toMatchObject({
      kind: 'invalid',
      issues: [{ path: ['password'] }],
    })
    await expectDone(data.askForAddressChange(member, { email, password: PASSWORD }))
    expect((await data.authenticate({ email, password: PASSWORD }, visitFrom('a'))).ok).toBe(false)
    const token = (await readMailedToken(email, 'confirm-address')) ?? ''
    expect(await data.previewAddressChange(token)).toEqual({ email })
    await expectDone(data.confirmAddress({ token }))
    expect(await expectRefused(data.confirmAddress({ token }))).toMatchObject({ kind: 'clash' })
    await expectSignedIn(data.authenticate({ email, password: PASSWORD }, visitFrom('a')))
    const told = await db().mailMessage.findMany({ where: { address: member.email, kind: 'account' } })
    expect(told.map(({ subject }) => subject).toSorted()).toEqual([
      'A new address was entered for your account',
      'Your address was changed',
    ])
    expect(await listActions(member.userId)).toEqual(['address-change-asked', 'address-changed'])
    expect((await db().user.findUniqueOrThrow({ where: { id: member.userId } })).emailConfirmedAt).not.toBeNull()
  }, 400_000)

  it('to an address that has an account answers alike, and comes to nothing', async () => {
    const { member, lead } = await makeTeam()
    await expectDone(data.askForAddressChange(member, { email: lead.email, password: PASSWORD }))
    expect(await db().mailMessage.count({ where: { address: lead.email } })).toBe(0)
    expect(await db().oneTimeToken.count({ where: { userId: member.userId } })).toBe(0)
  })
})
