import { makeInPlaceRunner } from './in-place'
import type { JobInput, JobKind, JobOptions, JobOutput, JobRunner } from './kind'
import { JOB_KINDS, type JobKinds } from './kinds'
import { WorkerPool } from './pool'
import { startJobWorker } from './thread'

/** One pool per process, however often a bundle holds this module. */
const PLACE = Symbol.for('bendworthy.jobs')
const process_ = globalThis as { [PLACE]?: JobRunner<JobKinds> }

/**
 * Carries a job out in a worker thread, within the limits of its kind.
 *
 * @throws JobLimitError, JobStoppedError, JobCrashedError; what the job threw, by its name and message
 */
export function runJob<N extends keyof JobKinds>(
  name: N,
  input: JobInput<JobKinds[N]>,
  options?: JobOptions,
): Promise<JobOutput<JobKinds[N]>> {
  process_[PLACE] ??= startPool()
  return process_[PLACE](name, input, options)
}

function startPool(): JobRunner<JobKinds> {
  const pool = new WorkerPool(JOB_KINDS, startJobWorker)
  return (name, input, options) => pool.run(name, input, options)
}

/** An order that somebody gives meanwhile waits no longer than this. */
const REHEARSAL_MS = 3_000
/** The first run compiles, the second has what is run often optimised. */
const REHEARSALS = 2

/**
 * Carries out the rehearsals that kinds have, in the threads that then serve what people ask for. To be called once, by a server that has started.
 *
 * @throws what the rehearsal threw
 */
export async function rehearseJobs(): Promise<void> {
  for (const [name, { makeRehearsal }] of Object.entries<JobKind<never, unknown>>(JOB_KINDS)) {
    if (makeRehearsal === undefined) continue
    const order = await makeRehearsal()
    for (let run = 0; run < REHEARSALS; run += 1) {
      await runJob(name as keyof JobKinds, order as never, { finishing: AbortSignal.timeout(REHEARSAL_MS) })
    }
  }
}

/** Use another runner from here on, as tests do; null goes back to threads. */
export function replaceJobRunner(runner: JobRunner<JobKinds> | null): void {
  if (runner === null) delete process_[PLACE]
  else process_[PLACE] = runner
}

/** From here on jobs run on the thread that asks: for programs that serve nobody else and would wait for a thread to load. */
export function runJobsInPlace(): void {
  replaceJobRunner(makeInPlaceRunner(JOB_KINDS))
}
