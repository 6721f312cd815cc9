import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { DELIVERED_PROFILES, makeCatalogue, type OwnItem } from '@/lib/engine/catalogue'
import { hashJson } from '@/lib/review'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const FLIGHT = {
  name: 'Flight hardware',
  purpose: 'Parts that fly.',
  items: [
    {
      itemId: 'tear-stop',
      asked: null,
      severity: 'blocking' as const,
      decidedWhen: null,
      isForEveryDesign: false,
      reason: 'Cracks grow in flight.',
    },
  ],
  limits: [{ key: 'annularRingMm', value: 0.6, isRelaxed: false, sourceKey: 'ownChoice', note: 'Our procedure.' }],
  requiredFields: [{ field: 'brief.lifeSurvivalPct', where: null, reason: 'Nothing is repaired.' }],
}

const RADIUS: Omit<OwnItem, 'id'> = {
  section: 'geometry',
  severity: 'major',
  question: 'Is every bend at least as wide as our tool?',
  why: 'The tool has one mandrel.',
  howToCheck: 'Compare the radius.',
  evidence: '',
  ground: 'Procedure 12',
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: { field: 'bends.*.insideRadiusMm', where: null, sense: 'at-least', value: 500, upperValue: null },
}

const refused = async (acting: Promise<data.ActResult<unknown>>, kind: data.ActRefusal['kind']) => {
  const refusal = await expectRefused(acting)
  expect(refusal.kind).toBe(kind)
  return refusal
}

const versionOf = async (team: Team) => (await data.getTemplate(team.admin)).version

async function addFlight(team: Team): Promise<string> {
  const input = { seenVersion: await versionOf(team), profile: FLIGHT, reason: 'We fly' }
  return (await expectDone(data.addProfile(team.admin, input))).profileId
}

async function choose(team: Team, profileIds: string[]): Promise<void> {
  const { version } = await data.getProjectProfiles(team.lead, team.projectId)
  const input = { projectId: team.projectId, seenVersion: version, profileIds, reason: 'The part flies' }
  await expectDone(data.chooseProfiles(team.lead, input))
}

const resultOf = ({ items }: data.RevisionView, itemId: string) => items.find((item) => item.itemId === itemId)?.result

