import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { DESIGN_FORMAT_VERSION, ENGINE_VERSION } from '@/lib/engine'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { KEPT_FORMATS, readKeptRevision } from '@/test/factories/kept-documents'
import { makeSignInput } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('results of an older engine', (current) => {
  it('are shown as such, block the signature, and stand again once re-evaluated', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const [last] = await db().evaluation.findMany({ where: { revisionId }, orderBy: { ordinal: 'desc' }, take: 1 })
    await db().evaluation.update({
      where: { id: last?.id ?? '' },
      data: { engineVersion: '0.9.0', inputsHash: '0'.repeat(64) },
    })

    const view = await data.getRevision(team.lead, revisionId)
    // The overview says: "These results no longer stand: ...".
    expect(view.evaluationRecord.staleBecause).toEqual([
      `the results come from engine 0.9.0; the current one is ${ENGINE_VERSION}`,
    ])
    expect(view.evaluationRecord.engineVersion).toBe('0.9.0')
    const sentence = expect.stringContaining(`the engine (0.9.0, now ${ENGINE_VERSION})`)
    expect(view.blockers).toContainEqual(expect.objectContaining({ code: 'calculation-stale', sentence }))
    const refusal = await expectRefused(data.signRevision(team.lead, makeSignInput(view)))
    expect(refusal).toMatchObject({ kind: 'blocked' })

    await expectDone(data.evaluateAgain(team.lead, { revisionId }))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after.evaluationRecord).toMatchObject({ staleBecause: [], engineVersion: ENGINE_VERSION })
    expect(after.blockers.map(({ code }) => code)).not.toContain('calculation-stale')
    const kept = await db().evaluation.findMany({ where: { revisionId }, orderBy: { ordinal: 'asc' } })
    expect(
      kept.map(({ engineVersion }) => engineVersion),
      'the older results stay readable',
    ).toContain('0.9.0')
  }, 400_000)

  it.each(KEPT_FORMATS)(
    'a kept revision of format %i opens on each page, with the figures that were recorded',
    async (format) => {
      const { team, revisionId } = await current().startFrom('early-review')
      const kept = readKeptRevision(format, 'skua-rev-a')
      const { designJson, designHash, resultsJson, engineVersion } = kept
      await db().revision.update({ where: { id: revisionId }, data: { designJson, designHash } })
      await db().evaluation.updateMany({ where: { revisionId }, data: { resultsJson, designHash, engineVersion } })

      const view = await data.getRevision(team.lead, revisionId)
      expect(view.design.formatVersion).toBe(DESIGN_FORMAT_VERSION)
      const recorded = JSON.parse(resultsJson) as { bends: { peakStrainPct: number }[] }
      expect(view.evaluation.bends.map(({ peakStrainPct }) => peakStrainPct)).toEqual(
        recorded.bends.map(({ peakStrainPct }) => peakStrainPct),
      )
      const row = await db().revision.findUniqueOrThrow({ where: { id: revisionId } })
      expect(row.designJson, 'reading rewrites nothing').toBe(designJson)
      const copyOfStored = await data.getProject(team.lead, view.project.id)
      expect(copyOfStored.revisions.map(({ id }) => id)).toContain(revisionId)
    },
  )

  it('damage in a stored design is named by its place, and is no empty page', async () => {
    const { team, revisionId } = await current().startFrom('early-review')
    await db().revision.update({
      where: { id: revisionId },
      data: { designJson: '{"format":"bendworthy-design","formatVersion":4}' },
    })
    await expect(data.getRevision(team.lead, revisionId)).rejects.toThrow(/a stored design cannot be read .*brief/)
  })
})
