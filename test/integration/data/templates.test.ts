import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import type { ItemChange, OwnItem } from '@/lib/engine/catalogue'
import { CATALOGUE, USUAL_ITEMS } from '@/lib/engine/catalogue'
import { verifyPackage } from '@/lib/package'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { advance, answer, answerEverything, makeRevision, makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const GLUE: Omit<OwnItem, 'id'> = {
  section: 'materials',
  severity: 'major',
  question: 'Is the glue line clear of the skin side?',
  why: 'Adhesive that squeezes out there irritates the skin.',
  howToCheck: 'Look at the first articles under a lens.',
  evidence: 'Photograph of three parts.',
  ground: 'Lesson of the first build',
  decidedWhen: 'early',
  answeredBy: ['member'],
}

const keep = (itemId: string): ItemChange => ({
  itemId,
  isOff: false,
  reason: 'Our procedure',
  question: null,
  why: null,
  howToCheck: null,
  answeredBy: null,
})

const versionOf = async (team: Team) => (await data.getTemplate(team.admin)).version

async function addGlue(team: Team, change: Partial<typeof GLUE> = {}): Promise<string> {
  const input = { seenVersion: await versionOf(team), item: { ...GLUE, ...change } }
  return (await expectDone(data.addOwnItem(team.admin, input))).itemId
}

async function switchOff(team: Team, itemId: string): Promise<void> {
  const change = { ...keep(itemId), isOff: true, reason: 'The outline is moulded in' }
  await expectDone(data.changeDeliveredItem(team.admin, { seenVersion: await versionOf(team), change }))
}

async function update(team: Team, revisionId: string): Promise<void> {
  const { version, template } = await data.getRevision(team.member, revisionId)
  const input = { revisionId, seenVersion: version, toVersion: template.latestVersion, toProfileIds: [] }
  await expectDone(data.updateTemplate(team.lead, input))
}

describeOnBothDatabases(
  "a workspace's edition of the catalogue",
  (current) => {
    it('is as delivered until somebody changes it; each change is a version with its author and reason', async () => {
      const team = await makeTeam()
      expect(await data.getTemplate(team.member)).toMatchObject({ version: 0, mayEdit: false, versions: [] })
      const itemId = await addGlue(team)
      expect(itemId).toBe('own-is-the-glue-line-clear-of-the-skin-side-1')
      await switchOff(team, 'tear-stop')
      const view = await data.getTemplate(team.admin)
      expect(view).toMatchObject({ version: 2, mayEdit: true })
      expect(
        view.versions.map(({ version, summary, changedBy }) => `${version} ${summary} (${changedBy.name})`),
      ).toEqual([
        expect.stringMatching(/^2 item switched off: .*The outline is moulded in.* \(Wendel Oram\)$/),
        `1 item added: ${GLUE.question} (Wendel Oram)`,
      ])
      // The catalogue page: the edition in force for the team and admins, the delivered one for everybody else.
      for (const actor of [team.admin, team.lead, team.member]) {
        const inForce = await data.getCatalogueInForce(actor)
        expect(inForce).toMatchObject({ version: 2, content: { ownItems: [{ id: itemId }] } })
      }
      for (const actor of [team.fabricator, team.observer]) {
        expect(await data.getCatalogueInForce(actor)).toMatchObject({ version: 0, content: { ownItems: [] } })
      }
      const stale = data.addOwnItem(team.admin, { seenVersion: 1, item: GLUE })
      expect((await expectRefused(stale)).kind).toBe('stale')
      const removal = { seenVersion: 2, itemId, reason: 'Covered by the drawing' }
      expect(await expectDone(data.removeOwnItem(team.admin, removal))).toEqual({ version: 3 })
      // The same question again is another item: nobody's answer to the old one counts for it.
      expect(await addGlue(team)).toBe('own-is-the-glue-line-clear-of-the-skin-side-4')
    })

    it('takes a delivered item back to what was delivered, and makes no version where nothing changed', async () => {
      const team = await makeTeam()
      await switchOff(team, 'tear-stop')
      const delivered = CATALOGUE.find(({ id }) => id === 'tear-stop')
      if (delivered === undefined) throw new Error('no such item')
      const change = { ...keep('tear-stop'), question: delivered.question, answeredBy: [...delivered.answeredBy] }
      expect(await expectDone(data.changeDeliveredItem(team.admin, { seenVersion: 1, change }))).toEqual({ version: 2 })
      expect((await data.getTemplate(team.admin)).content.itemChanges).toEqual([])
      expect(await expectDone(data.changeDeliveredItem(team.admin, { seenVersion: 2, change }))).toEqual({ version: 2 })
      const unknown = { seenVersion: 2, change: keep('no-such-item') }
      await expect(data.changeDeliveredItem(team.admin, unknown)).rejects.toThrow(data.NotFoundError)
    })

    it('changed by two at once: one is told that it is stale', async () => {
      const team = await makeTeam()
      const outcomes = await Promise.all([1, 2].map(() => data.addOwnItem(team.admin, { seenVersion: 0, item: GLUE })))
      expect(outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.kind)).sort()).toEqual(['done', 'stale'])
      expect(await versionOf(team)).toBe(1)
    })

    it('is kept by a review that began with an earlier version, which is shown what the newest would change', async () => {
      const team = await makeTeam()
      const revisionId = await makeRevision(team)
      const itemId = await addGlue(team)
      await switchOff(team, 'tear-stop')
      await expectDone(data.setLimit(team.admin, { key: 'crossingAngleDeg', value: 80, seenVersion: 0, note: '' }))
      const before = await data.getRevision(team.member, revisionId)
      expect(before.template).toMatchObject({ version: 0, latestVersion: 3, switchedOff: [] })
      expect(before.items).toHaveLength(USUAL_ITEMS.length)
      expect(before.limits).toEqual([])
      expect(before.evaluationRecord.staleBecause).toEqual([])

      const offered = await data.getTemplateUpdate(team.member, revisionId)
      expect(offered).toMatchObject({ fromVersion: 0, toVersion: 3, voidedSignatures: 0, mayUpdate: true })
      expect(offered?.changes).toEqual([
        `item added: ${GLUE.question}`,
        expect.stringContaining('item switched off'),
        expect.stringContaining('80°'),
      ])
      expect(offered?.verdictMoves).toContainEqual({
        itemId,
        question: GLUE.question,
        before: 'not asked',
        after: 'needs-judgment',
      })
      expect(await data.getRevision(team.member, revisionId)).toEqual(before)

      await update(team, revisionId)
      const after = await data.getRevision(team.member, revisionId)
      expect(after.template).toMatchObject({ version: 3, latestVersion: 3 })
      expect(after.template.switchedOff).toMatchObject([{ itemId: 'tear-stop', reason: 'The outline is moulded in' }])
      expect(after.items.some((item) => item.itemId === 'tear-stop')).toBe(false)
      expect(after.items.find((item) => item.itemId === itemId)).toMatchObject({ state: 'open', mayAnswer: true })
      expect(after.limits).toMatchObject([{ key: 'crossingAngleDeg', value: 80 }])
      expect(await data.getTemplateUpdate(team.member, revisionId)).toBeNull()
      const [entry] = (await data.listRevisionTrail(team.lead, revisionId)).entries
      expect(entry?.sentence).toBe('updated the review from version 0 of the catalogue to version 3')
    })

    it('is gone by from the first moment in a review that begins later, and its own items block', async () => {
      const team = await makeTeam()
      const itemId = await addGlue(team)
      const revisionId = await makeRevision(team)
      await advance(team, revisionId)
      const view = await data.getRevision(team.member, revisionId)
      expect(view.template.version).toBe(1)
      expect(view.blockers).toContainEqual(
        expect.objectContaining({ code: 'item-unanswered', target: { tab: 'checklist', id: itemId } }),
      )
      const item = view.items.find((candidate) => candidate.itemId === itemId)
      if (item === undefined) throw new Error('the workspace’s own item is missing')
      await answer(team.member, revisionId, item)
      expect((await data.getRevision(team.member, revisionId)).items.find((c) => c.itemId === itemId)?.state).toBe(
        'meets',
      )
      const thread = { revisionId, anchor: { kind: 'item' as const, id: itemId }, kind: 'note' as const, title: 'Lens' }
      await expectDone(data.openThread(team.member, { ...thread, text: 'Which lens?' }))
      const gone = { ...thread, anchor: { kind: 'item' as const, id: 'own-none' }, text: 'x' }
      expect((await expectRefused(data.openThread(team.member, gone))).kind).toBe('invalid')
    })

    it('asks again where the question was reworded, and voids signatures that stood on the earlier version', async () => {
      const team = await makeTeam()
      const itemId = await addGlue(team)
      const revisionId = await makeRevisionAt(team, 'awaiting-signature')
      await sign(team.lead, revisionId)
      const item = { ...GLUE, id: itemId, question: 'Is the glue line clear of both sides?' }
      await expectDone(data.changeOwnItem(team.admin, { seenVersion: 1, item, reason: 'Both sides touch skin' }))
      // Nothing happens to a review by a change elsewhere.
      expect((await data.getRevision(team.lead, revisionId)).signatures[0]?.voidedAt).toBeNull()
      expect(await data.getTemplateUpdate(team.lead, revisionId)).toMatchObject({
        reopened: [item.question],
        voidedSignatures: 1,
      })
      await update(team, revisionId)
      const view = await data.getRevision(team.lead, revisionId)
      expect(view.signatures[0]?.voidedAt).not.toBeNull()
      expect(view.signatures[0]?.changes).toContain('catalogue version 1 to 2')
      const asked = view.items.find((candidate) => candidate.itemId === itemId)
      expect(asked).toMatchObject({
        state: 'open',
        answer: { reason: expect.stringContaining('reworded in version 2') },
      })
      expect(asked?.history.map(({ state }) => state)).toEqual(expect.arrayContaining(['meets', 'open']))
    }, 400_000)

    it('stands in what is signed and in the package', async () => {
      const team = await makeTeam()
      await addGlue(team)
      await switchOff(team, 'tear-stop')
      const revisionId = await makeRevisionAt(team, 'awaiting-signature')
      await answerEverything(team, revisionId)
      await sign(team.lead, revisionId)
      const { version } = await data.getRevision(team.lead, revisionId)
      await expectDone(
        data.releaseRevision(team.lead, {
          revisionId,
          seenVersion: version,
          purpose: 'prototypes',
          password: PASSWORD,
        }),
      )
      const { bytes } = await data.getPackageFile(team.lead, revisionId)
      expect((await verifyPackage(bytes)).ok).toBe(true)
      const text = Buffer.from(bytes).toString('latin1')
      expect(text).toContain('"template":{"contentHash":')
      expect(text).toContain(GLUE.question)
      expect(text).toContain('The outline is moulded in')
    }, 400_000)

    it('is not brought up by a stale form, to a version that is not the newest, or after release', async () => {
      const team = await makeTeam()
      const revisionId = await makeRevision(team)
      await addGlue(team)
      const { version } = await data.getRevision(team.lead, revisionId)
      const input = { revisionId, seenVersion: version, toVersion: 1, toProfileIds: [] }
      expect((await expectRefused(data.updateTemplate(team.lead, { ...input, seenVersion: version + 9 }))).kind).toBe(
        'stale',
      )
      await switchOff(team, 'tear-stop')
      expect((await expectRefused(data.updateTemplate(team.lead, input))).kind).toBe('clash')
      const both = await Promise.all([1, 2].map(() => data.updateTemplate(team.lead, { ...input, toVersion: 2 })))
      expect(both.filter(({ ok }) => ok)).toHaveLength(1)
      await expect(data.updateTemplate(team.observer, { ...input, toVersion: 2 })).rejects.toThrow(data.NotAllowedError)
    })

    it('limits of a fabricator hold at once, whatever the version', async () => {
      const { team, revisionId } = await current().startFrom('early-review')
      const { brackenfold } = team.companies
      const limit = { companyId: brackenfold, key: 'crossingAngleDeg', value: 88, seenVersion: 0, note: '' }
      await expectDone(data.setLimit(team.fabricator, limit))
      const view = await data.getRevision(team.lead, revisionId)
      expect(view.template.latestVersion).toBe(0)
      expect(view.limits).toMatchObject([{ key: 'crossingAngleDeg', value: 88 }])
    }, 400_000)
  },
  { fresh: 'test' },
)