describeOnBothDatabases(
  'profiles of a project',
  () => {
    it('are pinned by a revision until it is brought up to them, and new ones begin with them', async () => {
      const team = await makeTeam()
      const revisionId = await makeRevision(team)
      const flight = await addFlight(team)
      expect(flight).toBe('own-flight-hardware-1')
      await choose(team, ['aerospace-space', flight])
      const before = await data.getRevision(team.member, revisionId)
      expect(before.template).toMatchObject({ version: 0, latestVersion: 1, profiles: [], isBehind: true })
      expect(before.evaluationRecord.staleBecause).toEqual(['the project now follows other profiles'])
      expect(resultOf(before, 'profile-fields')).toBeUndefined()

      const offered = await data.getTemplateUpdate(team.member, revisionId)
      expect(offered?.toProfiles.map(({ name }) => name)).toEqual(['Aerospace and space', 'Flight hardware'])
      expect(offered?.changes).toEqual(
        expect.arrayContaining([
          'profile added: Flight hardware',
          'profile followed: Aerospace and space',
          'profile followed: Flight hardware',
          expect.stringMatching(/^limit Copper around a plated hole.* to 0\.6 mm \(profile Flight hardware\)$/),
        ]),
      )
      const input = { revisionId, seenVersion: before.version, toVersion: 1, toProfileIds: ['aerospace-space', flight] }
      await refused(data.updateTemplate(team.lead, { ...input, toProfileIds: [] }), 'clash')
      await expectDone(data.updateTemplate(team.lead, input))
      const after = await data.getRevision(team.member, revisionId)
      expect(after.template).toMatchObject({ version: 1, isBehind: false })
      expect(after.evaluationRecord.staleBecause).toEqual([])
      expect(after.limits.find(({ key }) => key === 'annularRingMm')).toMatchObject({
        value: 0.6,
        owner: { kind: 'profile', name: 'Flight hardware' },
      })
      expect(resultOf(after, 'profile-fields')?.verdict).toBe('not-computed')
      // What the browser makes of the content that it is given is what the review goes by.
      const tearStop = makeCatalogue(after.template.content).items.find(({ id }) => id === 'tear-stop')
      expect(tearStop).toMatchObject({ severity: 'blocking' })
      expect(tearStop?.becauseOf?.join()).toContain('because of profile Flight hardware')

      await choose(team, [flight])
      const created = await data.createRevision(team.lead, {
        projectId: team.projectId,
        label: 'Q',
        origin: { kind: 'copy', revisionId },
      })
      const { revisionId: copyId } = await expectDone(Promise.resolve(created))
      const copy = await data.getRevision(team.member, copyId)
      expect(copy.template).toMatchObject({ profiles: [{ id: flight, name: 'Flight hardware' }], isBehind: false })
    })

    it('show a fabricator names and limits in force, and no profile that the review does not follow', async () => {
      const team = await makeTeam()
      const flight = await addFlight(team)
      const other = { seenVersion: await versionOf(team), profile: { ...FLIGHT, name: 'Secret work' }, reason: 'Other' }
      await expectDone(data.addProfile(team.admin, other))
      await choose(team, [flight])
      const view = await data.getRevision(team.member, await makeRevision(team))
      expect(view.template.content.profiles?.map(({ name, limits }) => ({ name, limits }))).toEqual([
        { name: 'Flight hardware', limits: [] },
      ])
      expect(JSON.stringify(view.template)).not.toContain('Secret work')
    })

    it('are chosen with a reason that the trail tells, and only from those that there are', async () => {
      const team = await makeTeam()
      await choose(team, ['medical'])
      await choose(team, [])
      const { timeline } = await data.getProject(team.lead, team.projectId)
      const told = timeline
        .map(({ sentence }) => sentence)
        .filter((sentence) => sentence.includes('profile') || sentence.includes('Medical'))
      expect(told).toHaveLength(2)
      const input = { projectId: team.projectId, seenVersion: 2, profileIds: ['own-none'], reason: 'Why not' }
      await refused(data.chooseProfiles(team.lead, input), 'invalid')
      await refused(data.chooseProfiles(team.lead, { ...input, seenVersion: 1, profileIds: [] }), 'stale')
      await expect(data.chooseProfiles(team.member, input)).rejects.toThrow(data.NotAllowedError)
    })

    it('stay while a project follows them', async () => {
      const team = await makeTeam()
      const flight = await addFlight(team)
      await choose(team, [flight])
      const remove = { seenVersion: 1, profileId: flight, reason: 'No more flights' }
      expect(JSON.stringify(await refused(data.removeProfile(team.admin, remove), 'clash'))).toContain('follow')
      await choose(team, [])
      await expectDone(data.removeProfile(team.admin, remove))
      expect((await data.getTemplate(team.admin)).content).toEqual({ ownItems: [], itemChanges: [], limits: [] })
    })

    it('a copy of a delivered one can be taken and changed', async () => {
      const team = await makeTeam()
      for (const { id: _id, ...profile } of DELIVERED_PROFILES) {
        const copy = structuredClone({ ...profile, name: `${profile.name}, ours` })
        const input = { seenVersion: await versionOf(team), profile: copy as typeof FLIGHT, reason: 'Ours' }
        const { profileId } = await expectDone(data.addProfile(team.admin, input))
        expect(profileId).toMatch(/^own-/)
      }
      const twice = { seenVersion: await versionOf(team), profile: { ...FLIGHT, name: 'Medical' }, reason: 'Ours' }
      await refused(data.addProfile(team.admin, twice), 'invalid')
    })
  },
  { fresh: 'test' },
)

describeOnBothDatabases(
  'own items that compare a field',
  () => {
    it('decide for themselves in a review', async () => {
      const team = await makeTeam()
      const { itemId } = await expectDone(data.addOwnItem(team.admin, { seenVersion: 0, item: RADIUS }))
      const view = await data.getRevision(team.member, await makeRevision(team))
      expect(resultOf(view, itemId)).toMatchObject({ verdict: 'fails', basis: 'typed' })
    })
  },
  { fresh: 'test' },
)

