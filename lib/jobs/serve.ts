import { parentPort } from 'node:worker_threads'
import { type ErrorReport, reportError } from './errors'
import type { JobHooks, JobTable } from './kind'

/** What a thread is told: one order at a time. */
export interface Order {
  readonly name: string
  readonly input: unknown
  /** Set to 1 by the pool when the job is to end early: code that computes hears no message, but can look. */
  readonly finishFlag: Int32Array<SharedArrayBuffer>
}

/** What a thread tells. */
export type Message =
  /** The code is loaded: the clock runs from here. */
  | { readonly kind: 'started' }
  | { readonly kind: 'progress'; readonly fraction: number }
  | { readonly kind: 'first'; readonly output: unknown }
  | { readonly kind: 'done'; readonly output: unknown }
  | { readonly kind: 'failed'; readonly error: ErrorReport }

/** The other end of the pool: carries out each order that this thread is given. */
export function serveJobs(table: JobTable): void {
  const port = parentPort
  if (port === null) throw new Error('jobs are served in a thread of their own')
  const tell = (message: Message) => port.postMessage(message)
  port.on('message', async ({ name, input, finishFlag }: Order) => {
    try {
      const kind = table[name]
      if (kind === undefined) throw new RangeError(`no kind of job "${name}"`)
      const run = (await kind.load()) as (input: unknown, hooks: JobHooks) => unknown
      tell({ kind: 'started' })
      const output = await run(input, {
        onProgress: (fraction) => tell({ kind: 'progress', fraction }),
        onFirst: (found) => tell({ kind: 'first', output: found }),
        isFinishAsked: () => Atomics.load(finishFlag, 0) === 1,
      })
      tell({ kind: 'done', output })
    } catch (error) {
      tell({ kind: 'failed', error: reportError(error) })
    }
  })
}
