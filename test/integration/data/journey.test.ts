import { expect, it } from 'vitest'
import {
  checkWholeTrail,
  createRevision,
  getPackageFile,
  getProject,
  getRevision,
  listProjects,
  listRevisionTrail,
  listWaits,
  saveDesign,
} from '@/lib/data'
import { verifyPackage } from '@/lib/package'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam } from '@/test/factories/people'
import { makeReleasedRevision, makeRevision, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('a revision from brief to released package', (current) => {
  it('is released with a package that verifies, in an edition for each reader', async () => {
    const team = await makeTeam()
    const revisionId = await makeReleasedRevision(team)
    const view = await getRevision(team.observer, revisionId)
    expect(view.stage).toBe('released')
    expect(view.blockers).toEqual([])
    expect(view.signatures).toHaveLength(1)
    expect(view.signatures[0]).toMatchObject({ voidedAt: null, contentHash: view.contentHash })

    const teamEdition = await getPackageFile(team.observer, revisionId)
    const fabricatorEdition = await getPackageFile(team.fabricator, revisionId)
    const verified = await verifyPackage(teamEdition.bytes)
    expect(verified.ok).toBe(true)
    expect((await verifyPackage(fabricatorEdition.bytes)).ok).toBe(true)
    expect(Buffer.from(fabricatorEdition.bytes).includes('Ostrel')).toBe(false)
    expect(Buffer.from(teamEdition.bytes).includes('Ostrel')).toBe(true)

    expect((await checkWholeTrail(team.admin)).firstBad).toBeNull()
    const actions = (await listRevisionTrail(team.lead, revisionId)).entries.map(({ action }) => action)
    // The newest first: two fetched their edition; each edition was issued, the team's and one for each fabricator.
    const issued = ['package-issued', 'package-issued', 'package-issued']
    expect(actions.slice(0, 6)).toEqual(['package-fetched', 'package-fetched', ...issued, 'revision-released'])
    expect(actions).toContain('revision-signed')
  }, 400_000)

  it('is superseded by the release of a later one', async () => {
    const { team, revisionId: first } = await current().startFrom('released')
    const second = await makeReleasedRevision(team, 'The tail was too short.')
    expect((await getRevision(team.lead, second)).release).toMatchObject({
      reason: 'The tail was too short.',
      replaces: (await getRevision(team.lead, first)).label,
    })
    expect(await getRevision(team.lead, first)).toMatchObject({
      stage: 'superseded',
      supersededBy: { id: second },
    })
    expect((await listProjects(team.lead)).open.rows[0]?.latestRevision?.id).toBe(second)
    expect((await getProject(team.lead, team.projectId)).revisions).toHaveLength(2)
  }, 400_000)

  it('loses its signature by a later edit, which says what changed', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    expect((await listWaits(team.lead)).map(({ nextAct }) => nextAct)).toContain('Review and sign it')
    await sign(team.lead, revisionId)
    const { design, designVersion } = await getRevision(team.lead, revisionId)
    const changed = { ...design, brief: { ...design.brief, quantityPerYear: 4321 } }
    const saved = await expectDone(saveDesign(team.lead, { revisionId, seenVersion: designVersion, design: changed }))
    expect(saved.voidedSignatures).toBe(1)
    const view = await getRevision(team.lead, revisionId)
    expect(view.signatures[0]?.changes.join('\n')).toContain('4321')
    expect(view.blockers.map(({ code }) => code)).toContain('signature-missing')
  }, 400_000)

  it('can be copied: the copy starts over with the same design under its own label', async () => {
    const team = await makeTeam()
    const source = await makeRevision(team)
    const origin = { kind: 'copy' as const, revisionId: source }
    const { revisionId } = await expectDone(
      createRevision(team.member, { projectId: team.projectId, label: 'next', origin }),
    )
    const [a, b] = [await getRevision(team.member, source), await getRevision(team.member, revisionId)]
    expect(b.design).toEqual({ ...a.design, brief: { ...a.design.brief, revisionLabel: 'next' } })
    expect(a.design.brief.revisionLabel).toBe(a.label)
    expect(b).toMatchObject({ stage: 'preparing', basedOn: { id: source } })
  })
})
