import 'server-only'
import { AsyncLocalStorage } from 'node:async_hooks'
import type { TrailNote } from '@/lib/review'
import type { Prisma } from '../../generated/sqlite/client'

/** A record that is to be written once the act is done. */
export interface PendingRecord {
  readonly at: Date
  readonly actor: { readonly userId: string | null; readonly name: string }
  readonly note: TrailNote
  /** Runs when the record has its place in the trail. */
  readonly onWritten: (sequence: number) => Promise<void>
}

/** One write transaction under way: what it has touched, and what it will tell the trail. */
export interface Writing {
  readonly tx: Prisma.TransactionClient
  /** Keys of touched rows by model. */
  readonly touched: Map<string, Set<string | number>>
  readonly pending: PendingRecord[]
}

/**
 * The server's bundles hold several copies of this module, and the database client belongs to the copy that opened it:
 * so what is under way lives with the process.
 */
const PLACE = Symbol.for('bendworthy.writing')
const process_ = globalThis as { [PLACE]?: AsyncLocalStorage<Writing> }
process_[PLACE] ??= new AsyncLocalStorage<Writing>()
const underWay = process_[PLACE]

export function startWriting<T>(tx: Prisma.TransactionClient, work: (writing: Writing) => Promise<T>): Promise<T> {
  const writing: Writing = { tx, touched: new Map(), pending: [] }
  return underWay.run(writing, () => work(writing))
}

export function getWriting(): Writing | null {
  return underWay.getStore() ?? null
}

export function noteTouched({ touched }: Writing, model: string, key: string | number): void {
  const keys = touched.get(model) ?? new Set()
  keys.add(key)
  touched.set(model, keys)
}
