import { Secret, TOTP } from 'otpauth'
import { afterEach, beforeAll, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { Confirmation } from '@/lib/inputs'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeAuthenticator } from '@/test/factories/authenticator'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { makeRevision, makeSignInput } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings: browsers tie a passkey to a host name.
process.env.BENDWORTHY_PUBLIC_URL = 'https://review.example.org'
const PLACE = { origin: 'https://review.example.org', host: 'review.example.org' }

let restoreClock = () => {}
afterEach(() => restoreClock())

/** Sets the clock so many seconds after the present: each one-time code lives for thirty. */
function goOn(seconds: number): Date {
  restoreClock()
  const at = new Date(Date.now() + seconds * 1000)
  restoreClock = replaceClock(() => at)
  return at
}

const codeAt = (secret: string, at: Date) =>
  new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: at.getTime() })

async function turnOnCodes(person: data.Actor) {
  const at = goOn(0)
  const { token, secret } = await expectDone(data.beginCodeSetUp(person, { password: PASSWORD }))
  const { recoveryCodes } = await expectDone(data.finishCodeSetUp(person, { token, code: codeAt(secret, at) }))
  return { secret, recoveryCodes }
}

const WITHOUT = { kind: 'invalid', issues: [{ path: ['code'], code: 'missing' }] }
const WRONG = { kind: 'invalid', issues: [{ path: ['code'], code: 'wrong' }] }

describeOnBothDatabases('what binds others asks for the person again', (current) => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    ;({ team, revisionId } = await current().startFrom('awaiting-signature'))
  }, 400_000)

  const sign = async (actor: data.Actor, given: Partial<Confirmation> = {}) =>
    data.signRevision(actor, { ...makeSignInput(await data.getRevision(actor, revisionId)), ...given })
  const release = async (actor: data.Actor, given: Partial<Confirmation>) => {
    const { version } = await data.getRevision(actor, revisionId)
    return data.releaseRevision(actor, {
      revisionId,
      seenVersion: version,
      purpose: 'prototypes',
      password: '',
      ...given,
    })
  }
  const confirmedBy = async (action: string) => {
    const row = await db().trailRecord.findFirst({ where: { action, revisionId }, orderBy: { sequence: 'desc' } })
    return (JSON.parse(row?.detailsJson ?? '{}') as { confirmedBy?: string }).confirmedBy
  }

  it('a lead with codes signs and releases with password and code; the password alone does neither', async () => {
    const { lead } = team
    const { secret, recoveryCodes } = await turnOnCodes(lead)
    expect(await expectRefused(sign(lead))).toMatchObject(WITHOUT)
    expect(await expectRefused(sign(lead, { code: '000000' }))).toMatchObject(WRONG)
    const at = goOn(60)
    const code = codeAt(secret, at)
    // A right code beside a wrong password is worth nothing, and is not used up by it; nor by an act that is refused.
    expect(await expectRefused(sign(lead, { code, password: 'a wrong guess' }))).toMatchObject({
      issues: [{ path: ['password'] }],
    })
    expect(await expectRefused(sign(lead, { code, contentHash: 'f'.repeat(64) } as object))).toMatchObject({
      kind: 'stale',
    })
    await expectDone(sign(lead, { code }))
    expect(await confirmedBy('revision-signed')).toBe('password and code')

    expect(await expectRefused(release(lead, { password: PASSWORD }))).toMatchObject(WITHOUT)
    // The code that signed releases nothing.
    expect(await expectRefused(release(lead, { password: PASSWORD, code }))).toMatchObject(WRONG)
    const [recovery = ''] = recoveryCodes
    expect(await expectRefused(release(lead, { password: 'a wrong guess', code: recovery }))).toMatchObject({
      issues: [{ path: ['password'] }],
    })
    expect(await db().package.count({ where: { revisionId } })).toBe(0)
    await expectDone(release(lead, { password: PASSWORD, code: recovery }))
    expect(await confirmedBy('revision-released')).toBe('password and recovery code')
    expect((await data.getSecondFactor(lead)).recoveryCodesLeft).toBe(9)
  }, 400_000)

  it('codes cannot be guessed at by somebody who has the session and the password', async () => {
    const { secondLead } = team
    const { secret } = await turnOnCodes(secondLead)
    const at = goOn(60)
    for (let index = 0; index < 8; index += 1)
      await expectRefused(sign(secondLead, { code: String(index).padStart(6, '0') }))
    expect(await expectRefused(sign(secondLead, { code: codeAt(secret, at) }))).toMatchObject({ kind: 'too-many' })
  }, 400_000)
})

