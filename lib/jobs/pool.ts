import { availableParallelism } from 'node:os'
import { JobStoppedError } from './errors'
import type { JobInput, JobOptions, JobOutput, JobTable } from './kind'
import { JobThread, type StartWorker } from './thread'

export interface PoolOptions {
  readonly mostThreads?: number
  /** How long a thread waits for its next order before its memory is given back. */
  readonly idleMs?: number
}

interface Task {
  readonly name: string
  readonly input: unknown
  readonly options: JobOptions
  readonly resolve: (output: unknown) => void
  readonly reject: (error: unknown) => void
  thread: JobThread | null
}

/** The thread that answers requests keeps a processor; and two at least, so that a short job need not wait for a long one. */
const DEFAULT_THREADS = Math.max(2, Math.min(8, availableParallelism() - 1))
const DEFAULT_IDLE_MS = 20_000

/**
 * Worker threads for the jobs of a table. Each job has the limits of its kind: what exceeds them, or is stopped, loses its thread.
 * Orders are carried out as they come; long ones leave one thread to the others.
 */
export class WorkerPool<T extends JobTable> {
  readonly #table: T
  readonly #startWorker: StartWorker
  readonly #mostThreads: number
  readonly #idleMs: number
  readonly #threads = new Set<JobThread>()
  readonly #running = new Set<Task>()
  readonly #idleClocks = new Map<JobThread, NodeJS.Timeout>()
  #waiting: Task[] = []

  constructor(
    table: T,
    startWorker: StartWorker,
    { mostThreads = DEFAULT_THREADS, idleMs = DEFAULT_IDLE_MS }: PoolOptions = {},
  ) {
    this.#table = table
    this.#startWorker = startWorker
    this.#mostThreads = mostThreads
    this.#idleMs = idleMs
  }

  /** How many threads there are now, at work and idle. */
  get threadCount(): number {
    return this.#threads.size
  }

  /**
   * Carries a job out in a thread.
   *
   * @throws JobLimitError, JobStoppedError, JobCrashedError; what the job threw, by its name and message
   */
  run<N extends keyof T & string>(name: N, input: JobInput<T[N]>, options: JobOptions = {}): Promise<JobOutput<T[N]>> {
    return new Promise((resolve, reject) => {
      const { signal } = options
      if (signal?.aborted === true) {
        reject(new JobStoppedError(name))
        return
      }
      const stop = (): void => this.#stop(task)
      const task: Task = {
        name,
        input,
        options,
        resolve: (output) => {
          signal?.removeEventListener('abort', stop)
          resolve(output as JobOutput<T[N]>)
        },
        reject: (error) => {
          signal?.removeEventListener('abort', stop)
          reject(error)
        },
        thread: null,
      }
      signal?.addEventListener('abort', stop)
      this.#waiting.push(task)
      this.#startWaiting()
    })
  }

  /** Ends every thread; what runs or waits is stopped. */
  close(): void {
    const waiting = this.#waiting
    this.#waiting = []
    for (const { name, reject } of waiting) reject(new JobStoppedError(name))
    for (const task of this.#running) task.thread?.end(new JobStoppedError(task.name))
    for (const thread of this.#threads) this.#drop(thread)
  }

  #stop(task: Task): void {
    if (task.thread !== null) {
      task.thread.end(new JobStoppedError(task.name))
      return
    }
    this.#waiting = this.#waiting.filter((waiting) => waiting !== task)
    task.reject(new JobStoppedError(task.name))
  }

  #startWaiting(): void {
    while (this.#running.size < this.#mostThreads) {
      const next = this.#waiting.find((task) => this.#mayStart(task))
      if (next === undefined) return
      this.#waiting = this.#waiting.filter((task) => task !== next)
      void this.#start(next)
    }
  }

  #mayStart({ name }: Task): boolean {
    if (!this.#isLong(name) || this.#mostThreads === 1) return true
    const longCount = [...this.#running].filter((task) => this.#isLong(task.name)).length
    return longCount < this.#mostThreads - 1
  }

  #isLong(name: string): boolean {
    return this.#table[name]?.isLong === true
  }

  async #start(task: Task): Promise<void> {
    this.#running.add(task)
    try {
      const output = await this.#runInThread(task)
      task.resolve(output)
    } catch (error) {
      task.reject(error)
    } finally {
      this.#running.delete(task)
      this.#rest(task.thread)
      task.thread = null
      this.#startWaiting()
    }
  }

  async #runInThread(task: Task): Promise<unknown> {
    const kind = this.#table[task.name]
    if (kind === undefined) throw new RangeError(`no kind of job "${task.name}"`)
    const thread = this.#takeThread(task.name, kind.limits.memoryMib)
    task.thread = thread
    const { finishing } = task.options
    const finishFlag = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
    const askToFinish = (): void => {
      Atomics.store(finishFlag, 0, 1)
    }
    if (finishing?.aborted === true) askToFinish()
    finishing?.addEventListener('abort', askToFinish)
    try {
      return await thread.run({ name: task.name, input: task.input, finishFlag }, kind.limits, task.options)
    } finally {
      finishing?.removeEventListener('abort', askToFinish)
    }
  }

  /** A thread has the memory limit of its kind from its start, and the kind's code: it serves that kind alone. */
  #takeThread(name: string, memoryMib: number): JobThread {
    const free = [...this.#threads].filter((thread) => thread.isFree)
    const known = free.find(({ kindName }) => kindName === name)
    if (known !== undefined) {
      clearTimeout(this.#idleClocks.get(known))
      return known
    }
    // One that is kept for its kind's next order goes last.
    const other = free.find(({ kindName }) => this.#table[kindName]?.idleSeconds === undefined) ?? free[0]
    if (other !== undefined && this.#threads.size >= this.#mostThreads) this.#drop(other)
    const thread: JobThread = new JobThread(name, this.#startWorker(memoryMib), () => this.#forget(thread))
    this.#threads.add(thread)
    return thread
  }

  #rest(thread: JobThread | null): void {
    if (thread === null || thread.isOver) return
    const { idleSeconds } = this.#table[thread.kindName] ?? {}
    if (idleSeconds === Infinity) return
    const idleMs = idleSeconds === undefined ? this.#idleMs : idleSeconds * 1000
    this.#idleClocks.set(thread, setTimeout(() => this.#drop(thread), idleMs).unref())
  }

  #drop(thread: JobThread): void {
    this.#forget(thread)
    thread.end()
  }

  #forget(thread: JobThread): void {
    clearTimeout(this.#idleClocks.get(thread))
    this.#idleClocks.delete(thread)
    this.#threads.delete(thread)
  }
}
