import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { NOTHING_SHARED } from '@/lib/review'
import { expectDone, expectInvited, expectRefused } from '@/test/factories/act-results'
import {
  getActorOf,
  joinFabricator,
  makeProject,
  makeTeam,
  makeUser,
  makeWholeTeam,
  type Team,
  takePart,
} from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

let count = 0
const person = (name: string) => {
  count += 1
  return { name, email: `${name.toLowerCase()}.${count}.${Date.now()}@example.org`, password: 'whimbrel-knot-ruff' }
}
const nameOf = async (companyId: string) => (await db().company.findUniqueOrThrow({ where: { id: companyId } })).name
const actions = async (companyId: string) =>
  (await db().trailRecord.findMany({ where: { companyId }, orderBy: { sequence: 'asc' } })).map(({ action }) => action)
const partOf = async (companyId: string, projectId: string) =>
  db().participation.findUnique({ where: { companyId_projectId: { companyId, projectId } } })

/** A project of the outsider's, in which they are the lead: the person who creates one is. */
async function makeOwnProject({ outsider }: Team): Promise<string> {
  count += 1
  const made = await expectDone(data.createProject(outsider, { name: `Own ${count} ${Date.now()}`, description: '' }))
  return made.projectId
}

describeOnBothDatabases('typing the name of a known company', () => {
  let team: Team
  let projectId: string
  let name: string

  beforeAll(async () => {
    team = await makeTeam()
    projectId = await makeOwnProject(team)
    name = await nameOf(team.companies.brackenfold)
    await expectDone(
      data.saveSheet(team.fabricator, {
        companyId: team.companies.brackenfold,
        kind: 'shelf',
        seenVersion: 0,
        issuedOn: '2026-11-02',
        note: '',
        content: { buildTimeDays: 12, rows: [] },
      }),
    )
  }, 120_000)

  const invite = (typed: string) =>
    data.createInvitation(team.outsider, {
      projectId,
      role: 'fabricator',
      companyName: typed,
      email: 'me@throwaway.example',
    })

  it('makes no link and lets nobody in, however it is written: the company is asked', async () => {
    for (const typed of [name, name.toUpperCase(), `  ${name.replace(' ', '   ')} `.trim()]) {
      const asked = await expectDone(invite(typed))
      expect(asked).toMatchObject({ isAsked: true, company: { id: team.companies.brackenfold } })
      expect(JSON.stringify(asked)).not.toContain('token')
    }
    expect(await db().invitation.count({ where: { projectId } })).toBe(0)
    expect(await db().mailMessage.count({ where: { address: 'me@throwaway.example' } })).toBe(0)
    expect(await partOf(team.companies.brackenfold, projectId)).toMatchObject({
      state: 'asked',
      askedFor: 'me@throwaway.example',
    })
    expect(await actions(team.companies.brackenfold)).toContain('company-asked')
    const counts = async (who: data.Actor) => (await data.listOwnCompanies(who)).map(({ requestCount }) => requestCount)
    expect(await counts(team.fabricator)).toEqual([1])
    expect(await counts(team.rivalFabricator)).toEqual([0])
    expect(await counts(team.outsider)).toEqual([])
  })

  it('opens nothing of it: no sheet, no limit, no page, before it agrees and after it declined', async () => {
    const expectClosed = async () => {
      const { brackenfold } = team.companies
      await expect(data.getCompany(team.outsider, brackenfold)).rejects.toThrow(data.NotFoundError)
      await expect(data.getLimitList(team.outsider, brackenfold)).rejects.toThrow(data.NotFoundError)
      await expect(data.getSheet(team.outsider, brackenfold, 'shelf')).rejects.toThrow(data.NotFoundError)
      const limit = { companyId: brackenfold, key: 'platingInBendUm', value: 1, note: '', seenVersion: 0 }
      await expect(data.setLimit(team.outsider, limit)).rejects.toThrow(data.NotFoundError)
      expect(await data.listCompanies(team.outsider)).toEqual([])
      const { revisionId } = await expectDone(
        data.createRevision(team.outsider, {
          projectId,
          label: `R${Date.now()}`,
          origin: { kind: 'starting-construction', constructionId: 'double-sided' },
        }),
      )
      const shared = await expectRefused(data.shareRevision(team.outsider, { revisionId, companyId: brackenfold }))
      expect(shared).toMatchObject({ kind: 'invalid', issues: [{ path: ['companyId'] }] })
    }
    await expectClosed()
    const seenVersion = (await partOf(team.companies.brackenfold, projectId))?.version ?? 0
    const order = { companyId: team.companies.brackenfold, projectId, reason: 'not known to us', seenVersion }
    await expectDone(data.decideParticipation(team.fabricator, { ...order, decision: 'decline' }))
    await expectClosed()
    expect(await actions(team.companies.brackenfold)).toContain('company-declined')
  })

  it('is its administrators’ to answer: neither the lead who asked nor another of its people decides', async () => {
    const whole = await makeWholeTeam()
    const own = await makeOwnProject(whole)
    const { brackenfold } = whole.companies
    await expectDone(
      data.createInvitation(whole.outsider, {
        projectId: own,
        role: 'fabricator',
        companyName: await nameOf(brackenfold),
      }),
    )
    const order = { companyId: brackenfold, projectId: own, reason: '', seenVersion: 1, decision: 'take-part' as const }
    for (const actor of [whole.sheetWriter, whole.companyMember]) {
      await expect(data.decideParticipation(actor, order)).rejects.toThrow(data.NotAllowedError)
    }
    for (const actor of [whole.outsider, whole.impostor, whole.rivalFabricator]) {
      await expect(data.decideParticipation(actor, order)).rejects.toThrow(data.NotFoundError)
    }
    await expect(data.decideParticipation(whole.admin, order)).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.decideParticipation(whole.fabricator, order))
    const part = await partOf(brackenfold, own)
    expect(part).toMatchObject({
      state: 'takes-part',
      decidedById: whole.fabricator.userId,
      matrixSharing: 'not-shared',
      shelfSharing: 'not-shared',
      ratesSharing: 'not-shared',
    })
    expect(part?.decidedAt).toBeInstanceOf(Date)
    // It takes part and shows nothing until it says what.
    const page = await data.getCompany(whole.outsider, brackenfold)
    expect(page).toMatchObject({ inside: null, may: { viewMatrix: false, viewShelf: false, viewRates: false } })
    await expectDone(
      data.setCompanySharing(whole.fabricator, {
        companyId: brackenfold,
        projectId: own,
        ...NOTHING_SHARED,
        shelf: 'shown',
        seenVersion: 2,
      }),
    )
    expect((await data.getSheet(whole.outsider, brackenfold, 'shelf')).company.id).toBe(brackenfold)
    await expect(data.getSheet(whole.outsider, brackenfold, 'matrix')).rejects.toThrow(data.NotAllowedError)
    await expect(data.getSheet(whole.outsider, brackenfold, 'process-rates')).rejects.toThrow(data.NotAllowedError)
    // In one project, and not in another of the same people.
    expect((await partOf(brackenfold, whole.projectId))?.shelfSharing).toBe('shown')
  })

  it('a person whom the company did not admit gets nothing of it, though a place in the project says so', async () => {
    const whole = await makeWholeTeam()
    const { impostor, companies } = whole
    const revisionId = await makeRevision(whole)
    await share(whole, revisionId)
    await expect(data.getRevision(impostor, revisionId)).rejects.toThrow(data.NotFoundError)
    await expect(data.getProject(impostor, whole.projectId)).rejects.toThrow(data.NotFoundError)
    await expect(data.getCompany(impostor, companies.brackenfold)).rejects.toThrow(data.NotFoundError)
    expect(await data.listProjects(impostor)).toMatchObject({ open: { total: 0 }, archived: { total: 0 } })
  })
})

