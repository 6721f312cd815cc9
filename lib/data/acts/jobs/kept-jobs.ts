import 'server-only'
import { setTimeout as sleep } from 'node:timers/promises'
import { log } from '@/lib/config'
import { JobLimitError, type JobOptions, JobStoppedError } from '@/lib/jobs'
import type { Actor } from '../../records/authorization'
import {
  type ClaimedJob,
  claimJob,
  endJob,
  findJobOf,
  type JobEnd,
  keepClaim,
  type SignOfLife,
  stopJobOf,
} from '../../records/job-record'
import { NotAllowedError, NotFoundError, RefusalError } from '../../store/errors'
import { loadActor } from '../access/sessions'
import { KEPT_KINDS } from './kinds'

/** What a page is told of its job. */
export interface JobView {
  readonly state: 'waiting' | 'running' | 'done' | 'failed' | 'stopped'
  /** 0 to 1. */
  readonly progress: number
  readonly failure: string | null
  /** JSON; null until it is done, or while it runs what is certain already. Of a job that was stopped: what it had found, null where that is nothing. */
  readonly resultJson: string | null
}

const STATES: readonly JobView['state'][] = ['waiting', 'running', 'done', 'failed', 'stopped']
const SIGN_OF_LIFE_MS = 400
/** How long a job that is to stop may take to hand over what it has found, before its thread is ended. Our choice. */
const FINISH_MS = 3_000

/** @throws NotFoundError  for a job that somebody else asked for */
export async function readJob(actor: Actor, jobId: string): Promise<JobView> {
  const row = await findJobOf(actor.userId, jobId)
  const state = STATES.find((known) => known === row.state)
  if (state === undefined) throw new RangeError(`unknown state of a job: ${row.state}`)
  return { ...row, state }
}

/** @throws NotFoundError  for a job that somebody else asked for */
export function stopJob(actor: Actor, jobId: string): Promise<void> {
  return stopJobOf(actor.userId, jobId)
}

/**
 * Runs a job that is due, in this process, and writes what came of it: once, even if another process runs it too.
 *
 * @returns whether this call ran it
 */
export async function runKeptJob(jobId: string): Promise<boolean> {
  const job = await claimJob(jobId)
  if (job === null) return false
  const stopping = new AbortController()
  const finishing = new AbortController()
  let progress = 0
  let firstJson: string | null = null
  const isOver = new AbortController()
  const watching = watch(job, () => ({ progress, firstJson }), { stopping, finishing }, isOver.signal)
  const end = await carryOut(job, {
    signal: stopping.signal,
    finishing: finishing.signal,
    onProgress: (fraction) => {
      progress = fraction
    },
    onFirst: (output) => {
      firstJson = JSON.stringify(output)
    },
  })
  isOver.abort()
  await watching
  await endJob(job, end)
  return true
}

/** Keeps the claim, tells progress, and hears a stop: the job is first asked to hand over what it has, and ended if it does not. */
async function watch(
  job: ClaimedJob,
  getSigns: () => SignOfLife,
  { stopping, finishing }: { readonly stopping: AbortController; readonly finishing: AbortController },
  isOver: AbortSignal,
): Promise<void> {
  let waitedMs = 0
  try {
    for (;;) {
      await sleep(SIGN_OF_LIFE_MS, undefined, { signal: isOver })
      const claim = await keepClaim(job, getSigns())
      if (claim === 'stop-asked') finishing.abort()
      if (claim === 'goes-on' || (claim === 'stop-asked' && waitedMs <= FINISH_MS)) {
        if (claim === 'stop-asked') waitedMs += SIGN_OF_LIFE_MS
        continue
      }
      stopping.abort()
      return
    }
  } catch (error) {
    if (isOver.aborted) return
    // Without signs of life another process takes the job over: it must not run here as well.
    log.error('unexpected error', { doing: 'watching a job', error })
    stopping.abort()
  }
}

async function carryOut(job: ClaimedJob, options: JobOptions & { readonly finishing: AbortSignal }): Promise<JobEnd> {
  try {
    const kind = KEPT_KINDS[job.kind]
    if (kind === undefined) throw new RangeError(`no kind of job "${job.kind}"`)
    const actor = await loadActor(job.askedById)
    if (actor === null) return { state: 'stopped', resultJson: null }
    const result = await kind.run(actor, job.inputJson, options)
    const resultJson = JSON.stringify(result)
    if (options.finishing.aborted) return { state: 'stopped', resultJson }
    return { state: 'done', resultJson, isWhole: kind.isWhole?.(result) ?? true }
  } catch (error) {
    if (error instanceof JobStoppedError) return { state: 'stopped', resultJson: null }
    const isExpected = [JobLimitError, RefusalError, NotFoundError, NotAllowedError].some(
      (kind) => error instanceof kind,
    )
    if (isExpected) return { state: 'failed', failure: (error as Error).message, resultJson: null }
    log.error('unexpected error', { doing: `job ${job.kind}`, jobId: job.id, error })
    return {
      state: 'failed',
      resultJson: null,
      failure: 'Something went wrong. The administrator of this installation can find it in the log.',
    }
  }
}
