import { parentPort, workerData } from 'node:worker_threads'
import type { DocumentOrder } from './document-order'
import type { DocumentAnswer } from './documents'
import { carryOut } from './report'

/** Runs in a thread of its own: makes what the order says, and answers once. */
async function answer(order: DocumentOrder): Promise<DocumentAnswer> {
  try {
    return { ok: true, files: await carryOut(order) }
  } catch (error) {
    const { name, message, stack } = error instanceof Error ? error : new Error(String(error))
    return { ok: false, name, message, stack: stack ?? '' }
  }
}

if (parentPort !== null) {
  const answered = await answer((workerData as { order: DocumentOrder }).order)
  parentPort.postMessage(answered)
}