describeOnBothDatabases('a link of an earlier version into a known company', () => {
  it('lets nobody in, is spent, and stands in the trail', async () => {
    const team = await makeTeam()
    const { token, invitation } = await expectInvited(
      data.createInvitation(team.lead, { projectId: team.projectId, role: 'observer' }),
    )
    const { brackenfold } = team.companies
    await db().invitation.update({ where: { id: invitation.id }, data: { role: 'fabricator', companyId: brackenfold } })
    const guest = person('Throwaway')
    expect((await expectRefused(data.acceptInvitation({ token, ...guest }))).message).toMatch(/must admit you/)
    expect(await db().user.count({ where: { email: guest.email } })).toBe(0)
    expect(await actions(brackenfold)).toContain('company-entry-refused')
    const record = await db().trailRecord.findFirstOrThrow({
      where: { action: 'company-entry-refused', companyId: brackenfold },
    })
    expect(record.actorName).toContain(guest.email)
    expect((await expectRefused(data.joinByInvitation(team.outsider, { token }))).message).toMatch(/withdrawn/)
    expect(await db().companyPerson.count({ where: { companyId: brackenfold } })).toBe(1)
  })
})

describeOnBothDatabases('a name that nobody knows', () => {
  let team: Team
  let other: string
  const typed = `Marram Flex ${Date.now()}`

  beforeAll(async () => {
    team = await makeTeam()
    other = await makeOwnProject(team)
  }, 60_000)

  const inviteTo = (actor: data.Actor, projectId: string) =>
    data.createInvitation(actor, { projectId, role: 'fabricator', companyName: typed })
  const ownCompany = async (projectId: string) => db().company.findFirstOrThrow({ where: { projectId, name: typed } })

  it('makes a company of each project alone: two carry one name and know nothing of each other', async () => {
    const first = await expectInvited(inviteTo(team.lead, team.projectId))
    const second = await expectInvited(inviteTo(team.outsider, other))
    const [a, b] = [await ownCompany(team.projectId), await ownCompany(other)]
    expect(a.id).not.toBe(b.id)
    const joined = await expectDone(data.acceptInvitation({ token: first.token, ...person('Ase') }))
    const ase = await getActorOf(joined.userId)
    const joinedToo = await expectDone(data.acceptInvitation({ token: second.token, ...person('Bo') }))
    const bo = await getActorOf(joinedToo.userId)
    expect(await data.getCompany(ase, a.id)).toMatchObject({
      role: 'administrator',
      ofProjectAlone: expect.any(String),
    })
    await expect(data.getCompany(bo, a.id)).rejects.toThrow(data.NotFoundError)
    await expect(data.getCompany(ase, b.id)).rejects.toThrow(data.NotFoundError)
    const { fabricators } = await data.getProject(team.lead, team.projectId)
    expect(fabricators.find(({ id }) => id === a.id)).toMatchObject({ isOfProjectAlone: true, state: 'takes-part' })
    expect(fabricators.some(({ id }) => id === b.id)).toBe(false)
  })

  it('once somebody is in it, a further invitation asks its administrator', async () => {
    expect(await expectDone(inviteTo(team.lead, team.projectId))).toMatchObject({ isAsked: true })
  })

  it('a second open link does not make a second administrator', async () => {
    const project = await makeOwnProject(team)
    const name = `Dunlin Flex ${Date.now()}`
    const order = { projectId: project, role: 'fabricator' as const, companyName: name }
    const [one, two] = [
      await expectInvited(data.createInvitation(team.outsider, order)),
      await expectInvited(data.createInvitation(team.outsider, order)),
    ]
    // At the same moment: the person who is second finds somebody in it.
    const outcomes = await Promise.all([
      data.acceptInvitation({ token: one.token, ...person('Cy') }),
      data.acceptInvitation({ token: two.token, ...person('Di') }),
    ])
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
    const refused = outcomes.find(({ ok }) => !ok)
    expect(refused?.ok === false && refused.refusal.message).toMatch(/admit/)
    const { id: companyId } = await db().company.findFirstOrThrow({ where: { name } })
    expect(await db().companyPerson.findMany({ where: { companyId } })).toMatchObject([{ role: 'administrator' }])
    expect(await db().membership.count({ where: { companyId } })).toBe(1)
  })

  it('is confirmed by an admin of the workspace alone, as a company of its own', async () => {
    const { id: companyId } = await ownCompany(team.projectId)
    for (const actor of [team.lead, team.fabricator]) {
      await expect(data.confirmCompany(actor, { companyId })).rejects.toThrow(data.NotAllowedError)
    }
    await expectDone(data.confirmCompany(team.admin, { companyId }))
    expect(await db().company.findUniqueOrThrow({ where: { id: companyId } })).toMatchObject({
      projectId: null,
      scopeKey: 'workspace',
    })
    expect(await actions(companyId)).toContain('company-confirmed')
    // From now on the name is known everywhere: the other project's company keeps its own.
    expect(await expectDone(inviteTo(team.outsider, other))).toMatchObject({
      isAsked: true,
      company: { id: companyId },
    })
    const rival = await ownCompany(other)
    expect(await expectRefused(data.confirmCompany(team.admin, { companyId: rival.id }))).toMatchObject({
      issues: [{ path: ['knownCompanyId'] }],
    })
  })

  it('or as a known company: people and acts go over, rights and sheets do not, and it is asked', async () => {
    const rival = await ownCompany(other)
    const known = team.companies.ostrel
    const [bo] = await db().companyPerson.findMany({ where: { companyId: rival.id } })
    const { revisionId } = await expectDone(
      data.createRevision(team.outsider, {
        projectId: other,
        label: 'A',
        origin: { kind: 'starting-construction', constructionId: 'double-sided' },
      }),
    )
    await expectDone(data.shareRevision(team.outsider, { revisionId, companyId: rival.id }))
    const actor = await getActorOf(bo?.userId ?? '')
    const { threadId } = await expectDone(
      data.openThread(actor, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'engineering-query',
        title: 'Which foil?',
        text: 'Which foil is it?',
      }),
    )
    const before = (await data.getProject(actor, other)).timeline.map(({ sentence }) => sentence)
    await expectDone(data.confirmCompany(team.admin, { companyId: rival.id, knownCompanyId: known }))
    expect(await partOf(known, other)).toMatchObject({ state: 'asked', matrixSharing: 'not-shared' })
    expect((await data.listOwnCompanies(team.rivalFabricator)).map(({ requestCount }) => requestCount)).toEqual([1])
    const again = await getActorOf(actor.userId)
    // What was done under the typed name stays in the timeline of the company that it turned out to be, and in no other's.
    const saidTo = async (who: data.Actor) =>
      (await data.getProject(who, other)).timeline.map(({ sentence }) => sentence)
    expect(await saidTo(again)).toEqual(before)
    expect(before.join('\n')).toMatch(/Which foil\?/)
    await takePart(other, team.companies.brackenfold)
    const third = await joinFabricator(await makeUser('Third Party'), other, team.companies.brackenfold, 'member')
    await expectDone(data.shareRevision(team.outsider, { revisionId, companyId: team.companies.brackenfold }))
    expect((await saidTo(third)).join('\n')).not.toMatch(/Which foil\?|Ostrel/)
    expect(again.companies).toEqual([{ companyId: known, role: 'member' }])
    expect((await data.getRevision(again, revisionId)).threads.map(({ id }) => id)).toEqual([threadId])
    const save = { companyId: known, key: 'platingInBendUm', value: 1, note: '', seenVersion: 0 }
    await expect(data.setLimit(again, save)).rejects.toThrow(data.NotAllowedError)
    await expect(data.getCompany(team.outsider, known)).rejects.toThrow(data.NotFoundError)
    expect(await actions(known)).toContain('company-merged')
  })
})

