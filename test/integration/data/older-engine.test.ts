import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/client'
import { ENGINE_VERSION } from '@/lib/engine'
import { expectDone, expectRefused } from '@/test/factories/outcomes'
import { makeTeam } from '@/test/factories/people'
import { makeRevisionAt, makeSignInput } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('results of an older engine', () => {
  it('are shown as such, block the signature, and stand again once evaluated anew', async () => {
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'awaiting-signature')
    const [last] = await db().evaluation.findMany({ where: { revisionId }, orderBy: { ordinal: 'desc' }, take: 1 })
    await db().evaluation.update({
      where: { id: last?.id ?? '' },
      data: { engineVersion: '0.9.0', inputsHash: '0'.repeat(64) },
    })

    const view = await data.getRevision(team.lead, revisionId)
    // The overview says: "These results no longer stand: ...".
    expect(view.evaluationRecord.staleBecause).toEqual([
      `the results come from engine 0.9.0; the present one is ${ENGINE_VERSION}`,
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
})
