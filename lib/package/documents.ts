import { Worker } from 'node:worker_threads'
import type { PackageFile } from './content'
import type { DocumentOrder } from './document-order'

export type DocumentAnswer =
  | { readonly ok: true; readonly files: readonly PackageFile[] }
  | { readonly ok: false; readonly name: string; readonly message: string; readonly stack: string }

/** One after another: each takes seconds of a processor, and there are few processors. */
let last: Promise<unknown> = Promise.resolve()

/**
 * Lays out documents in a thread of their own, so that a release holds up nobody's pages. The bytes are the same as
 * those made here.
 *
 * @throws what the layout threw, with its name and message; Error where the thread ended without an answer
 */
export function makeDocumentsApart(order: DocumentOrder): Promise<readonly PackageFile[]> {
  const made = last.then(() => runApart(order))
  last = made.catch(() => undefined)
  return made
}

async function runApart(order: DocumentOrder): Promise<readonly PackageFile[]> {
  const answer = await askWorker(order)
  // Code that runs from its sources without a loader, as under the tests' own runner, cannot start a thread from them.
  if (answer === null) return (await import('./report')).carryOut(order)
  if (answer.ok) return answer.files
  throw restoreError(answer)
}

/** Null where the thread's program cannot be loaded as it is. */
function askWorker(order: DocumentOrder): Promise<DocumentAnswer | null> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./documents-worker.ts', import.meta.url), { workerData: { order } })
    worker.once('message', (answer: DocumentAnswer) => {
      resolve(answer)
      void worker.terminate()
    })
    worker.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'ERR_UNKNOWN_FILE_EXTENSION') resolve(null)
      else reject(error)
    })
    worker.once('exit', (code) => reject(new Error(`the thread that lays out documents ended early (${code})`)))
  })
}

const ERRORS: Readonly<Record<string, new (message: string) => Error>> = { RangeError, TypeError, SyntaxError }

function restoreError({ name, message, stack }: Extract<DocumentAnswer, { ok: false }>): Error {
  const error = new (ERRORS[name] ?? Error)(message)
  // Where it happened, rather than where it was handed on.
  if (stack !== '') error.stack = stack
  return error
}