describeOnBothDatabases('somebody of two companies', () => {
  it('finds both, by name, each with what awaits an answer that they may give', async () => {
    const team = await makeTeam()
    const { brackenfold, ostrel } = team.companies
    await db().companyPerson.create({ data: { companyId: ostrel, userId: team.fabricator.userId, role: 'member' } })
    for (const companyName of [await nameOf(brackenfold), await nameOf(ostrel)]) {
      const projectId = await makeOwnProject(team)
      await expectDone(data.createInvitation(team.outsider, { projectId, role: 'fabricator', companyName }))
    }
    const both = await getActorOf(team.fabricator.userId)
    expect(await data.listOwnCompanies(both)).toMatchObject([
      { company: { id: brackenfold }, requestCount: 1 },
      { company: { id: ostrel }, requestCount: 0 },
    ])
  })
})

describeOnBothDatabases('the people of a company', () => {
  let team: Team
  let companyId: string

  beforeAll(async () => {
    team = await makeTeam()
    companyId = team.companies.brackenfold
  }, 60_000)

  it('are admitted by its administrator, to the company alone or to a project in which it takes part', async () => {
    const { token } = await expectDone(data.inviteToCompany(team.fabricator, { companyId, role: 'sheet-writer' }))
    const { userId, projectId } = await expectDone(data.acceptInvitation({ token, ...person('Signe') }))
    expect(projectId).toBeNull()
    const signe = await getActorOf(userId)
    expect(signe).toMatchObject({ memberships: [], companies: [{ companyId, role: 'sheet-writer' }] })
    const limit = { companyId, key: 'platingInBendUm', value: 1, note: '', seenVersion: 0 }
    expect(await expectDone(data.setLimit(signe, limit))).toEqual({ version: 1 })
    await expect(data.inviteToCompany(signe, { companyId, role: 'member' })).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.bringToProject(team.fabricator, { companyId, projectId: team.projectId, userId }))
    expect((await data.getProject(await getActorOf(userId), team.projectId)).role).toBe('fabricator')
    expect(await actions(companyId)).toEqual(expect.arrayContaining(['company-person-joined', 'person-brought']))
  })

  it('are admitted to no project that the company is not in', async () => {
    const projectId = await makeProject('Elsewhere', team.lead.userId)
    const order = { companyId, role: 'member' as const, projectId }
    expect(await expectRefused(data.inviteToCompany(team.fabricator, order))).toMatchObject({
      issues: [{ path: ['projectId'] }],
    })
    const bring = { companyId, projectId, userId: team.fabricator.userId }
    expect(await expectRefused(data.bringToProject(team.fabricator, bring))).toMatchObject({ kind: 'invalid' })
  })

  it('leave every project with the company, which keeps an administrator', async () => {
    const userId = await makeUser('Passing Engineer')
    const { token } = await expectDone(
      data.inviteToCompany(team.fabricator, { companyId, role: 'administrator', projectId: team.projectId }),
    )
    await expectDone(data.joinByInvitation(await getActorOf(userId), { token }))
    await expectDone(data.removeCompanyPerson(team.fabricator, { companyId, userId }))
    expect(await getActorOf(userId)).toMatchObject({ memberships: [], companies: [] })
    const last = { companyId, userId: team.fabricator.userId }
    expect((await expectRefused(data.removeCompanyPerson(team.fabricator, last))).message).toMatch(/last administrator/)
    expect((await expectRefused(data.setCompanyRole(team.fabricator, { ...last, role: 'member' }))).message).toMatch(
      /last/,
    )
  })

  it('all leave a project that the company leaves; nothing of it shows there any more', async () => {
    const other = await makeTeam()
    const { brackenfold } = other.companies
    const seenVersion = (await partOf(brackenfold, other.projectId))?.version ?? 0
    const order = { companyId: brackenfold, projectId: other.projectId, reason: '', seenVersion }
    await expectDone(data.decideParticipation(other.fabricator, { ...order, decision: 'end' }))
    expect((await getActorOf(other.fabricator.userId)).memberships).toEqual([])
    await expect(data.getCompany(other.lead, brackenfold)).rejects.toThrow(data.NotFoundError)
    expect(await partOf(brackenfold, other.projectId)).toMatchObject({ state: 'ended', matrixSharing: 'not-shared' })
  })

  it('of a company without an administrator: an admin of the workspace names the first, and it is in the trail', async () => {
    const other = await makeTeam()
    const { ostrel } = other.companies
    await db().companyPerson.updateMany({ where: { companyId: ostrel }, data: { role: 'member' } })
    const order = { companyId: ostrel, userId: other.rivalFabricator.userId, role: 'administrator' as const }
    await expect(data.setCompanyRole(other.rivalFabricator, order)).rejects.toThrow(data.NotAllowedError)
    await expect(data.setCompanyRole(other.lead, order)).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.setCompanyRole(other.admin, order))
    expect(await actions(ostrel)).toContain('company-role-changed')
    // Naming people opens no sheet.
    await expect(data.getSheet(other.admin, ostrel, 'matrix')).rejects.toThrow(data.NotAllowedError)
    await expect(data.getCompany(other.admin, ostrel)).rejects.toThrow(data.NotAllowedError)
  })
})

