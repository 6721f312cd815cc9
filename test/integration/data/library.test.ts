import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { Design, NewMaterial } from '@/lib/engine/design'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeOwnMaterial } from '@/test/factories/own-materials'
import { getActorOf, makeProject, makeTeam, type Team } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const save = (actor: data.Actor, material: NewMaterial, seen: { entryId: string | null; version: number }) =>
  data.saveOwnMaterial(actor, {
    entryId: seen.entryId,
    seenVersion: seen.version,
    material,
    reason: 'measured',
  })
const NEW = { entryId: null, version: 0 }

/** The design with its first film made of the material, as the editor saves it. */
async function useMaterial(team: Team, revisionId: string, materialId: string) {
  const [material] = (await data.listOwnMaterials(team.member)).filter(({ id }) => id === materialId)
  if (material === undefined) throw new Error('is not offered')
  const view = await data.getRevision(team.member, revisionId)
  const film = view.design.construction.layers.find(({ kind }) => kind === 'base-film')
  const layers = view.design.construction.layers.map((layer) =>
    layer.id === film?.id && layer.kind === 'base-film' ? { ...layer, materialId } : layer,
  )
  const design: Design = {
    ...view.design,
    materials: [material],
    construction: { ...view.design.construction, layers },
  }
  await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: view.designVersion, design }))
}

/** A second project, in which only the member makes content. */
async function makeOtherProject(team: Team): Promise<{ projectId: string; member: data.Actor }> {
  const projectId = await makeProject('Siskin tail', team.member.userId)
  await db().membership.create({
    data: { userId: team.member.userId, projectId, companyId: team.companies.team, role: 'member' },
  })
  return { projectId, member: await getActorOf(team.member.userId) }
}

