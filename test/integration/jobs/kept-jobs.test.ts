import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { afterEach, beforeAll, expect, inject, it, vi } from 'vitest'
import { now, replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { type Design, parseDesign } from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'
import { JobLimitError, JobStoppedError, runJobsInPlace } from '@/lib/jobs'
import { JOB_KINDS } from '@/lib/jobs/kinds'
import type { RemedyOrder } from '@/lib/jobs/orders'
import { replaceJobRunner } from '@/lib/jobs/runner'
import { searchWithin } from '@/lib/jobs/search-remedies'
import { askAndFollow } from '@/lib/server/jobs/job-stream'
import { openProcessQueue } from '@/lib/server/jobs/process-queue'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const PROGRAM = path.join(inject('commandsFolder'), 'job-program.mjs')
const CLAIM_MS = 15_000
const programs: ChildProcess[] = []
let restoreClock = (): void => {}
const moveClock = (byMs: number): void => {
  const later = now().getTime() + byMs
  restoreClock = replaceClock(() => new Date(later))
}

afterEach(() => {
  runJobsInPlace()
  restoreClock()
  restoreClock = () => {}
  for (const program of programs.splice(0)) program.kill('SIGKILL')
})

async function startProgram(url: string, mode: 'hang' | 'work'): Promise<ChildProcess> {
  const program = fork(PROGRAM, [url, mode], {
    execArgv: ['--conditions=react-server'],
    env: { ...process.env, DATABASE_URL: url },
  })
  programs.push(program)
  const exited = once(program, 'exit').then(([code]) => {
    throw new Error(`the program ended with ${code} before it was ready`)
  })
  // Where it goes on, it is killed after the test.
  exited.catch(() => {})
  await Promise.race([once(program, 'message'), exited])
  return program
}

describeOnBothDatabases('kept jobs', (current, kind) => {
  let team: Team
  let revisionId: string
  let design: Design
  let count = 0

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
    design = (await data.getRevision(team.member, revisionId)).design
  }, 120_000)

  const input = (changed: Partial<Design> = {}) => ({
    revisionId,
    design: { ...design, ...changed },
    bendId: design.bends[0]?.id ?? '',
    isRadiusFixed: false,
    companyId: null,
  })
  const ask = async (changed: Partial<Design> = {}) =>
    (await expectDone(data.askForRemedies(team.member, input(changed)))).jobId
  /** A draft that nobody asked about before. */
  const askAnew = () => {
    count += 1
    return ask({ name: `Draft ${count}` })
  }
  const rowOf = (id: string) => current().database.client.job.findUniqueOrThrow({ where: { id } })

  it('are carried out once, and their result is kept until the draft changes', async () => {
    const jobId = await ask()
    expect(await data.readJob(team.member, jobId)).toEqual({
      state: 'waiting',
      progress: 0,
      failure: null,
      resultJson: null,
    })
    expect(await data.listDueJobs()).toContain(jobId)
    // All of it, however slow the machine is: the application's own search ends in time with what it has found.
    replaceJobRunner(
      async (_name, order, { onProgress = () => {} } = {}) =>
        searchWithin(600)(order as RemedyOrder, { onProgress, isFinishAsked: () => false }) as never,
    )
    expect(await data.runKeptJob(jobId)).toBe(true)
    const done = await data.readJob(team.member, jobId)
    expect(done).toMatchObject({ state: 'done', progress: 1 })
    const { limits } = await data.getRevision(team.member, revisionId)
    const parsed = parseDesign(design)
    if (!parsed.ok) throw new Error('the stored design is none')
    const expected = findRemedies(parsed.value, input().bendId, { limits })
    expect(JSON.parse(done.resultJson ?? '')).toEqual(JSON.parse(JSON.stringify(expected)))
    expect(expected.remedies.length).toBeGreaterThan(0)

    const asked = vi.fn()
    replaceJobRunner(asked)
    expect(await ask()).toBe(jobId)
    expect(await data.runKeptJob(jobId)).toBe(false)
    expect(asked).not.toHaveBeenCalled()
    expect(await ask({ name: 'Another name' })).not.toBe(jobId)
    // Another person asking about the same draft has a job of their own.
    const other = await expectDone(data.askForRemedies(team.lead, input()))
    expect(other.jobId).not.toBe(jobId)
    await expect(data.readJob(team.lead, jobId)).rejects.toThrow(data.NotFoundError)
    await data.stopJob(team.lead, other.jobId)
  })

  it('refuse a draft that is none, and a bend and a fabricator that are not there, by the field', async () => {
    const refusal = async (changed: object) => {
      const refused = await expectRefused(data.askForRemedies(team.member, { ...input(), ...changed }))
      return { issues: 'issues' in refused ? refused.issues : [] }
    }
    expect((await refusal({ design: { ...design, bends: [{}] } })).issues[0]).toMatchObject({
      path: ['design', 'bends', 0, 'id'],
    })
    expect((await refusal({ bendId: 'no-such-bend' })).issues).toMatchObject([{ path: ['bendId'] }])
    expect((await refusal({ companyId: team.companies.brackenfold })).issues).toMatchObject([{ path: ['companyId'] }])
  })

  it('tell their progress, and are ended where they do not listen to a stop', async () => {
    const draft = { name: 'A draft whose search is stopped' }
    const jobId = await ask(draft)
    replaceJobRunner(async (name, _input, options) => {
      options?.onProgress?.(0.25)
      await new Promise((resolve) => options?.signal?.addEventListener('abort', resolve))
      throw new JobStoppedError(name)
    })
    const running = data.runKeptJob(jobId)
    await vi.waitFor(
      async () => expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'running', progress: 0.25 }),
      10_000,
    )
    await data.stopJob(team.member, jobId)
    await running
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'stopped', resultJson: null })

    runJobsInPlace()
    expect(await data.runKeptJob(jobId)).toBe(false)
    // Asked for once more it begins again.
    expect(await ask(draft)).toBe(jobId)
    expect(await data.runKeptJob(jobId)).toBe(true)
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'done' })
  })

  it('show what leads while they go on, and the whole in its place when they are done', async () => {
    const draft = { name: 'A draft of which it is soon known what leads' }
    const jobId = await ask(draft)
    let finish = () => {}
    const isFinishing = new Promise<void>((resolve) => {
      finish = resolve
    })
    replaceJobRunner(async (_name, _order, options) => {
      options?.onFirst?.({ leads: true })
      await isFinishing
      return { whole: true } as never
    })
    const running = data.runKeptJob(jobId)
    await vi.waitFor(async () => {
      const { state, resultJson } = await data.readJob(team.member, jobId)
      expect([state, resultJson]).toEqual(['running', '{"leads":true}'])
    }, 10_000)
    finish()
    await running
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'done', resultJson: '{"whole":true}' })
    runJobsInPlace()
  })

  it('keep what was found until they were stopped, say that it is not all, and begin again when asked for', async () => {
    const draft = { name: 'A draft whose search is stopped halfway' }
    const jobId = await ask(draft)
    const followed = await askAndFollow(
      team.member,
      () => data.askForRemedies(team.member, input(draft)),
      new AbortController().signal,
    )
    replaceJobRunner(async (name, order, options) => {
      if (name !== 'remedies') throw new RangeError(name)
      const finishing = options?.finishing
      // It may have been stopped before this was called.
      if (finishing?.aborted === false) {
        await new Promise((resolve) => finishing.addEventListener('abort', resolve))
      }
      // Heard after some steps: single changes are through, pairs have begun.
      let looks = 0
      const look = () => {
        looks += 1
        return looks
      }
      const hooks = { onProgress: () => {}, isFinishAsked: () => look() > 4 }
      return searchWithin(60)(order as RemedyOrder, hooks) as never
    })
    const running = data.runKeptJob(jobId)
    await vi.waitFor(async () => expect((await rowOf(jobId)).state).toBe('running'), 10_000)
    await data.stopJob(team.member, jobId)
    await running
    const last = JSON.parse((await followed.text()).trim().split('\n').at(-1) ?? '')
    expect(last).toMatchObject({ jobId, state: 'stopped', result: { bendId: input().bendId } })
    expect(last.result.search).toMatchObject({ isStopped: true, completeUpTo: 1 })
    expect(last.result.remedies.length).toBeGreaterThan(0)

    // Asked for once more it begins again, and what a stop left behind does not pass for all.
    runJobsInPlace()
    expect(await ask(draft)).toBe(jobId)
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'waiting', resultJson: null })
    expect(await data.runKeptJob(jobId)).toBe(true)
    const { resultJson } = await data.readJob(team.member, jobId)
    expect(JSON.parse(resultJson ?? '').search).toMatchObject({ isStopped: false })
  })

  it('that ended by their time are shown with what they had found, and begin again when asked for', async () => {
    const draft = { name: 'A draft whose search runs out of time' }
    const jobId = await ask(draft)
    replaceJobRunner(async (_name, order) => {
      const hooks = { onProgress: () => {}, isFinishAsked: () => false }
      return searchWithin(0)(order as RemedyOrder, hooks) as never
    })
    expect(await data.runKeptJob(jobId)).toBe(true)
    const cut = await data.readJob(team.member, jobId)
    expect(cut.state).toBe('done')
    expect(JSON.parse(cut.resultJson ?? '').search.isStopped).toBe(true)

    runJobsInPlace()
    expect(await ask(draft)).toBe(jobId)
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'waiting', resultJson: null })
    expect(await data.runKeptJob(jobId)).toBe(true)
    const whole = await data.readJob(team.member, jobId)
    expect(JSON.parse(whole.resultJson ?? '').search.isStopped).toBe(false)
    // What is whole is found again.
    expect(await ask(draft)).toBe(jobId)
    expect((await data.readJob(team.member, jobId)).state).toBe('done')
  })

  it('are told line by line to anyone who follows, and stop when nobody follows any more', async () => {
    const draft = { name: 'A draft that is followed' }
    const jobId = await ask(draft)
    const follow = (signal: AbortSignal) =>
      askAndFollow(team.member, () => data.askForRemedies(team.member, input(draft)), signal)
    replaceJobRunner(async (name, _input, options) => {
      options?.onProgress?.(0.5)
      await new Promise((resolve) => options?.finishing?.addEventListener('abort', resolve))
      throw new JobStoppedError(name)
    })
    const leaving = new AbortController()
    const left = await follow(leaving.signal)
    const running = data.runKeptJob(jobId)
    const reader = left.body?.getReader()
    let told = ''
    while (!told.includes('"progress":0.5')) {
      const { value, done } = (await reader?.read()) ?? { done: true, value: undefined }
      if (done) break
      told += new TextDecoder().decode(value)
    }
    expect(told).toContain(`{"jobId":"${jobId}","state":"running","progress":0.5,"failure":null}\n`)
    leaving.abort()
    await running
    expect(await data.readJob(team.member, jobId)).toMatchObject({ state: 'stopped' })

    runJobsInPlace()
    const followed = await follow(new AbortController().signal)
    await data.runKeptJob(jobId)
    const lines = (await followed.text()).trim().split('\n')
    expect(JSON.parse(lines.at(-1) ?? '')).toMatchObject({ state: 'done', result: { bendId: input().bendId } })
  })

  it('say why nothing came of them', async () => {
    const jobId = await askAnew()
    replaceJobRunner(async (name) => {
      throw new JobLimitError(name, 'time', JOB_KINDS.remedies.limits)
    })
    await data.runKeptJob(jobId)
    const { state, failure } = await data.readJob(team.member, jobId)
    expect(state).toBe('failed')
    expect(failure).toContain(`longer than ${JOB_KINDS.remedies.limits.seconds} s`)
  })

  it('go on after the process that ran them was killed, and their result is written once', async () => {
    const jobId = await askAnew()
    const program = await startProgram(current().url, 'hang')
    program.send(jobId)
    await once(program, 'message')
    const first = await rowOf(jobId)
    expect(first).toMatchObject({ state: 'running', attempts: 1 })
    program.kill('SIGKILL')
    await once(program, 'exit')

    // For as long as it may yet be alive nobody takes its job.
    expect(await data.runKeptJob(jobId)).toBe(false)
    moveClock(CLAIM_MS + 1_000)
    expect(await data.listDueJobs()).toContain(jobId)
    const written: string[] = []
    const queue = openProcessQueue(async (id) => {
      if (await data.runKeptJob(id)) written.push(id)
    })
    // As a process that starts again does, twice over.
    for (const id of [...(await data.listDueJobs()), ...(await data.listDueJobs())]) await queue.announce(id)
    await vi.waitFor(async () => expect((await rowOf(jobId)).state).toBe('done'), 60_000)
    await queue.close()
    expect(written.filter((id) => id === jobId)).toEqual([jobId])
    const row = await rowOf(jobId)
    expect(row).toMatchObject({ state: 'done', attempts: 2, claimToken: null })
    expect(JSON.parse(row.resultJson ?? '')).toMatchObject({ bendId: input().bendId })
  }, 240_000)

  it('whose process was thought dead and is not, write nothing', async () => {
    const jobId = await askAnew()
    let release = (): void => {}
    const isHeld = new Promise<void>((resolve) => {
      release = resolve
    })
    replaceJobRunner(async () => {
      await isHeld
      return { from: 'the slow one' } as never
    })
    const slow = data.runKeptJob(jobId)
    await vi.waitFor(async () => expect((await rowOf(jobId)).state).toBe('running'), 10_000)
    // Another process took it over.
    await current().database.client.job.update({ where: { id: jobId }, data: { claimToken: 'another process' } })
    release()
    await slow
    expect(await rowOf(jobId)).toMatchObject({ state: 'running', claimToken: 'another process', resultJson: null })
    await current().database.client.job.update({ where: { id: jobId }, data: { state: 'stopped' } })
  })

  it('that take their process down are given up after three times', async () => {
    const jobId = await askAnew()
    const past = new Date(now().getTime() - 1_000)
    await current().database.client.job.update({
      where: { id: jobId },
      data: { state: 'running', attempts: 3, claimedUntil: past },
    })
    expect(await data.runKeptJob(jobId)).toBe(false)
    expect(await data.readJob(team.member, jobId)).toMatchObject({
      state: 'failed',
      failure: 'The server stopped several times while it worked on this.',
    })
  })

  it('asked for by many at once in one process are written once each', async () => {
    const jobId = await askAnew()
    const ran = await Promise.all([1, 2, 3, 4, 5].map(() => data.runKeptJob(jobId)))
    expect(ran.filter(Boolean)).toHaveLength(1)
    expect(await rowOf(jobId)).toMatchObject({ state: 'done', attempts: 1 })
  })

  it.runIf(kind === 'postgresql')(
    'of two processes on one database are written once each, however often they are announced',
    async () => {
      const ended: string[] = []
      const workers = await Promise.all([startProgram(current().url, 'work'), startProgram(current().url, 'work')])
      for (const worker of workers) {
        worker.on('message', (told: { ended?: string }) => {
          if (told.ended !== undefined) ended.push(told.ended)
        })
      }
      const jobIds: string[] = []
      for (let at = 0; at < 6; at += 1) jobIds.push(await askAnew())
      for (const jobId of jobIds) for (const worker of workers) worker.send(jobId)
      await vi.waitFor(() => expect([...new Set(ended)].sort()).toEqual([...jobIds].sort()), 120_000)
      await sleep(1_500)
      expect([...ended].sort()).toEqual([...jobIds].sort())
      for (const jobId of jobIds) expect(await rowOf(jobId)).toMatchObject({ state: 'done', attempts: 1 })
    },
    240_000,
  )

  it('that are old go away, and none that is on its way', async () => {
    const [old, waiting] = [await askAnew(), await askAnew()]
    await data.runKeptJob(old)
    moveClock(8 * 86_400_000)
    await data.forgetOldJobs()
    await expect(data.readJob(team.member, old)).rejects.toThrow(data.NotFoundError)
    expect(await data.readJob(team.member, waiting)).toMatchObject({ state: 'waiting' })
  })
})
