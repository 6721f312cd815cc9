import { monitorEventLoopDelay } from 'node:perf_hooks'
import { afterEach, beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { getDatabase } from '@/lib/data/store/client'
import { countBendLayersOf, type Design, evaluate, MAX_BEND_LAYERS, parseDesign } from '@/lib/engine'
import type { PanelFormat } from '@/lib/fabrication'
import { runJobsInPlace } from '@/lib/jobs'
import { makeInPlaceRunner } from '@/lib/jobs/in-place'
import { JOB_KINDS, type JobKinds } from '@/lib/jobs/kinds'
import { WorkerPool } from '@/lib/jobs/pool'
import { replaceJobRunner } from '@/lib/jobs/runner'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { startSourceThread } from '@/test/setup/source-thread'

const JOB_PROGRAM = new URL('../../../lib/jobs/worker.ts', import.meta.url)
let pool: WorkerPool<JobKinds> | null = null

/** Evaluations in real threads, each with so many seconds. */
function useThreads(seconds: number): void {
  const evaluation = { ...JOB_KINDS.evaluation, limits: { ...JOB_KINDS.evaluation.limits, seconds } }
  const threads = new WorkerPool({ ...JOB_KINDS, evaluation }, (memoryMib) => startSourceThread(JOB_PROGRAM, memoryMib))
  pool = threads
  replaceJobRunner((name, input, options) => threads.run(name, input, options))
}

/** The same kinds of job in place, noting what was asked for; none may run within a transaction. */
function watchJobs(): string[] {
  const asked: string[] = []
  const run = makeInPlaceRunner(JOB_KINDS)
  replaceJobRunner((name, input, options) => {
    // Throws inside a transaction.
    getDatabase()
    asked.push(name)
    return run(name, input, options)
  })
  return asked
}

afterEach(() => {
  pool?.close()
  pool = null
  runJobsInPlace()
})

/** The design with its first bend so often that its bends come to `bendLayers`. */
function withBends(design: Design, bendLayers: number): Design {
  const [bend] = design.bends
  if (bend === undefined) throw new Error('the design has no bend')
  const ofOne = countBendLayersOf({ ...design, bends: [bend] })
  // A document holds at most 400 bends.
  const count = Math.min(400, Math.floor(bendLayers / ofOne))
  const more = Array.from({ length: count - 1 }, (_, at) => ({ ...bend, id: `more-${at}`, name: `Bend ${at + 2}` }))
  return { ...design, bends: [bend, ...more] }
}

describeOnBothDatabases('long computations', (current, kind) => {
  let team: Team
  let revisionId: string

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  }, 120_000)

  const save = async (design: Design) => {
    const { designVersion } = await data.getRevision(team.member, revisionId)
    return data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design })
  }

  it('refuse a design that costs more than one evaluation may, by reason and bound, and write nothing', async () => {
    const before = await data.getRevision(team.member, revisionId)
    const worst = withBends(before.design, MAX_BEND_LAYERS)
    const parsed = parseDesign(worst)
    expect(parsed.ok ? [] : parsed.issues).toEqual([])
    const trailBefore = await current().database.client.trailRecord.count()
    useThreads(0.3)
    const delay = monitorEventLoopDelay({ resolution: 10 })
    delay.enable()
    let isAnswered = false
    const [outcome, other] = await Promise.all([
      save(worst).finally(() => {
        isAnswered = true
      }),
      // Somebody else's page meanwhile.
      data.getRevision(team.lead, revisionId).then((view) => ({ version: view.version, isBefore: !isAnswered })),
    ])
    delay.disable()
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { kind: 'invalid', issues: [{ code: 'too-costly', path: ['bends'] }] },
    })
    if (outcome.ok) return
    expect(outcome.refusal.message).toContain(`${worst.bends.length} bends`)
    expect(outcome.refusal.message).toContain('longer than 0.3 s')
    expect(other).toEqual({ version: before.version, isBefore: true })
    expect(await data.getRevision(team.member, revisionId)).toMatchObject({
      version: before.version,
      design: before.design,
    })
    expect(await current().database.client.trailRecord.count()).toBe(trailBefore)
    // The evaluation takes seconds; reading, checking and hashing the document are what is left on this thread.
    expect(delay.max / 1e9).toBeLessThan(2)
  })

  it('of a large design that stays within its limits are the engine’s own, made in a thread', async () => {
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const large = withBends(design, 200)
    useThreads(120)
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: large }))
    const { evaluation, design: stored } = await data.getRevision(team.member, revisionId)
    expect(stored.bends).toHaveLength(large.bends.length)
    expect(evaluation.bends).toEqual(evaluate(stored).bends)
    const stale = await data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design })
    expect(stale).toMatchObject({ ok: false, refusal: { kind: 'stale' } })
    await expectDone(save(design))
  })

  it('run outside of every transaction: evaluations of large designs, and the nesting that a restart forgot', async () => {
    const asked = watchJobs()
    const { design } = await data.getRevision(team.member, revisionId)
    await expectDone(save(withBends(design, kind === 'sqlite' ? 240 : 250)))
    expect(asked).toContain('evaluation')
    await expectDone(save(design))

    // What either database's tests nest, the other's have not.
    const format = { ...FORMAT, heightMm: kind === 'sqlite' ? 600 : 500 }
    await expectDone(
      data.saveSheet(team.fabricator, {
        companyId: team.companies.brackenfold,
        kind: 'panel-formats',
        seenVersion: 0,
        issuedOn: '2026-11-02',
        note: '',
        content: { formats: [format, { ...format, id: 'other', name: 'Other', widthMm: 300 }] },
      }),
    )
    asked.length = 0
    const { version } = await data.getRevision(team.lead, revisionId)
    await expectDone(data.evaluateAgain(team.lead, { revisionId }))
    // Nothing in memory, as after a restart: all formats in one go, and then from memory.
    expect(asked.filter((name) => name === 'nesting').length).toBeGreaterThan(0)
    expect((await data.getRevision(team.lead, revisionId)).version).toBeGreaterThanOrEqual(version)
    asked.length = 0
    await expectDone(save({ ...design, name: `${design.name} again` }))
    await data.getPanels(team.lead, revisionId)
    expect(asked).toEqual([])
  })

  it('are not asked for by an ordinary save', async () => {
    const asked = watchJobs()
    const { design } = await data.getRevision(team.member, revisionId)
    await expectDone(save({ ...design, name: `${design.name} once more` }))
    expect(asked).toEqual([])
  })
})

const FORMAT: PanelFormat = {
  id: 'production',
  name: 'Brackenfold production panel',
  widthMm: 451,
  heightMm: 609.6,
  marginLeftMm: 20,
  marginRightMm: 20,
  marginTopMm: 20,
  marginBottomMm: 20,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}
