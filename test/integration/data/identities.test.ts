import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { makeTeam, PASSWORD } from '@/test/factories/people'
import { visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings.
process.env.BENDWORTHY_OIDC_ISSUER = 'https://login.example'
process.env.BENDWORTHY_OIDC_CLIENT_ID = 'review'
process.env.BENDWORTHY_OIDC_CLIENT_SECRET = 'a secret of the test'

let count = 0

function identityOf(email: string, isEmailVerified = true) {
  count += 1
  return { issuer: 'https://login.example', subject: `subject ${count}`, email, isEmailVerified }
}

describeOnBothDatabases('an identity at the provider', () => {
  it('opens no account by its address, verified or not', async () => {
    const { lead } = await makeTeam()
    for (const isVerified of [true, false]) {
      const refusal = await expectRefused(data.signInByIdentity(identityOf(lead.email, isVerified), visitFrom('a')))
      expect(refusal).toMatchObject({ kind: 'clash', message: expect.stringContaining('linked') })
    }
    expect(await db().identity.count({ where: { userId: lead.userId } })).toBe(0)
    expect(await db().session.count({ where: { userId: lead.userId } })).toBe(0)
  })

  it('is joined by the person, signed in and with the password', async () => {
    const { lead, member } = await makeTeam()
    const identity = identityOf('another.address@example.org', false)
    expect(await expectRefused(data.beginIdentityLink(lead, { password: 'a wrong guess' }))).toMatchObject({
      kind: 'invalid',
    })
    const { token } = await expectDone(data.beginIdentityLink(lead, { password: PASSWORD }))
    // Anyone who else holds the token joins nothing.
    expect((await data.finishIdentityLink(member, { token, identity })).ok).toBe(false)
    await expectDone(data.finishIdentityLink(lead, { token, identity }))
    expect((await data.finishIdentityLink(lead, { token, identity: identityOf('x@example.org') })).ok).toBe(false)
    expect(await expectSignedIn(data.signInByIdentity(identity, visitFrom('a')))).toMatchObject({
      userId: lead.userId,
    })
    // The same subject at another provider is somebody else.
    expect((await data.signInByIdentity({ ...identity, issuer: 'https://evil.example' }, visitFrom('a'))).ok).toBe(
      false,
    )
    const second = await expectDone(data.beginIdentityLink(member, { password: PASSWORD }))
    const stolen = await expectRefused(data.finishIdentityLink(member, { token: second.token, identity }))
    expect(stolen.message).toContain('another account')
    await expectDone(data.removeIdentity(lead, { password: PASSWORD }))
    expect((await data.signInByIdentity(identity, visitFrom('a'))).ok).toBe(false)
    const actions = (await db().trailRecord.findMany({ where: { subjectId: lead.userId } })).map(({ action }) => action)
    expect(actions).toEqual(['identity-linked', 'identity-removed'])
  }, 400_000)

  it('is joined by an admin’s word, once, for the account’s own address that the provider vouches for', async () => {
    const { admin, lead, member } = await makeTeam()
    await expect(data.allowIdentity(lead, { userId: member.userId })).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.allowIdentity(admin, { userId: member.userId }))
    const tries = [identityOf(member.email, false), identityOf(lead.email), identityOf(`x${member.email}`)]
    for (const identity of tries) expect((await data.signInByIdentity(identity, visitFrom('a'))).ok).toBe(false)
    const own = identityOf(member.email)
    await expectSignedIn(data.signInByIdentity(own, visitFrom('a')))
    await expectSignedIn(data.signInByIdentity(own, visitFrom('a')))
    // A second identity with the same address finds the word used up.
    expect((await data.signInByIdentity(identityOf(member.email), visitFrom('a'))).ok).toBe(false)
  })

  it('of a disabled account opens nothing', async () => {
    const { admin, member } = await makeTeam()
    await expectDone(data.allowIdentity(admin, { userId: member.userId }))
    const own = identityOf(member.email)
    await expectSignedIn(data.signInByIdentity(own, visitFrom('a')))
    await expectDone(data.setAccountState(admin, { userId: member.userId, isDisabled: true }))
    expect((await data.signInByIdentity(own, visitFrom('a'))).ok).toBe(false)
  })
})
