import 'server-only'
/** Tells the processes of an installation which jobs are due. The database's own rows say what they are, and whose. */
export interface JobQueue {
  /** Somebody runs it soon. Announced twice it still runs once: anyone who runs it claims it first. */
  readonly announce: (jobId: string) => Promise<void>
  readonly close: () => Promise<void>
}

/** Runs a job that was announced; one that is not due any more is left alone. */
export type RunJob = (jobId: string) => Promise<unknown>

/** The pool of threads bounds what runs; this bounds what is claimed and waits for a thread of this process. */
export const RUN_AT_ONCE = 2