describeOnBothDatabases(
  'a catalogue as a file',
  () => {
    const exportOf = async (team: Team) => new TextDecoder().decode((await data.getCatalogueFile(team.admin)).bytes)

    it('comes back with the same hash, in one version, limits included', async () => {
      const team = await makeTeam()
      await expectDone(data.addOwnItem(team.admin, { seenVersion: 0, item: RADIUS }))
      const flight = await addFlight(team)
      await expectDone(data.setLimit(team.admin, { key: 'crossingAngleDeg', value: 80, seenVersion: 0, note: 'Ours' }))
      const text = await exportOf(team)
      expect(JSON.parse(text)).toMatchObject({ format: 'bendworthy-catalogue', formatVersion: 1 })
      const empty = { ownItems: [], itemChanges: [], limits: [], profiles: [] }
      const bare = JSON.stringify({ ...JSON.parse(text), content: empty, sha256: hashJson(empty) })

      await expectDone(data.importCatalogue(team.admin, { seenVersion: 3, text: bare, reason: 'Start again' }))
      expect((await data.getLimitList(team.admin, null)).limits).toEqual([])
      const preview = await expectDone(data.previewCatalogue(team.admin, { text }))
      expect(preview).toMatchObject({ version: 4, counts: { ownItems: 1, limits: 1, profiles: 1, itemChanges: 0 } })
      expect(preview.changes).toEqual(
        expect.arrayContaining(['profile added: Flight hardware', `item added: ${RADIUS.question}`]),
      )
      await expectDone(data.importCatalogue(team.admin, { seenVersion: 4, text, reason: 'From the other house' }))
      expect(await exportOf(team)).toBe(text)
      expect((await data.getLimitList(team.admin, null)).limits).toMatchObject([{ key: 'crossingAngleDeg', value: 80 }])
      const again = await expectDone(data.previewCatalogue(team.admin, { text }))
      expect(again.changes).toEqual([])

      // A project that follows a profile keeps it.
      await choose(team, [flight])
      await refused(data.importCatalogue(team.admin, { seenVersion: 5, text: bare, reason: 'Again' }), 'clash')
      expect(await exportOf(team)).toBe(text)
    })

    it('is refused with field and reason where it is damaged or of another version, and nothing is written', async () => {
      const team = await makeTeam()
      await expectDone(data.addOwnItem(team.admin, { seenVersion: 0, item: RADIUS }))
      const text = await exportOf(team)
      const file = JSON.parse(text)
      const changed = (change: object) => JSON.stringify({ ...file, ...change })
      const ownItems = [
        { ...file.content.ownItems[0], check: { ...file.content.ownItems[0].check, field: 'bends.*.gone' } },
      ]
      for (const [damaged, path, reason] of [
        [text.slice(0, -20), '', 'not JSON'],
        ['[]', '', 'not a catalogue'],
        [changed({ format: 'other' }), 'format', 'bendworthy-catalogue'],
        [changed({ formatVersion: 2 }), 'formatVersion', 'later version'],
        [changed({ formatVersion: '1' }), 'formatVersion', 'not a version that this program reads'],
        [changed({ surplus: 1 }), 'surplus', 'not a field'],
        [
          changed({ content: { ...file.content, ownItems } }),
          'content.ownItems.0.check.field',
          'not a field of the design',
        ],
        [changed({ content: { ...file.content, ownItems: [] } }), 'sha256', 'changed after'],
        [changed({ sha256: 'ab' }), 'sha256', 'changed after'],
      ] as const) {
        const refusal = await refused(
          data.importCatalogue(team.admin, { seenVersion: 1, text: damaged, reason: 'Try' }),
          'invalid',
        )
        const [issue] = 'issues' in refusal ? refusal.issues : []
        expect({ path: issue?.path.join('.'), message: issue?.message }).toEqual({
          path,
          message: expect.stringContaining(reason),
        })
      }
      expect(await versionOf(team)).toBe(1)
    })
  },
  { fresh: 'test' },
)
