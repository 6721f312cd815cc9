import type { AuthenticationResponseJSON } from '@simplewebauthn/server'
import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { type Authenticator, makeAuthenticator } from '@/test/factories/authenticator'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings: browsers tie a passkey to a host name.
process.env.BENDWORTHY_PUBLIC_URL = 'https://review.example.org'
const PLACE = { origin: 'https://review.example.org', host: 'review.example.org' }

async function addPasskey(person: data.Actor, key: Authenticator, place = {}) {
  const { token, options } = await expectDone(data.beginPasskeySetUp(person, { password: PASSWORD }))
  const response = key.register(options.challenge, place) as { id: string; response: Record<string, unknown> }
  return data.finishPasskeySetUp(person, { token, name: 'Laptop', response })
}

function signIn(key: Authenticator, challenge: string, place = {}) {
  const response = key.sign(challenge, place) as AuthenticationResponseJSON
  return data.signInByPasskey({ challenge, response }, visitFrom('a'))
}

const draw = async () => (await data.makePasskeyChallenge()).challenge

describeOnBothDatabases('a passkey', () => {
  it('signs in alone, and stands between password and session', async () => {
    const { member } = await makeTeam()
    const key = makeAuthenticator(PLACE)
    expect(await expectRefused(data.beginPasskeySetUp(member, { password: 'a wrong guess' }))).toMatchObject({
      kind: 'invalid',
    })
    await expectDone(addPasskey(member, key))
    expect(await expectSignedIn(signIn(key, await draw()))).toMatchObject({ userId: member.userId })
    const byPassword = data.authenticate({ email: member.email, password: PASSWORD }, visitFrom('a'))
    expect(await expectDone(byPassword)).toHaveProperty('secondStep')
    const [passkey] = (await data.getSecondFactor(member)).passkeys
    await expectDone(data.removePasskey(member, { passkeyId: passkey?.id ?? '', password: PASSWORD }))
    expect((await signIn(key, await draw())).ok).toBe(false)
    const records = await db().trailRecord.findMany({ where: { subjectId: member.userId } })
    expect(records.map(({ action }) => action)).toEqual(['second-factor-added', 'second-factor-removed'])
  }, 400_000)

  it('is not taken from another site, without the check of who holds it, twice, or as a copy', async () => {
    const { member, lead } = await makeTeam()
    const key = makeAuthenticator(PLACE)
    await expectDone(addPasskey(member, key))
    for (const place of [
      { origin: 'https://review.example.org.evil.example' },
      { host: 'evil.example' },
      { isUserVerified: false },
    ]) {
      expect([place, (await signIn(key, await draw(), place)).ok]).toEqual([place, false])
    }
    const challenge = await draw()
    const answer = key.sign(challenge, { counter: 20 }) as AuthenticationResponseJSON
    const twice = await Promise.all([
      data.signInByPasskey({ challenge, response: answer }, visitFrom('a')),
      data.signInByPasskey({ challenge, response: answer }, visitFrom('b')),
    ])
    expect(twice.filter(({ ok }) => ok)).toHaveLength(1)
    // The answer to another challenge, and a counter that went back: somebody copied the key.
    expect((await data.signInByPasskey({ challenge: await draw(), response: answer }, visitFrom('a'))).ok).toBe(false)
    expect((await signIn(key, await draw(), { counter: 20 })).ok).toBe(false)
    await expectSignedIn(signIn(key, await draw(), { counter: 21 }))
    // A stranger's key, and the same key for a second account.
    expect((await signIn(makeAuthenticator(PLACE), await draw())).ok).toBe(false)
    expect((await addPasskey(lead, key)).ok).toBe(false)
    expect((await addPasskey(lead, makeAuthenticator(PLACE), { origin: 'https://evil.example' })).ok).toBe(false)
  }, 400_000)
})