describeOnBothDatabases('a matrix that is checked against', () => {
  it('counts the saves that move its verdicts, by day and revision, for the company’s own people', async () => {
    const team = await makeTeam()
    const { brackenfold } = team.companies
    await takePart(team.projectId, brackenfold, { matrix: 'checked', shelf: 'not-shared', rates: 'not-shared' })
    const key = 'conductorWidthMm'
    await expectDone(
      data.setLimit(team.fabricator, { companyId: brackenfold, key, value: 0.1737, note: '', seenVersion: 0 }),
    )
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    const saveWidth = async (widthMm: number) => {
      const { design, designVersion } = await data.getRevision(team.member, revisionId)
      const conductors = design.features.conductors.map((conductor) => ({ ...conductor, widthMm }))
      const changed = { ...design, features: { ...design.features, conductors } }
      await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: changed }))
    }
    const probing = async () => (await data.getCompany(team.fabricator, brackenfold)).inside?.probing ?? []
    await saveWidth(0.3)
    const before = (await probing())[0]?.flips ?? 0
    for (const widthMm of [0.16, 0.3, 0.17, 0.3]) await saveWidth(widthMm)
    const [today, ...more] = await probing()
    expect(more).toEqual([])
    expect((today?.flips ?? 0) - before).toBeGreaterThanOrEqual(4)
    expect(today?.saves).toBeGreaterThanOrEqual(4)
    expect(today?.day).toMatch(/^\d{4}-\d\d-\d\d$/)
    // A save that moves none is not counted.
    const counted = today?.saves
    await saveWidth(0.31)
    expect((await probing())[0]?.saves).toBe(counted)
    expect((await data.getCompany(team.lead, brackenfold)).inside).toBeNull()
    // A copy that is shared is a trial too.
    const copyId = await makeRevision(team)
    const { design, designVersion } = await data.getRevision(team.member, copyId)
    const conductors = design.features.conductors.map((conductor) => ({ ...conductor, widthMm: 0.16 }))
    const narrow = { ...design, features: { ...design.features, conductors } }
    await expectDone(data.saveDesign(team.member, { revisionId: copyId, seenVersion: designVersion, design: narrow }))
    expect(await probing()).toHaveLength(1)
    await share(team, copyId)
    expect(await probing()).toHaveLength(2)
  })

  it('once it is no longer shown, results recorded before show its limit no more', async () => {
    const team = await makeTeam()
    const { brackenfold } = team.companies
    const limit = { companyId: brackenfold, key: 'conductorWidthMm', value: 0.1937, note: '', seenVersion: 0 }
    await expectDone(data.setLimit(team.fabricator, limit))
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    const holds = async (actor: data.Actor) =>
      JSON.stringify(await data.getRevision(actor, revisionId)).includes('0.1937')
    expect(await holds(team.lead)).toBe(true)
    const part = await partOf(brackenfold, team.projectId)
    const sharing = { companyId: brackenfold, projectId: team.projectId, seenVersion: part?.version ?? 0 }
    await expectDone(data.setCompanySharing(team.fabricator, { ...sharing, ...NOTHING_SHARED }))
    expect(await holds(team.lead)).toBe(false)
    expect(new TextDecoder().decode((await data.exportResults(team.lead, revisionId)).bytes)).not.toContain('0.1937')
    const { evaluationRecord } = await data.getRevision(team.lead, revisionId)
    expect(evaluationRecord.staleBecause.join()).toContain('limits')
    expect(await holds(team.fabricator)).toBe(true)
  })
})

describeOnBothDatabases('an observer', () => {
  it('gets neither rates nor shelf where remedies are priced, though the team gets both', async () => {
    const team = await makeTeam()
    const companyId = team.companies.brackenfold
    const save = (kind: 'shelf' | 'panel-formats', content: unknown) =>
      expectDone(
        data.saveSheet(team.fabricator, { companyId, kind, content, seenVersion: 0, issuedOn: '2026-11-02', note: '' }),
      )
    await save('shelf', { buildTimeDays: 12, rows: [] })
    const revisionId = await makeRevision(team)
    await share(team, revisionId)
    expect(await data.getRemedyBases(team.member, revisionId)).toMatchObject([{ shelf: { buildTimeDays: 12 } }])
    expect(await data.getRemedyBases(team.observer, revisionId)).toEqual([])
    expect((await data.getFabricationFit(team.observer, revisionId)).fabricators.map(({ shelf }) => shelf)).toEqual([
      null,
      null,
    ])
    await expect(data.getSheet(team.observer, companyId, 'shelf')).rejects.toThrow(data.NotFoundError)
  })
})
