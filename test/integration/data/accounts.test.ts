import { afterEach, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectInvited, expectRefused, expectSignedIn } from '@/test/factories/act-results'
import { atFullPasswordCost, getActorOf, makeTeam, PASSWORD } from '@/test/factories/people'
import { VISIT_HERE, visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

let restoreClock = () => {}
afterEach(() => restoreClock())

function setClock(time: string): void {
  restoreClock()
  restoreClock = replaceClock(() => new Date(time))
}

async function signIn(actor: data.Actor): Promise<string> {
  return (await data.openSession(actor.userId, 'invitation', VISIT_HERE)).sessionId
}

async function findHere(sessionId: string): Promise<data.Actor> {
  const actor = await data.findActor(sessionId, VISIT_HERE)
  if (actor === null) throw new Error('the session does not count')
  return actor
}

async function getEmail(actor: data.Actor): Promise<string> {
  return (await db().user.findUniqueOrThrow({ where: { id: actor.userId } })).email
}

describeOnBothDatabases('an account', () => {
  it('is signed out on the other devices by a change of password, and not on this one', async () => {
    const team = await makeTeam()
    const here = await signIn(team.member)
    const elsewhere = await signIn(team.member)
    const actor = await findHere(here)
    const input = { currentPassword: PASSWORD, newPassword: 'godwit-curlew-dunlin' }
    await expectDone(data.changePassword(actor, input))
    expect(await data.findActor(elsewhere, VISIT_HERE)).toBeNull()
    expect(await data.findActor(here, VISIT_HERE)).not.toBeNull()
    const email = await getEmail(team.member)
    expect((await data.authenticate({ email, password: PASSWORD }, visitFrom('a'))).ok).toBe(false)
    expect((await data.authenticate({ email, password: input.newPassword }, visitFrom('a'))).ok).toBe(true)
  }, 400_000)

  it('keeps the password under scrypt with the cost that is stored beside it', async () => {
    const { member } = await makeTeam()
    const change = () => data.changePassword(member, { currentPassword: PASSWORD, newPassword: 'godwit-curlew-dunlin' })
    await expectDone(atFullPasswordCost(change))
    const { passwordHash } = await db().user.findUniqueOrThrow({ where: { id: member.userId } })
    expect(passwordHash).toMatch(/^scrypt\$17\$8\$1\$[\w-]{22}\$[\w-]{43}$/)
  }, 400_000)

  it('takes no new password that is common, a sequence, or one’s own name or address', async () => {
    const { member } = await makeTeam()
    const change = (newPassword: string) =>
      expectRefused(data.changePassword(member, { currentPassword: PASSWORD, newPassword }))
    for (const weak of ['Password12345', 'qwertyuiop[]', 'aaaaaaaaaaaaaa', member.email, 'jorun.vey.2027']) {
      expect(await change(weak)).toMatchObject({ kind: 'invalid', issues: [{ path: ['newPassword'], code: 'weak' }] })
    }
  }, 400_000)

  it('that is disabled is refused, and its sessions end at once', async () => {
    const { admin, member } = await makeTeam()
    const session = await signIn(member)
    await expectDone(data.setAccountState(admin, { userId: member.userId, isDisabled: true }))
    expect(await data.findActor(session, VISIT_HERE)).toBeNull()
    const credentials = { email: await getEmail(member), password: PASSWORD }
    expect((await expectRefused(data.authenticate(credentials, visitFrom('a')))).kind).toBe('invalid')
  })
})

describeOnBothDatabases('sessions', () => {
  it('end one by one: signing out leaves the other devices signed in', async () => {
    const { member, lead } = await makeTeam()
    const [laptop, phone, tablet] = [await signIn(member), await signIn(member), await signIn(member)]
    await data.signOut(phone)
    expect(await data.findActor(phone, VISIT_HERE)).toBeNull()
    const actor = await findHere(laptop)
    expect((await data.listOwnSessions(actor)).map(({ id, isThisOne }) => [id, isThisOne])).toEqual([
      [laptop, true],
      [tablet, false],
    ])
    // Somebody else's session is none of theirs.
    await expect(data.endSession(lead, { sessionId: tablet })).rejects.toThrow(data.NotFoundError)
    await expectDone(data.endSession(actor, { sessionId: tablet }))
    expect(await data.findActor(tablet, VISIT_HERE)).toBeNull()
    expect(await data.findActor(laptop, VISIT_HERE)).not.toBeNull()
  }, 400_000)

  it('end together where the person chooses it, and every step is in the trail', async () => {
    const { member } = await makeTeam()
    const [here, elsewhere] = [await signIn(member), await signIn(member)]
    const actor = await findHere(here)
    await expectDone(data.signOutEverywhere(actor, { exceptHere: true }))
    expect(await data.findActor(elsewhere, VISIT_HERE)).toBeNull()
    expect(await data.findActor(here, VISIT_HERE)).not.toBeNull()
    await expectDone(data.signOutEverywhere(actor, { exceptHere: false }))
    expect(await data.findActor(here, VISIT_HERE)).toBeNull()
    const records = await db().trailRecord.findMany({
      where: { actorId: member.userId },
      orderBy: { sequence: 'asc' },
    })
    expect(records.map(({ action }) => action)).toEqual(['signed-in', 'signed-in', 'sessions-ended', 'sessions-ended'])
  }, 400_000)

  it('are over after half a day', async () => {
    const { member } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const session = await signIn(member)
    setClock('2027-03-01T19:59:00Z')
    expect(await data.findActor(session, VISIT_HERE)).not.toBeNull()
    setClock('2027-03-01T20:01:00Z')
    expect(await data.findActor(session, VISIT_HERE)).toBeNull()
  })

  it('of a demo account count on this machine alone', async () => {
    const { member } = await makeTeam()
    await db().user.update({ where: { id: member.userId }, data: { isDemo: true } })
    const credentials = { email: await getEmail(member), password: PASSWORD }
    const refusal = await expectRefused(data.authenticate(credentials, visitFrom('afar')))
    expect(refusal.message).toContain('Demo accounts')
    const { sessionId } = await expectSignedIn(data.authenticate(credentials, VISIT_HERE))
    expect(await data.findActor(sessionId, VISIT_HERE)).not.toBeNull()
    expect(await data.findActor(sessionId, visitFrom('afar'))).toBeNull()
  })
})

describeOnBothDatabases('an invitation', () => {
  const person = (name: string) => ({
    name,
    email: `${name.toLowerCase()}.${Math.trunc(performance.now() * 1000)}@example.org`,
    password: 'whimbrel-knot-ruff',
  })

  it('binds to one project, one company and one role', async () => {
    const { lead, projectId } = await makeTeam()
    const { token, link } = await expectInvited(
      data.createInvitation(lead, { projectId, role: 'fabricator', companyName: 'Marram Flex' }),
    )
    expect(link.endsWith(`/invitation/${token}`)).toBe(true)
    expect(await data.previewInvitation(token)).toMatchObject({
      role: 'fabricator',
      companyName: 'Marram Flex',
      state: 'open',
    })
    const { userId } = await expectDone(data.acceptInvitation({ token, ...person('Ase') }))
    const actor = await getActorOf(userId)
    expect(actor.memberships).toMatchObject([{ projectId, role: 'fabricator' }])
    expect((await data.listCompanies(actor)).map(({ name }) => name)).toEqual(['Marram Flex'])
    expect((await data.previewInvitation(token)).state).toBe('used')
    expect(await expectRefused(data.acceptInvitation({ token, ...person('Bo') }))).toMatchObject({ kind: 'clash' })
  }, 400_000)

  it('expires, can be withdrawn, and is unknown unless it was given out', async () => {
    const { lead, projectId } = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const expiring = await expectDone(data.createInvitation(lead, { projectId, role: 'observer' }))
    const withdrawn = await expectDone(data.createInvitation(lead, { projectId, role: 'observer' }))
    await expectDone(data.revokeInvitation(lead, { invitationId: withdrawn.invitation.id }))
    expect((await expectRefused(data.acceptInvitation({ token: withdrawn.token, ...person('Cy') }))).message).toMatch(
      /withdrawn/,
    )
    setClock('2027-03-15T08:00:00Z')
    expect((await expectRefused(data.acceptInvitation({ token: expiring.token, ...person('Di') }))).message).toMatch(
      /expired on 2027-03-15/,
    )
    await expect(data.previewInvitation('A'.repeat(43))).rejects.toThrow(data.NotFoundError)
  })

  it('made for an address lets nobody else in, and adds a project to an account that is there', async () => {
    const { lead, outsider, projectId } = await makeTeam()
    const email = await getEmail(outsider)
    const { token } = await expectDone(data.createInvitation(lead, { projectId, role: 'observer', email }))
    expect(await expectRefused(data.acceptInvitation({ token, ...person('Eik') }))).toMatchObject({
      kind: 'invalid',
      issues: [{ path: ['email'] }],
    })
    await expectDone(data.joinByInvitation(outsider, { token }))
    // The second click of a double click.
    expect(await expectDone(data.joinByInvitation(outsider, { token }))).toEqual({ projectId })
    expect((await getActorOf(outsider.userId)).memberships).toHaveLength(2)
  }, 400_000)

  it('that is open is not taken with an address that looks like a member’s', async () => {
    const { lead, projectId } = await makeTeam()
    await db().user.create({ data: { email: 'imke.dahl@quillmoor.example', name: 'Imke Dahl', passwordHash: 'none' } })
    const { token } = await expectDone(data.createInvitation(lead, { projectId, role: 'observer' }))
    for (const email of [
      'imkedahl@quillmoor.example',
      'imke.dahl+review@quillmoor.example',
      'imke.dah1@quillmoor.example',
      'irnke.dahl@quillmoor.example',
      'imke.dahl@quil1moor.example',
      'imke.dahl@quillm00r.example',
      'imke.dahl@xn--quillmor-sbh.example',
    ]) {
      const refusal = await expectRefused(data.acceptInvitation({ token, ...person('Impostor'), email }))
      expect([email, refusal]).toMatchObject([email, { kind: 'invalid', issues: [{ path: ['email'] }] }])
    }
    // One that a lead names is the lead's to vouch for.
    const email = 'imkedahl@quillmoor.example'
    const named = await expectDone(data.createInvitation(lead, { projectId, role: 'observer', email }))
    await expectDone(data.acceptInvitation({ token: named.token, ...person('Imke'), email }))
  }, 400_000)
})