describeOnBothDatabases(
  'what the workspace keeps for its designs',
  () => {
    it('offers materials in versions; a design keeps the one that it took, and its results with it', async () => {
      const team = await makeTeam()
      const first = await expectDone(save(team.member, makeOwnMaterial(), NEW))
      expect(first).toEqual({ entryId: 'own-stiff-polyimide-of-our-1', version: 1 })
      const revisionId = await makeRevision(team)
      const before = await data.getRevision(team.member, revisionId)
      await useMaterial(team, revisionId, `${first.entryId}-v1`)
      const taken = await data.getRevision(team.member, revisionId)
      const strains = (view: data.RevisionView) => JSON.stringify(view.evaluation.bends)
      expect(strains(taken)).not.toBe(strains(before))

      const softer = makeOwnMaterial({ modulusGpa: { value: 2, sourceKey: 'our test report 25-002', spread: null } })
      expect(await expectDone(save(team.lead, softer, first))).toEqual({ entryId: first.entryId, version: 2 })
      expect(await expectDone(save(team.lead, softer, { ...first, version: 2 }))).toMatchObject({ version: 2 })
      const later = await data.getRevision(team.member, revisionId)
      expect(later.design.materials).toMatchObject([{ id: `${first.entryId}-v1`, modulusGpa: { value: 8.1 } }])
      expect(strains(later)).toBe(strains(taken))
      expect(await data.listOwnMaterials(team.member)).toMatchObject([{ id: `${first.entryId}-v2` }])
      expect((await expectRefused(save(team.lead, softer, first))).kind).toBe('stale')

      const withdrawal = { entryId: first.entryId, seenVersion: 2, reason: 'not bought any more' }
      await expectDone(data.withdrawLibraryEntry(team.lead, withdrawal))
      expect(await data.listOwnMaterials(team.member)).toEqual([])
      expect((await data.getRevision(team.member, revisionId)).design.materials).toHaveLength(1)
      await expect(save(team.lead, softer, { ...first, version: 3 })).rejects.toThrow('no such')
      // The same name again is another material: a design never mixes the two up.
      expect((await expectDone(save(team.lead, softer, NEW))).entryId).toBe('own-stiff-polyimide-of-our-2')
      const words = await db().trailRecord.findMany({ where: { subjectKind: 'library' }, orderBy: { sequence: 'asc' } })
      expect(words.map(({ action }) => action)).toEqual([
        'material-saved',
        'material-saved',
        'library-entry-withdrawn',
        'material-saved',
      ])
      const { firstBad, state } = await data.checkWholeTrail(team.admin)
      expect(firstBad).toBeNull()
      // What the factories made by hand has no record; what the acts made has.
      expect(state.misfits.filter(({ what }) => what.startsWith('library entry'))).toEqual([])
      await db().libraryEntry.updateMany({ where: { version: 1 }, data: { reason: 'changed behind its back' } })
      const tampered = await data.checkWholeTrail(team.admin)
      expect(tampered.state.misfits.filter(({ what }) => what.startsWith('library entry'))).not.toEqual([])
    })

    it('refuses a figure under a source that does not give it, and a name that is taken', async () => {
      const team = await makeTeam()
      const ofLibrary = { value: 4.1, sourceKey: 'iacs', spread: null }
      const refusal = await expectRefused(save(team.member, makeOwnMaterial({ modulusGpa: ofLibrary }), NEW))
      expect(refusal).toMatchObject({
        kind: 'invalid',
        issues: [{ code: 'source-says-otherwise', path: ['material', 'modulusGpa', 'sourceKey'] }],
      })
      await expectDone(save(team.member, makeOwnMaterial({ name: 'Film of ours' }), NEW))
      const again = await expectRefused(save(team.lead, makeOwnMaterial({ name: 'FILM of ours' }), NEW))
      expect(again).toMatchObject({ issues: [{ code: 'taken', path: ['material', 'name'] }] })
      expect(await data.listOwnMaterials(team.fabricator)).toEqual([])
    })

    it('begins a revision with a kept construction; who made it stays its author', async () => {
      const team = await makeTeam()
      const { entryId } = await expectDone(save(team.member, makeOwnMaterial({ name: 'Film to keep' }), NEW))
      const revisionId = await makeRevision(team)
      await useMaterial(team, revisionId, `${entryId}-v1`)
      const source = await data.getRevision(team.lead, revisionId)
      const what = { name: 'Twin hinge, two layers', purpose: 'For leads that fold twice.' }
      const stale = { revisionId, seenVersion: source.designVersion - 1, ...what }
      expect((await expectRefused(data.keepConstruction(team.lead, stale))).kind).toBe('stale')
      const kept = await expectDone(
        data.keepConstruction(team.lead, { revisionId, seenVersion: source.designVersion, ...what }),
      )
      expect((await data.getLibrary(team.quality)).constructions).toMatchObject([{ ...what, entryId: kept.entryId }])

      const { projectId } = await makeOtherProject(team)
      const lead = await getActorOf(team.outsider.userId)
      await db().membership.create({
        data: { userId: lead.userId, projectId, companyId: team.companies.team, role: 'lead' },
      })
      const outsider = await getActorOf(lead.userId)
      const origin = { kind: 'kept-construction' as const, entryId: kept.entryId }
      const made = await expectDone(data.createRevision(outsider, { projectId, label: 'A', origin }))
      const view = await data.getRevision(outsider, made.revisionId)
      expect(view.design.construction).toEqual(source.design.construction)
      expect(view.design.bends).toEqual(source.design.bends)
      expect(view.design.materials).toEqual(source.design.materials)
      expect(view.design.brief.partNumber).toBe('')
      expect(view.design.features.conductors).toEqual([])
      expect(view.design.plan).toBeNull()
      expect(view.design.assumed).toContain(`bends.${view.design.bends[0]?.id}.insideRadiusMm`)
      const authors = await db().edit.findMany({ where: { revisionId: made.revisionId } })
      expect(authors.map(({ userId }) => userId)).toEqual([team.member.userId])

      await expectDone(data.withdrawLibraryEntry(team.lead, { entryId: kept.entryId, seenVersion: 1, reason: 'old' }))
      const gone = await expectRefused(data.createRevision(outsider, { projectId, label: 'B', origin }))
      expect(gone).toMatchObject({ issues: [{ code: 'unknown-construction' }] })
    })

    it('copies a design out of another project for those who make content in both, and tells that project', async () => {
      const team = await makeTeam()
      const revisionId = await makeRevision(team)
      const { projectId, member } = await makeOtherProject(team)
      expect(await data.getRevisionStarts(member, projectId)).toMatchObject({ elsewhere: [{ revisionId }] })
      const origin = { kind: 'copy' as const, revisionId }
      const made = await expectDone(data.createRevision(member, { projectId, label: 'A', origin }))
      const source = await data.getRevision(member, revisionId)
      const copy = await data.getRevision(member, made.revisionId)
      expect(copy.design.construction).toEqual(source.design.construction)
      expect(copy.design.features).toEqual(source.design.features)
      expect(copy.design.brief.revisionLabel).toBe('A')
      expect(copy.items.filter(({ answer }) => answer !== null)).toEqual([])
      const told = await db().trailRecord.findFirstOrThrow({ where: { action: 'design-copied-elsewhere' } })
      expect(told).toMatchObject({ revisionId, projectId: team.projectId, actorId: member.userId })

      // Somebody who only reads there, and somebody to whom it is shared as a fabricator's, take nothing along.
      for (const role of ['observer', 'auditor', 'quality'] as const) {
        const reader = team[role]
        await db().membership.create({
          data: { userId: reader.userId, projectId, companyId: team.companies.team, role: 'member' },
        })
        const actor = await getActorOf(reader.userId)
        expect((await data.getRevisionStarts(actor, projectId)).elsewhere).toEqual([])
        const copying = data.createRevision(actor, { projectId, label: `of ${role}`, origin })
        await expect(copying).rejects.toThrow('copy the design of this revision into another project')
      }
      const stranger = data.createRevision(team.outsider, { projectId, label: 'S', origin })
      await expect(stranger).rejects.toThrow('no such')
    })
  },
  { fresh: 'test' },
)
