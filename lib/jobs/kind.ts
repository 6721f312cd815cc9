/** What a job may tell while it runs. */
export interface JobHooks {
  /** @param fraction  done so far, 0 to 1 */
  readonly onProgress: (fraction: number) => void
  /** @param output  what is certain already, of the shape of the job's output: shown until that is there */
  readonly onFirst?: (output: unknown) => void
  /** Whether it was asked to end early with what it has found. A kind that cannot may ignore it. */
  readonly isFinishAsked: () => boolean
}

/** A kind of work that runs off the request path. Input and output are plain data: they go to another thread and back. */
export interface JobKind<I, O> {
  readonly limits: JobLimits
  /** Takes seconds by nature. Such jobs never fill the pool, so that a short one does not wait behind them. */
  readonly isLong: boolean
  /** How long its thread is kept for the next order; the pool's usual time where left out. */
  readonly idleSeconds?: number
  /** An order of about a second, carried out when a server starts, so that the first one that somebody asks for finds code that has run. */
  readonly makeRehearsal?: () => Promise<unknown>
  /** Fetches the code that does it: in the thread, so that the server's own does not carry it. */
  readonly load: () => Promise<(input: I, hooks: JobHooks) => O | Promise<O>>
}

export interface JobLimits {
  /** Wall clock, counted from when the thread has loaded its code. */
  readonly seconds: number
  /** Of the thread's heap. */
  readonly memoryMib: number
}

/** Kinds by name. */
export type JobTable = Readonly<Record<string, JobKind<never, unknown>>>

export type JobInput<K> = K extends JobKind<infer I, unknown> ? I : never
export type JobOutput<K> = K extends { readonly load: () => Promise<(...given: never) => infer O> } ? Awaited<O> : never

/** What the person who asks for a job may say besides its input. */
export interface JobOptions {
  /** Stops the job: it ends with a JobStoppedError. */
  readonly signal?: AbortSignal | undefined
  /** Asks the job to end early with what it has found, which is its output. A kind that does not listen goes on. */
  readonly finishing?: AbortSignal | undefined
  /** Called while the job runs, with what is done so far, 0 to 1. */
  readonly onProgress?: ((fraction: number) => void) | undefined
  /** Called with what is certain before the job is done, where its kind tells any. */
  readonly onFirst?: ((output: unknown) => void) | undefined
}

/** Runs jobs of a table, in threads or in place. */
export type JobRunner<T extends JobTable> = <N extends keyof T & string>(
  name: N,
  input: JobInput<T[N]>,
  options?: JobOptions,
) => Promise<JobOutput<T[N]>>
