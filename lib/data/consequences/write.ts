import 'server-only'
import { now } from '@/lib/config'
import type { TrailNote } from '@/lib/review'
import { hashJson, sha256Hex } from '@/lib/review'
import { type Actor, getFabricatorCompanyId, loadRights, type PersonRights } from '../records/authorization'
import { keepCheckpointsOf } from '../records/trail-checkpoints'
import { getDatabase, type TransactionClient } from '../store/client'
import { outcomeOf, refuseClash } from '../store/errors'
import { startWriting } from '../store/vouched/writing'
import type { ActResult } from '../views'
import { queueNotices } from './mail/notices'
import { APPLICATION, appendToTrail, finishWriting } from './trail'

/** What a write works with: one transaction, the person's rights in it, one moment, and the trail. */
export interface WriteContext {
  readonly tx: TransactionClient
  readonly rights: PersonRights
  readonly at: Date
  /** @param then  runs once the record has its place in the trail, in the same transaction; it may record further */
  readonly record: (note: TrailNote, then?: () => Promise<void>) => Promise<void>
  /** What the application does by itself because of the act, and the person did not. */
  readonly recordByItself: (note: TrailNote) => Promise<void>
}

/** How the answer of a write is kept for a retry that carries the same key, where it may not be stored as it is. */
export interface KeptAnswer<T> {
  readonly keep: (value: T) => unknown
  readonly revive: (kept: unknown) => T
}

const KEY_DAYS = 7
const DAY_MS = 86_400_000

/** Never stored, not even hashed: a fast hash of a password is nearly the password. A second try gives another code. */
const SECRET_FIELDS = new Set(['password', 'currentPassword', 'newPassword', 'code', 'passkey', 'requestKey'])

function hashInput(action: string, input: object): string {
  const fields = Object.entries(input)
    .filter(([name]) => !SECRET_FIELDS.has(name))
    .map(([name, value]) => [name, value instanceof Uint8Array ? sha256Hex(value) : (value ?? null)])
  return hashJson({ action, fields: Object.fromEntries(fields) })
}

/**
 * Runs `work` as one transaction in which nobody else writes, so that what it checked still holds when it writes. What it
 * noted for the trail is written at its end, with hashes of the rows that it touched.
 *
 * SQLite gives that by itself. On PostgreSQL a table lock is the first statement: it comes before the transaction's
 * snapshot is taken, so the snapshot shows what the last writer left.
 */
export async function inWriteTransaction<T>(work: (tx: TransactionClient) => Promise<T>): Promise<T> {
  const { kind, inTransaction } = getDatabase()
  let last: TransactionClient | null = null
  const value = await inTransaction(async (tx) => {
    last = tx
    if (kind === 'postgresql') await tx.$executeRawUnsafe('LOCK TABLE "TrailRecord" IN SHARE ROW EXCLUSIVE MODE')
    return startWriting(tx, async (writing) => {
      const result = await work(tx)
      await finishWriting(writing, now())
      return result
    })
  })
  await keepCheckpointsOf(last)
  return value
}

/**
 * A write by a signed-in person: rights loaded afresh, a request that was already carried out answered as the first
 * time, refusals turned into an ActResult. All in one transaction.
 *
 * @throws NotFoundError, NotAllowedError
 */
export function write<I extends { readonly requestKey?: string | undefined }, T>(
  actor: Actor,
  action: string,
  input: I,
  work: (context: WriteContext) => Promise<T>,
  answer?: KeptAnswer<T>,
): Promise<ActResult<T>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const earlier = await findEarlierAnswer(tx, actor.userId, action, input)
      if (earlier !== null) return answer === undefined ? (earlier.value as T) : answer.revive(earlier.value)
      const at = now()
      const recordAs =
        (who: typeof APPLICATION | PersonRights) =>
        async (noted: TrailNote, then: () => Promise<void> = async () => {}) => {
          const note = withCompany(rights, noted)
          await appendToTrail(tx, at, who, note, async (sequence) => {
            await queueNotices({ tx, at, by: rights, note, sequence })
            await then()
          })
        }
      const [record, recordByItself] = [recordAs(rights), recordAs(APPLICATION)]
      const value = await work({ tx, rights, at, record, recordByItself })
      if (input.requestKey !== undefined) {
        await tx.idempotencyKey.deleteMany({
          where: { userId: actor.userId, createdAt: { lt: new Date(at.getTime() - KEY_DAYS * DAY_MS) } },
        })
        const kept = answer === undefined ? value : answer.keep(value)
        await tx.idempotencyKey.create({
          data: {
            userId: actor.userId,
            key: input.requestKey,
            action,
            inputHash: hashInput(action, input),
            resultJson: JSON.stringify(kept ?? null),
            createdAt: at,
          },
        })
      }
      return value
    }),
  )
}

/** Whatever a fabricator's people do is its own company's: no other fabricator's extract of the trail shows it. */
function withCompany(rights: PersonRights, note: TrailNote): TrailNote {
  if (note.projectId === undefined) return note
  return { ...note, companyId: note.companyId ?? getFabricatorCompanyId(rights, note.projectId) }
}

/** The answer that an earlier request with the same key was given; null where there was none. */
export async function findEarlierAnswer(
  tx: TransactionClient,
  userId: string,
  action: string,
  input: { readonly requestKey?: string | undefined },
): Promise<{ readonly value: unknown } | null> {
  if (input.requestKey === undefined) return null
  const found = await tx.idempotencyKey.findUnique({ where: { userId_key: { userId, key: input.requestKey } } })
  if (found === null) return null
  if (found.inputHash !== hashInput(action, input)) {
    refuseClash('This form was already sent once with other content. Reload the page and send it again.')
  }
  return { value: JSON.parse(found.resultJson) }
}
