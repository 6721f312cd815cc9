import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { makeReleasedRevision, makeRevisionAt, makeSignInput, readSeedDesign, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('a revision and its number', () => {
  let team: Team

  beforeAll(async () => {
    team = await makeTeam()
  }, 400_000)

  const see = (revisionId: string) => data.getRevision(team.lead, revisionId)

  it('a copy carries the old letter nowhere: brief, name and drawing say the new one', async () => {
    const origin = { kind: 'import' as const, designText: readSeedDesign('skua-rev-a') }
    const { revisionId } = await expectDone(
      data.createRevision(team.lead, { projectId: team.projectId, label: 'A', origin }),
    )
    const copy = { kind: 'copy' as const, revisionId }
    const made = await expectDone(
      data.createRevision(team.lead, { projectId: team.projectId, label: 'K', origin: copy }),
    )
    const { design } = await see(made.revisionId)
    expect(design.brief.revisionLabel).toBe('K')
    expect(design.name).toBe('Skua scanning head, revision K')
    const { designVersion } = await see(made.revisionId)
    const stale = { ...design, brief: { ...design.brief, revisionLabel: 'A', purpose: 'Another purpose.' } }
    await expectDone(
      data.saveDesign(team.lead, { revisionId: made.revisionId, seenVersion: designVersion, design: stale }),
    )
    expect((await see(made.revisionId)).design.brief.revisionLabel, 'one source').toBe('K')
  }, 400_000)

  it('a number and letter is issued once; the refusal names the first issue', async () => {
    const firstId = await makeReleasedRevision(team)
    const first = await db().issuedRevision.findUniqueOrThrow({ where: { revisionId: firstId } })
    expect(first.partNumber).toBe('QI-3107')

    const secondId = await makeRevisionAt(team, 'awaiting-signature')
    await sign(team.lead, secondId)
    // As if another project had called its revision so: labels are unique within a project alone.
    await db().issuedRevision.update({
      where: { revisionId: firstId },
      data: { issueKey: JSON.stringify(['qi-3107', (await see(secondId)).label.toLowerCase()]) },
    })
    const view = await see(secondId)
    expect(view.blockers.map(({ code }) => code)).toContain('number-issued')
    const release = data.releaseRevision(team.lead, {
      revisionId: secondId,
      seenVersion: view.version,
      purpose: 'prototypes',
      password: PASSWORD,
    })
    const refusal = await expectRefused(release)
    expect(refusal).toMatchObject({ kind: 'blocked', blockers: [{ code: 'number-issued' }] })
    expect(JSON.stringify(refusal)).toContain(first.contentHash.slice(0, 16))
    expect(await expectRefused(data.signRevision(team.secondLead, makeSignInput(view)))).toMatchObject({
      kind: 'blocked',
    })

    // Releases from before issues were kept count as well.
    await db().issuedRevision.delete({ where: { revisionId: firstId } })
    expect((await see(secondId)).blockers).toEqual([])
    const { label, labelKey } = await db().revision.findUniqueOrThrow({ where: { id: secondId } })
    const { projectId } = await makeTeam()
    await db().revision.update({ where: { id: firstId }, data: { projectId, label, labelKey } })
    expect((await see(secondId)).blockers).toMatchObject([
      { code: 'number-issued', sentence: expect.stringContaining('in another project of this workspace') },
    ])
  }, 400_000)
})
