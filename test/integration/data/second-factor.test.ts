import { Secret, TOTP } from 'otpauth'
import { afterEach, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

let restoreClock = () => {}
afterEach(() => restoreClock())

function setClock(time: string): void {
  restoreClock()
  restoreClock = replaceClock(() => new Date(time))
}

const codeAt = (secret: string, time: string) =>
  new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: Date.parse(time) })

async function turnOnCodes(person: data.Actor, time: string) {
  const { token, secret, address } = await expectDone(data.beginCodeSetUp(person, { password: PASSWORD }))
  const { recoveryCodes } = await expectDone(data.finishCodeSetUp(person, { token, code: codeAt(secret, time) }))
  return { secret, address, recoveryCodes }
}

async function passFirstStep(person: data.Actor, visit = visitFrom('a')): Promise<string> {
  const value = await expectDone(data.authenticate({ email: person.email, password: PASSWORD }, visit))
  if (!('secondStep' in value)) throw new Error('no second step was asked for')
  return value.secondStep
}

describeOnBothDatabases('one-time codes', () => {
  it('stand between password and session; none is taken twice, and the database alone makes none', async () => {
    const { member } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const { secret, address } = await turnOnCodes(member, '2027-03-01T08:00:00Z')
    expect(address).toContain(`secret=${secret}`)
    const stored = await db().user.findUniqueOrThrow({ where: { id: member.userId } })
    expect(JSON.stringify(stored)).not.toContain(secret)
    expect(await db().session.count({ where: { userId: member.userId } })).toBe(0)

    const first = await passFirstStep(member)
    // The code that turned them on was seen: it signs nobody in.
    const shown = codeAt(secret, '2027-03-01T08:00:00Z')
    expect(await expectRefused(data.finishSecondStep({ token: first, code: shown }, visitFrom('a')))).toMatchObject({
      kind: 'invalid',
    })
    setClock('2027-03-01T08:01:00Z')
    const code = codeAt(secret, '2027-03-01T08:01:00Z')
    await expectDone(data.finishSecondStep({ token: first, code }, visitFrom('a')))
    // Neither the step nor the code again; nor a code from before.
    expect((await data.finishSecondStep({ token: first, code }, visitFrom('a'))).ok).toBe(false)
    const second = await passFirstStep(member)
    expect((await data.finishSecondStep({ token: second, code }, visitFrom('a'))).ok).toBe(false)
    const earlier = codeAt(secret, '2027-03-01T08:00:30Z')
    expect((await data.finishSecondStep({ token: second, code: earlier }, visitFrom('a'))).ok).toBe(false)
    setClock('2027-03-01T08:01:30Z')
    const next = codeAt(secret, '2027-03-01T08:01:30Z')
    const together = await Promise.all([
      data.finishSecondStep({ token: second, code: next }, visitFrom('a')),
      data.finishSecondStep({ token: second, code: next }, visitFrom('a')),
    ])
    expect(together.filter(({ ok }) => ok)).toHaveLength(1)
  }, 400_000)

  it('cannot be guessed at for long', async () => {
    const { member } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const { secret } = await turnOnCodes(member, '2027-03-01T08:00:00Z')
    setClock('2027-03-01T08:05:00Z')
    const token = await passFirstStep(member)
    for (let index = 0; index < 8; index += 1) {
      await expectRefused(data.finishSecondStep({ token, code: String(index).padStart(6, '0') }, visitFrom('a')))
    }
    const right = codeAt(secret, '2027-03-01T08:05:00Z')
    expect(await expectRefused(data.finishSecondStep({ token, code: right }, visitFrom('a')))).toMatchObject({
      kind: 'too-many',
    })
  }, 400_000)

  it('have recovery codes: hashed, each good once', async () => {
    const { member } = await makeTeam()
    const time = new Date().toISOString()
    setClock(time)
    const { recoveryCodes } = await turnOnCodes(member, time)
    expect(recoveryCodes).toHaveLength(10)
    const [code = ''] = recoveryCodes
    expect(JSON.stringify(await db().recoveryCode.findMany())).not.toContain(code.replace('-', ''))
    const token = await passFirstStep(member)
    await expectDone(data.finishSecondStep({ token, code: code.toUpperCase() }, visitFrom('a')))
    const again = await passFirstStep(member)
    expect((await data.finishSecondStep({ token: again, code }, visitFrom('a'))).ok).toBe(false)
    expect((await data.getSecondFactor(member)).recoveryCodesLeft).toBe(9)
    const actions = (await db().trailRecord.findMany({ where: { subjectId: member.userId } })).map(
      ({ action }) => action,
    )
    expect(actions).toEqual(['second-factor-added', 'recovery-code-used'])
  }, 400_000)

  it('stay asked for after a reset of the password, until an admin removes them', async () => {
    const { member, admin } = await makeTeam()
    const time = new Date().toISOString()
    setClock(time)
    await turnOnCodes(member, time)
    const { link } = await expectDone(data.makeResetLink(admin, { userId: member.userId }))
    const newPassword = 'godwit-curlew-dunlin'
    await expectDone(data.setPasswordByLink({ token: link.split('/').at(-1) ?? '', newPassword }, visitFrom('a')))
    const credentials = { email: member.email, password: newPassword }
    expect(await expectDone(data.authenticate(credentials, visitFrom('a')))).toHaveProperty('secondStep')
    await expectDone(data.removeSecondFactor(admin, { userId: member.userId }))
    await expectSignedIn(data.authenticate(credentials, visitFrom('a')))
  }, 400_000)
})
