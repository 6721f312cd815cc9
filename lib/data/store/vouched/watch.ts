import 'server-only'
import { Prisma } from '../../generated/sqlite/client'
import { findVouchedModel, type VouchedModel } from './models'
import { getWriting, noteTouched, type Writing } from './writing'

type Args = Readonly<Record<string, unknown>>

const WRITES = /^(create|update|upsert|delete)/

/**
 * Sees every write to a table that the trail vouches for, so that no writer can forget to tell it: the rows touched in a
 * write transaction are hashed at its end and the hashes written into its record. Inside any other transaction such a
 * write is refused.
 *
 * @param isInTransaction  tells a write on its own, which only tests and tools make, from one in a transaction
 */
export function watchWrites(isInTransaction: () => boolean) {
  return Prisma.defineExtension((client) =>
    client.$extends({
      name: 'watch-writes',
      query: {
        $allModels: {
          async $allOperations({ model, operation, args, query }) {
            const vouched = WRITES.test(operation) ? findVouchedModel(model) : null
            if (vouched === null) return query(args)
            const writing = getWriting()
            if (writing === null) {
              if (isInTransaction()) throw new Error(`${model} is written through inWriteTransaction alone`)
              const written = await query(args)
              // Nobody says what it reaches, so nothing that was worked out before holds.
              await client.revisionStanding.updateMany({ data: { changes: { increment: 1 }, workedOutAt: null } })
              return written
            }
            return runWatched(writing, vouched, operation, args as Args, query as (args: Args) => Promise<unknown>)
          },
        },
      },
    }),
  )
}

async function runWatched(
  writing: Writing,
  vouched: VouchedModel,
  operation: string,
  args: Args,
  query: (args: Args) => Promise<unknown>,
): Promise<unknown> {
  refuseNested(vouched, args)
  if (operation === 'update' || operation === 'updateMany') {
    const data = Object.keys(args.data as Args)
    if (!data.some((column) => vouched.columns.includes(column))) return query(args)
  }
  if (operation === 'updateMany' || operation === 'deleteMany') {
    for (const key of await findKeys(writing, vouched, args.where)) noteTouched(writing, vouched.model, key)
    return query(args)
  }
  if (/Many/.test(operation)) throw new Error(`${vouched.model}.${operation} does not say which rows it writes`)
  const { key } = vouched
  const select = args.select === undefined ? {} : { select: { ...(args.select as Args), [key]: true } }
  const row = (await query({ ...args, ...select })) as Args
  noteTouched(writing, vouched.model, row[key] as string | number)
  return row
}

const RELATION_ACTS = [
  'create',
  'createMany',
  'connectOrCreate',
  'update',
  'updateMany',
  'upsert',
  'delete',
  'deleteMany',
]

/** Rows written by way of a relation would pass the watch by. */
function refuseNested({ model }: VouchedModel, args: Args): void {
  for (const data of [args.data, args.create, args.update]) {
    if (typeof data !== 'object' || data === null) continue
    for (const [name, value] of Object.entries(data)) {
      if (typeof value !== 'object' || value === null || value instanceof Date) continue
      if (RELATION_ACTS.some((act) => act in value)) throw new Error(`${model}.${name} is written by its own table`)
    }
  }
}

/** The client's property for a model. */
export function getDelegate(tx: Writing['tx'], model: string): RowReader {
  const name = `${model.charAt(0).toLowerCase()}${model.slice(1)}`
  return (tx as unknown as Record<string, RowReader>)[name] as RowReader
}

export interface RowReader {
  findMany(args: object): Promise<Record<string, unknown>[]>
}

async function findKeys({ tx }: Writing, { model, key }: VouchedModel, where: unknown): Promise<(string | number)[]> {
  const rows = await getDelegate(tx, model).findMany({ where, select: { [key]: true } })
  return rows.map((row) => row[key] as string | number)
}
