import { afterEach, expect, it } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/client'
import { expectDone, expectInvited, expectRefused } from '@/test/factories/outcomes'
import { getActorOf, makeTeam, PASSWORD } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'

const FIRST = {
  workspaceName: 'Quillmoor Instruments',
  companyName: 'Quillmoor Instruments',
  projectName: 'Skua',
  name: 'Imke Dahl',
  email: 'imke@example.org',
  password: 'plover-sandpiper-42',
}

let restoreClock = () => {}
afterEach(() => restoreClock())

function setClock(time: string): void {
  restoreClock()
  restoreClock = replaceClock(() => new Date(time))
}

async function getEmail(actor: data.Actor): Promise<string> {
  return (await db().user.findUniqueOrThrow({ where: { id: actor.userId } })).email
}

describeOnBothDatabases(
  'the first account',
  () => {
    it('is made once, however many ask at the same moment, and is lead of the first project', async () => {
      expect(await data.isWorkspaceEmpty()).toBe(true)
      const outcomes = await Promise.all([
        data.createFirstAdmin(FIRST),
        data.createFirstAdmin({ ...FIRST, email: 'other@example.org' }),
      ])
      expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
      expect(await db().user.count()).toBe(1)
      expect(await data.isWorkspaceEmpty()).toBe(false)
      const { id } = await db().user.findFirstOrThrow()
      const actor = await getActorOf(id)
      expect(actor).toMatchObject({ isAdmin: true, memberships: [{ role: 'lead' }] })
      expect((await data.listProjects(actor)).map(({ name }) => name)).toEqual(['Skua'])
      expect(await expectRefused(data.createFirstAdmin(FIRST))).toMatchObject({ kind: 'clash' })
    }, 400_000)

    it('keeps the password under scrypt with the cost that is stored beside it', async () => {
      await expectDone(data.createFirstAdmin(FIRST))
      const { passwordHash } = await db().user.findFirstOrThrow()
      expect(passwordHash).toMatch(/^scrypt\$17\$8\$1\$[\w-]{22}\$[\w-]{43}$/)
      expect((await expectDone(data.authenticate({ email: FIRST.email, password: FIRST.password }))).name).toBe(
        FIRST.name,
      )
      const wrong = await expectRefused(data.authenticate({ email: FIRST.email, password: 'plover-sandpiper-43' }))
      const unknown = await expectRefused(data.authenticate({ email: 'nobody@example.org', password: 'x' }))
      expect(wrong).toEqual(unknown)
    }, 400_000)
  },
  { fresh: 'test' },
)

describeOnBothDatabases('signing in and out', () => {
  it('is slowed down after eight failures for one address, also when guesses come together, until time passes', async () => {
    const team = await makeTeam()
    setClock('2027-03-01T08:00:00Z')
    const email = await getEmail(team.member)
    const guess = () => data.authenticate({ email, password: 'guess' })
    const outcomes = await Promise.all(Array.from({ length: 12 }, guess))
    const messages = outcomes.map((outcome) => (outcome.ok ? 'in' : outcome.refusal.kind))
    expect(messages.filter((kind) => kind === 'invalid')).toHaveLength(8)
    expect(messages.filter((kind) => kind === 'clash')).toHaveLength(4)
    const right = { email, password: PASSWORD }
    expect((await expectRefused(data.authenticate(right))).message).toMatch(/15 min/)
    expect((await data.authenticate({ email: await getEmail(team.lead), password: PASSWORD })).ok).toBe(true)
    setClock('2027-03-01T08:16:00Z')
    await expectDone(data.authenticate(right))
    const kept = await db().signInAttempt.findMany()
    expect(JSON.stringify(kept)).not.toContain(email)
  }, 400_000)

  it('ends other sessions by a change of password and by signing out everywhere', async () => {
    const { member } = await makeTeam()
    const { sessionVersion: first } = await db().user.findUniqueOrThrow({ where: { id: member.userId } })
    const { sessionVersion: second } = await expectDone(
      data.changePassword(member, { currentPassword: PASSWORD, newPassword: 'godwit-curlew-dunlin' }),
    )
    expect(await data.findActor(member.userId, first)).toBeNull()
    expect(await data.findActor(member.userId, second)).not.toBeNull()
    const { sessionVersion: third } = await expectDone(data.signOutEverywhere(member))
    expect(await data.findActor(member.userId, second)).toBeNull()
    expect(await data.findActor(member.userId, third)).not.toBeNull()
    expect((await data.authenticate({ email: await getEmail(member), password: PASSWORD })).ok).toBe(false)
  }, 400_000)

  it('is refused to a disabled account, whose sessions end at once', async () => {
    const { admin, member } = await makeTeam()
    const { sessionVersion } = await db().user.findUniqueOrThrow({ where: { id: member.userId } })
    await expectDone(data.setAccountState(admin, { userId: member.userId, isDisabled: true }))
    expect(await data.findActor(member.userId, sessionVersion)).toBeNull()
    const refusal = await expectRefused(data.authenticate({ email: await getEmail(member), password: PASSWORD }))
    expect(refusal.kind).toBe('invalid')
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
})
