import { Worker } from 'node:worker_threads'
import { JobCrashedError, JobLimitError, restoreError } from './errors'
import type { JobLimits, JobOptions } from './kind'
import type { Message, Order } from './serve'

/** @param memoryMib  limit of the thread's heap */
export type StartWorker = (memoryMib: number) => Worker

/** Searches make much that lives for a moment: with V8's usual 48 MiB more of it is taken for lasting, and collecting takes a tenth of their time. */
const YOUNG_MIB = 96

/** The bundler follows this very form of words: `new Worker(new URL(…, import.meta.url), …)`. */
export const startJobWorker: StartWorker = (memoryMib) =>
  new Worker(new URL('./worker.ts', import.meta.url), {
    workerData: {},
    resourceLimits: { maxOldGenerationSizeMb: memoryMib, maxYoungGenerationSizeMb: YOUNG_MIB },
  })

interface Running {
  readonly order: Order
  readonly limits: JobLimits
  readonly options: Pick<JobOptions, 'onProgress' | 'onFirst'>
  readonly resolve: (output: unknown) => void
  readonly reject: (error: Error) => void
  clock: NodeJS.Timeout | undefined
}

/** Loading the code is not the job's own time, and must not last for ever either. */
const START_SECONDS = 60

/** One worker thread that carries out orders one after another. It is over after a limit, a stop or a crash. */
export class JobThread {
  readonly #worker: Worker
  #running: Running | null = null
  #isOver = false

  constructor(
    readonly kindName: string,
    worker: Worker,
    onOver: () => void,
  ) {
    this.#worker = worker
    worker.on('message', (message: Message) => this.#hear(message))
    worker.on('error', (error: NodeJS.ErrnoException) => this.#fail(error))
    worker.on('exit', (exitCode) => {
      this.#isOver = true
      this.#settle((running) => running.reject(new JobCrashedError(running.order.name, { exitCode })))
      onOver()
    })
    worker.unref()
  }

  get isFree(): boolean {
    return this.#running === null && !this.#isOver
  }

  get isOver(): boolean {
    return this.#isOver
  }

  run(order: Order, limits: JobLimits, options: Pick<JobOptions, 'onProgress' | 'onFirst'>): Promise<unknown> {
    return new Promise((resolve, reject) => {
      this.#running = { order, limits, options, resolve, reject, clock: undefined }
      this.#setClock(START_SECONDS, (running) => new JobCrashedError(running.order.name))
      // A process that has nothing else to do waits for this job, and for no idle thread.
      this.#worker.ref()
      try {
        this.#worker.postMessage(order)
      } catch (error) {
        // What cannot be copied to a thread.
        this.#settle((running) => running.reject(error as Error))
      }
    })
  }

  /** Ends the thread, and with it what runs in it. */
  end(reason: Error | null = null): void {
    this.#isOver = true
    this.#settle((running) => running.reject(reason ?? new JobCrashedError(running.order.name)))
    void this.#worker.terminate()
  }

  #hear(message: Message): void {
    const running = this.#running
    if (running === null) return
    switch (message.kind) {
      case 'started':
        this.#setClock(running.limits.seconds, ({ order, limits }) => new JobLimitError(order.name, 'time', limits))
        return
      case 'progress':
        running.options.onProgress?.(message.fraction)
        return
      case 'first':
        running.options.onFirst?.(message.output)
        return
      case 'done':
        this.#settle(({ resolve }) => resolve(message.output))
        return
      case 'failed':
        this.#settle(({ reject }) => reject(restoreError(message.error)))
    }
  }

  #fail(error: NodeJS.ErrnoException): void {
    this.#isOver = true
    this.#settle(({ order, limits, reject }) => {
      if (error.code === 'ERR_WORKER_OUT_OF_MEMORY') reject(new JobLimitError(order.name, 'memory', limits))
      else reject(new JobCrashedError(order.name, { cause: error }))
    })
  }

  #setClock(seconds: number, makeError: (running: Running) => Error): void {
    const running = this.#running
    if (running === null) return
    clearTimeout(running.clock)
    running.clock = setTimeout(() => this.end(makeError(running)), seconds * 1000)
  }

  #settle(settle: (running: Running) => void): void {
    const running = this.#running
    if (running === null) return
    this.#running = null
    clearTimeout(running.clock)
    this.#worker.unref()
    settle(running)
  }
}
