import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeProject, makeTeam, PASSWORD } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('a project as a whole', (current) => {
  it('gets another name, unless another project has it or somebody else was first; what was said before stays', async () => {
    const team = await makeTeam()
    const { projectId } = team
    const before = await data.getProject(team.lead, projectId)
    const change = {
      projectId,
      seenName: before.name,
      name: 'Wheatear tail',
      description: 'Tail of the',
      reason: 'typo',
    }
    await expectDone(data.changeProject(team.lead, change))
    expect(await data.getProject(team.member, projectId)).toMatchObject({ name: 'Wheatear tail', may: { edit: false } })
    expect((await expectRefused(data.changeProject(team.lead, change))).kind).toBe('clash')
    const other = await makeProject('Dunlin', team.lead.userId)
    const { name } = await db().project.findUniqueOrThrow({ where: { id: other } })
    const taken = { ...change, seenName: 'Wheatear tail', name: name.toUpperCase() }
    expect(await expectRefused(data.changeProject(team.lead, taken))).toMatchObject({ issues: [{ code: 'taken' }] })
    // Another way of writing its own name is no clash with itself.
    await expectDone(data.changeProject(team.lead, { ...taken, name: 'WHEATEAR tail' }))
    const { timeline } = await data.getProject(team.lead, projectId)
    expect(timeline.map(({ sentence }) => sentence)).toContain(
      `renamed the project from ${before.name} to Wheatear tail: typo`,
    )
  })

  it('keeps its name while somebody is to sign under it', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const { name: seenName, projectId } = {
      ...(await data.getProject(team.lead, team.projectId)),
      projectId: team.projectId,
    }
    const renaming = { projectId, seenName, name: 'Godwit', description: '', reason: 'better' }
    expect(await expectRefused(data.changeProject(team.lead, renaming))).toMatchObject({
      kind: 'clash',
      message: expect.stringContaining('awaits signature'),
    })
    // Its purpose names nothing that is signed.
    await expectDone(data.changeProject(team.lead, { ...renaming, name: seenName, description: 'A strap' }))
    expect((await data.getRevision(team.lead, revisionId)).project.name).toBe(seenName)
  })

  it('keeps its name once a revision is released: a later drawing must not name another project than the package', async () => {
    const { team } = await current().startFrom('released')
    const { projectId, lead } = team
    const { name: seenName } = await data.getProject(lead, projectId)
    const renaming = { projectId, seenName, name: 'Godwit', description: '', reason: 'better' }
    expect(await expectRefused(data.changeProject(lead, renaming))).toMatchObject({
      kind: 'clash',
      message: expect.stringContaining('was released under this name'),
    })
    await expectDone(data.changeProject(lead, { ...renaming, name: seenName, description: 'A strap' }))
    expect(await data.getProject(lead, projectId)).toMatchObject({ name: seenName, description: 'A strap' })
  })

  it('is archived once nothing in it is open; then nothing begins there until it is back', async () => {
    const team = await makeTeam()
    const { projectId } = team
    const revisionId = await makeRevision(team)
    const set = (isArchived: boolean) => data.archiveProject(team.lead, { projectId, isArchived, reason: 'over' })
    expect(await expectRefused(set(true))).toMatchObject({ kind: 'clash', message: expect.stringMatching(/^Open: R/) })
    const { version } = await data.getRevision(team.lead, revisionId)
    const withdrawal = { revisionId, seenVersion: version, reason: 'not built', password: PASSWORD }
    await expectDone(data.withdrawRevision(team.lead, withdrawal))
    await expectDone(set(true))
    await expectDone(set(true))
    expect(await data.listProjects(team.observer)).toMatchObject({
      open: { rows: [], total: 0 },
      archived: { rows: [{ id: projectId, isArchived: true }], total: 1 },
    })
    expect((await data.getRevision(team.observer, revisionId)).stage).toBe('withdrawn')
    const begun = { projectId, label: 'Z', origin: { kind: 'blank' as const } }
    expect(await expectRefused(data.createRevision(team.lead, begun))).toMatchObject({
      kind: 'clash',
      message: expect.stringContaining('archived'),
    })
    await expectDone(set(false))
    await expectDone(data.createRevision(team.lead, begun))
    const words = await db().trailRecord.findMany({
      where: { projectId, subjectKind: 'project' },
      orderBy: { sequence: 'asc' },
    })
    expect(words.map(({ action }) => action)).toEqual(['project-archived', 'project-brought-back'])
  })
})