describeOnBothDatabases('approving a waiver', () => {
  it('asks for the person again, with a passkey of theirs where they have one; declining does not', async () => {
    const team = await makeTeam()
    const { secondLead, lead } = team
    const revisionId = await makeRevision(team, 'skua-rev-a')
    const item = (await data.getRevision(lead, revisionId)).items.find(({ result }) => result.verdict === 'fails')
    if (item === undefined) throw new Error('nothing to waive')
    const propose = async () =>
      (await expectDone(data.proposeWaiver(team.member, { revisionId, itemId: item.itemId, reason: 'for now' })))
        .waiverId
    const waiverId = await propose()
    const decide = (actor: data.Actor, given: object) =>
      data.decideWaiver(actor, { waiverId, decision: 'approve', reason: '', ...given })
    expect(await expectRefused(decide(secondLead, { password: 'a wrong guess' }))).toMatchObject({
      issues: [{ path: ['password'] }],
    })
    expect(await expectRefused(decide(secondLead, {}))).toMatchObject({ issues: [{ path: ['password'] }] })

    const addKey = async (person: data.Actor) => {
      const key = makeAuthenticator(PLACE)
      const { token, options } = await expectDone(data.beginPasskeySetUp(person, { password: PASSWORD }))
      const response = key.register(options.challenge, {}) as { id: string; response: Record<string, unknown> }
      await expectDone(data.finishPasskeySetUp(person, { token, name: 'Laptop', response }))
      return key
    }
    const [own, foreign] = [await addKey(secondLead), await addKey(lead)]
    expect(await expectRefused(decide(secondLead, { password: PASSWORD }))).toMatchObject(WITHOUT)
    const begin = async (person: data.Actor) => expectDone(data.beginPasskeyConfirmation(person))
    const answer = ({ token, options }: data.PasskeyConfirmation, key: typeof own, place = {}) => ({
      password: PASSWORD,
      passkey: {
        token,
        response: key.sign(options.challenge, place) as unknown as { id: string; response: Record<string, unknown> },
      },
    })
    // Another's key, another's challenge, another site, no check of who holds it: none of them confirms.
    expect((await decide(secondLead, answer(await begin(secondLead), foreign))).ok).toBe(false)
    expect((await decide(secondLead, answer(await begin(lead), own))).ok).toBe(false)
    for (const place of [{ origin: 'https://evil.example' }, { isUserVerified: false }]) {
      expect((await decide(secondLead, answer(await begin(secondLead), own, place))).ok).toBe(false)
    }
    const given = answer(await begin(secondLead), own)
    await expectDone(decide(secondLead, given))
    const row = await db().trailRecord.findFirstOrThrow({ where: { action: 'waiver-approved', revisionId } })
    expect(JSON.parse(row.detailsJson)).toMatchObject({ confirmedBy: 'password and passkey' })

    // What confirmed once confirms nothing else.
    const other = (await data.getRevision(lead, revisionId)).items.find(
      ({ itemId, result }) => itemId !== item.itemId && result.verdict === 'fails',
    )
    if (other === undefined) throw new Error('one item alone fails')
    const order = { revisionId, itemId: other.itemId, reason: 'for now' }
    const second = (await expectDone(data.proposeWaiver(team.member, order))).waiverId
    const again = { waiverId: second, decision: 'approve' as const, reason: '', ...given }
    expect(await expectRefused(data.decideWaiver(secondLead, again))).toMatchObject({ kind: 'clash' })
    await expectDone(data.decideWaiver(secondLead, { waiverId: second, decision: 'decline', reason: 'no need' }))
  }, 400_000)
})
