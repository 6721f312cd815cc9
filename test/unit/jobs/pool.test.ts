import { afterAll, expect, test, vi } from 'vitest'
import { JobCrashedError, JobLimitError, JobStoppedError } from '@/lib/jobs'
import { makeInPlaceRunner } from '@/lib/jobs/in-place'
import { type PoolOptions, WorkerPool } from '@/lib/jobs/pool'
import type { StartWorker } from '@/lib/jobs/thread'
import { startSourceThread } from '../../setup/source-thread'
import { TEST_KINDS } from './test-kinds'

const startWorker: StartWorker = (memoryMib) =>
  startSourceThread(new URL('./pool-program.ts', import.meta.url), memoryMib)
const makePool = (options: PoolOptions = {}) => new WorkerPool(TEST_KINDS, startWorker, { mostThreads: 2, ...options })

const pool = makePool()
afterAll(() => pool.close())

const caught = (promise: Promise<unknown>) =>
  promise.then(
    () => null,
    (error: unknown) => error,
  )

test('a job is carried out in a thread, and the next one by the same thread', async () => {
  expect(await pool.run('double', 21)).toBe(42)
  expect(await Promise.all([pool.run('double', 1), pool.run('double', 2)])).toEqual([2, 4])
  expect(pool.threadCount).toBeLessThanOrEqual(2)
})

test('what a job throws arrives by its name and message, from where it was thrown', async () => {
  const error = await caught(pool.run('refuse', null))
  expect(error).toBeInstanceOf(RangeError)
  expect(String(error)).toBe('RangeError: out of range on purpose')
  expect((error as Error).stack).toContain('test-kinds')
})

test('progress arrives while the job runs', async () => {
  const seen: number[] = []
  expect(await pool.run('count', 4, { onProgress: (fraction) => seen.push(fraction) })).toBe('counted')
  expect(seen).toEqual([0.25, 0.5, 0.75, 1])
})

test('a job that is asked to end early hands over what it has found, and its thread serves the next one', async () => {
  const finishing = new AbortController()
  const counted = await pool.run('countOn', null, {
    finishing: finishing.signal,
    onProgress: () => setImmediate(() => finishing.abort()),
  })
  expect(counted).toBeGreaterThan(0)
  // Asked before it began: it ends at its first look.
  expect(await pool.run('countOn', null, { finishing: AbortSignal.abort() })).toBe(1)
  // A kind that does not listen goes on to its end.
  expect(await pool.run('double', 4, { finishing: AbortSignal.abort() })).toBe(8)
  expect(await makeInPlaceRunner(TEST_KINDS)('countOn', null, { finishing: AbortSignal.abort() })).toBe(1)
})

test('a job past its time is ended with its reason and bound, while this thread goes on and others are served', async () => {
  let ticks = 0
  const ticking = setInterval(() => {
    ticks += 1
  }, 20)
  const [error, doubled] = await Promise.all([caught(pool.run('spin', null)), pool.run('double', 5)])
  clearInterval(ticking)
  expect(error).toBeInstanceOf(JobLimitError)
  expect(error).toMatchObject({ exceeded: 'time', job: 'spin' })
  expect(String(error)).toContain('longer than 0.5 s')
  expect(doubled).toBe(10)
  expect(ticks).toBeGreaterThan(5)
  expect(await pool.run('double', 6)).toBe(12)
})

test('a job past its memory is ended with its reason and bound, and the process lives on', async () => {
  const error = await caught(pool.run('eat', null))
  expect(error).toBeInstanceOf(JobLimitError)
  expect(error).toMatchObject({ exceeded: 'memory' })
  expect(String(error)).toContain('64 MiB')
  expect(await pool.run('double', 7)).toBe(14)
})

test('a thread that dies fails its own job alone', async () => {
  const [error, doubled] = await Promise.all([caught(pool.run('crash', 3)), pool.run('double', 8)])
  expect(error).toBeInstanceOf(JobCrashedError)
  expect(String(error)).toContain('exit code 3')
  expect(doubled).toBe(16)
})

test('a stop ends a job at work, one that waits, and one that was unwanted from the start', async () => {
  const alone = makePool({ mostThreads: 1 })
  const [atWork, waiting] = [new AbortController(), new AbortController()]
  const onProgress = vi.fn()
  const running = caught(alone.run('spinLong', null, { signal: atWork.signal, onProgress }))
  const queued = caught(alone.run('double', 1, { signal: waiting.signal }))
  await vi.waitFor(() => expect(onProgress).toHaveBeenCalled(), 20_000)
  waiting.abort()
  expect(await queued).toBeInstanceOf(JobStoppedError)
  const next = alone.run('double', 4)
  atWork.abort()
  expect(await running).toBeInstanceOf(JobStoppedError)
  expect(await next).toBe(8)
  expect(await caught(alone.run('double', 1, { signal: AbortSignal.abort() }))).toBeInstanceOf(JobStoppedError)
  alone.close()
})

test('long jobs never fill the pool: a short one finds a thread', async () => {
  const stops = new AbortController()
  const long = [1, 2, 3].map(() => caught(pool.run('spinLong', null, { signal: stops.signal })))
  expect(await pool.run('double', 9)).toBe(18)
  stops.abort()
  for (const error of await Promise.all(long)) expect(error).toBeInstanceOf(JobStoppedError)
})

test('an idle thread gives its memory back', async () => {
  const brief = makePool({ idleMs: 50 })
  expect(await brief.run('double', 1)).toBe(2)
  await vi.waitFor(() => expect(brief.threadCount).toBe(0), 5_000)
  expect(await brief.run('double', 2)).toBe(4)
  brief.close()
})

test('what is certain early is told before the job is done, in a thread and in place', async () => {
  const told: unknown[] = []
  const options = { onFirst: (output: unknown) => told.push(output) }
  expect(await pool.run('tellFirst', 4, options)).toBe(5)
  expect(await makeInPlaceRunner(TEST_KINDS)('tellFirst', 7, options)).toBe(8)
  expect(told).toEqual([4, 7])
})

test('a thread is kept for as long as its kind says', async () => {
  const brief = makePool({ idleMs: 50 })
  await Promise.all([brief.run('tellFirst', 1), brief.run('double', 1)])
  await vi.waitFor(() => expect(brief.threadCount).toBe(1), 5_000)
  brief.close()
})

test('a thread that its kind keeps for good outlives the others, and is the last to make room', async () => {
  const pair = makePool({ mostThreads: 2, idleMs: 10_000 })
  const listen = () => pair.run('listen', null)
  const kept = await listen()
  await pair.run('double', 1)
  expect(await pair.run('count', 1)).toBe('counted')
  expect(await listen()).toBe(kept)
  pair.close()
})

test('what cannot be copied to a thread is refused, and harms no other job', async () => {
  const error = await caught(pool.run('double', (() => 1) as unknown as number))
  expect(String(error)).toContain('could not be cloned')
  expect(await pool.run('double', 3)).toBe(6)
})

test('in place, jobs give the same answers, and a stop is noticed at the next progress', async () => {
  const run = makeInPlaceRunner(TEST_KINDS)
  expect(await run('double', 21)).toBe(42)
  const seen: number[] = []
  const stop = new AbortController()
  const counting = run('count', 4, {
    signal: stop.signal,
    onProgress: (fraction) => {
      seen.push(fraction)
      if (fraction === 0.5) stop.abort()
    },
  })
  expect(await caught(counting)).toBeInstanceOf(JobStoppedError)
  expect(seen).toEqual([0.25, 0.5])
})
