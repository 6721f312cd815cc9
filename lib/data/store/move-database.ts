import 'server-only'
import { createHash } from 'node:crypto'
import type { Database, TransactionClient } from './client'
import { isEmptyDatabase } from './migration'
import { SEARCH_TABLES } from './word-search'

/** The data cannot be moved, or did not arrive as it was; the message says why. Nothing is left in the new database. */
export class MoveError extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'MoveError'
  }
}

/** What was moved of one table, as both databases were found to hold it. */
export interface MovedTable {
  readonly name: string
  readonly count: number
  /** Sum of the hashes of its rows, in hexadecimal: the same in whatever order the rows come. */
  readonly hash: string
}

interface Column {
  readonly name: string
  readonly type: string
}

interface Table {
  readonly name: string
  readonly columns: readonly Column[]
  readonly primaryKey: readonly string[]
  /** Tables that must hold their rows first. */
  readonly needs: readonly string[]
  /** Columns that name a row of the same table: filled in once all rows are there. */
  readonly own: readonly string[]
}

type Row = Readonly<Record<string, string | number | boolean | null>>

const ROWS_AT_ONCE = 500
const TIMEOUT_MS = 6 * 3_600_000
const MODULUS = 2n ** 256n

/**
 * Puts every row of a SQLite database into an empty PostgreSQL one with the same tables, whole or not at all, and compares what both hold. Rows are
 * written as they are, without an act: the trail goes along, and still speaks of them.
 *
 * @throws MoveError
 */
export async function moveDatabase(from: Database, to: Database): Promise<readonly MovedTable[]> {
  if (from.kind !== 'sqlite' || to.kind !== 'postgresql') {
    throw new MoveError('Data are moved from a SQLite file to a PostgreSQL database.')
  }
  if (!(await isEmptyDatabase(to)))
    throw new MoveError('The PostgreSQL database holds data already: name an empty one.')
  return from.inReadTransaction(
    (source) =>
      to.client.$transaction((target) => moveTables(source, target), { maxWait: 10_000, timeout: TIMEOUT_MS }),
    TIMEOUT_MS,
  )
}

async function moveTables(source: TransactionClient, target: TransactionClient): Promise<readonly MovedTable[]> {
  const tables = sortByNeed(await readTables(target))
  await requireSameTables(source, tables)
  const moved: MovedTable[] = []
  for (const table of tables) {
    const left = makeTally()
    for await (const rows of eachSourceRows(source, table)) {
      left.add(rows)
      await insert(target, table, rows)
    }
    if (table.own.length > 0) {
      for await (const rows of eachSourceRows(source, table)) await fillOwn(target, table, rows)
    }
    const arrived = makeTally()
    for await (const rows of eachTargetRows(target, table)) arrived.add(rows)
    const [before, after] = [left.read(), arrived.read()]
    if (before.count !== after.count || before.hash !== after.hash) {
      throw new MoveError(
        `${table.name}: ${before.count} rows left and ${after.count} arrived${before.count === after.count ? ', not as they were' : ''}. Nothing was kept of it.`,
      )
    }
    moved.push({ name: table.name, ...after })
  }
  return moved
}

/** As PostgreSQL itself knows its tables: columns, keys, and what refers to what. */
async function readTables(target: TransactionClient): Promise<Table[]> {
  const columns = await target.$queryRawUnsafe<{ table: string; name: string; type: string }[]>(
    `SELECT c.table_name::text AS "table", c.column_name::text AS "name", c.data_type::text AS "type"
     FROM information_schema.columns c
     JOIN information_schema.tables t ON t.table_schema = c.table_schema AND t.table_name = c.table_name
     WHERE c.table_schema = current_schema() AND t.table_type = 'BASE TABLE' AND c.table_name NOT LIKE '\\_prisma%'
     ORDER BY c.table_name, c.ordinal_position`,
  )
  const keys = await target.$queryRawUnsafe<{ table: string; name: string; other: string | null }[]>(
    `SELECT r.relname::text AS "table", a.attname::text AS "name", o.relname::text AS "other"
     FROM pg_constraint k
     JOIN pg_class r ON r.oid = k.conrelid
     JOIN pg_namespace n ON n.oid = r.relnamespace AND n.nspname = current_schema()
     JOIN pg_attribute a ON a.attrelid = r.oid AND a.attnum = ANY (k.conkey)
     LEFT JOIN pg_class o ON o.oid = k.confrelid
     WHERE k.contype IN ('p', 'f')`,
  )
  return [...new Set(columns.map(({ table }) => table))].map((name) => {
    const own = keys.filter(({ table }) => table === name)
    return {
      name,
      columns: columns
        .filter(({ table }) => table === name)
        .map((column) => ({ name: column.name, type: column.type })),
      primaryKey: own.filter(({ other }) => other === null).map((key) => key.name),
      needs: own.flatMap(({ other }) => (other === null || other === name ? [] : [other])),
      own: own.filter(({ other }) => other === name).map((key) => key.name),
    }
  })
}

function sortByNeed(tables: readonly Table[]): Table[] {
  const sorted: Table[] = []
  const left = new Set(tables)
  while (left.size > 0) {
    const ready = [...left].filter(({ needs }) =>
      needs.every((name) => ![...left].some((table) => table.name === name)),
    )
    if (ready.length === 0)
      throw new Error(`tables refer to each other in a circle: ${[...left].map(({ name }) => name).join(', ')}`)
    for (const table of ready) {
      sorted.push(table)
      left.delete(table)
    }
  }
  return sorted
}

async function requireSameTables(source: TransactionClient, tables: readonly Table[]): Promise<void> {
  const found = await source.$queryRawUnsafe<{ table: string; name: string }[]>(
    `SELECT m.name AS "table", c.name AS "name" FROM sqlite_master m, pragma_table_info(m.name) c
     WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND m.name NOT LIKE '\\_prisma%' ESCAPE '\\' AND m.name NOT LIKE '${SEARCH_TABLES}' ESCAPE '\\'`,
  )
  const here = found.map(({ table, name }) => `${table}.${name}`).sort()
  const there = tables.flatMap(({ name, columns }) => columns.map((column) => `${name}.${column.name}`)).sort()
  const odd = [...here.filter((name) => !there.includes(name)), ...there.filter((name) => !here.includes(name))]
  if (odd.length > 0) {
    throw new MoveError(
      `The two databases are not of one version: ${odd.slice(0, 5).join(', ')} is in one alone. Start this version once on the SQLite file, then move it.`,
    )
  }
}

async function* eachSourceRows(source: TransactionClient, table: Table): AsyncGenerator<Row[]> {
  let last: unknown = -1
  for (;;) {
    const rows = await source.$queryRawUnsafe<Record<string, unknown>[]>(
      `SELECT rowid AS "rowid of sqlite", * FROM "${table.name}" WHERE rowid > ? ORDER BY rowid LIMIT ${ROWS_AT_ONCE}`,
      last,
    )
    if (rows.length === 0) return
    last = rows.at(-1)?.['rowid of sqlite']
    yield rows.map((row) => readRow(table, row))
  }
}

async function* eachTargetRows(target: TransactionClient, table: Table): AsyncGenerator<Row[]> {
  await target.$executeRawUnsafe(`DECLARE moved NO SCROLL CURSOR FOR SELECT * FROM "${table.name}"`)
  for (;;) {
    const rows = await target.$queryRawUnsafe<Record<string, unknown>[]>(`FETCH ${ROWS_AT_ONCE} FROM moved`)
    if (rows.length === 0) break
    yield rows.map((row) => readRow(table, row))
  }
  await target.$executeRawUnsafe('CLOSE moved')
}

/** The same values from either database, in the form that JSON holds. */
function readRow({ name, columns }: Table, row: Readonly<Record<string, unknown>>): Row {
  return Object.fromEntries(
    columns.map((column) => {
      const value = row[column.name]
      if (value === null || value === undefined) return [column.name, null]
      return [column.name, readValue(column.type, value, `${name}.${column.name}`)]
    }),
  )
}

function readValue(type: string, value: unknown, place: string): string | number | boolean {
  if (type.startsWith('timestamp')) {
    const at = value instanceof Date ? value : new Date(typeof value === 'bigint' ? Number(value) : String(value))
    if (!Number.isNaN(at.getTime())) return at.toISOString()
  } else if (type === 'boolean') return value === true || Number(value) === 1
  else if (['integer', 'bigint', 'smallint', 'double precision', 'real', 'numeric'].includes(type)) return Number(value)
  else if (type === 'text' || type === 'character varying') return String(value)
  throw new MoveError(`${place}: a value of the type ${type} is not known here.`)
}

async function insert(target: TransactionClient, table: Table, rows: readonly Row[]): Promise<void> {
  const without = rows.map((row) => ({ ...row, ...Object.fromEntries(table.own.map((name) => [name, null])) }))
  await target.$executeRawUnsafe(
    `INSERT INTO "${table.name}" SELECT * FROM json_populate_recordset(NULL::"${table.name}", $1::json)`,
    JSON.stringify(without),
  )
}

/** A row may name one that comes later, so all of a table's rows are there before any of them does. */
async function fillOwn(
  target: TransactionClient,
  { name, own, primaryKey }: Table,
  rows: readonly Row[],
): Promise<void> {
  const named = rows.filter((row) => own.some((column) => row[column] !== null))
  if (named.length === 0) return
  const same = primaryKey.map((key) => `t."${key}" = v."${key}"`).join(' AND ')
  const set = own.map((column) => `"${column}" = v."${column}"`).join(', ')
  await target.$executeRawUnsafe(
    `UPDATE "${name}" t SET ${set} FROM json_populate_recordset(NULL::"${name}", $1::json) v WHERE ${same}`,
    JSON.stringify(named),
  )
}

function makeTally() {
  let count = 0
  let sum = 0n
  return {
    add(rows: readonly Row[]): void {
      for (const row of rows) {
        count += 1
        sum = (sum + BigInt(`0x${createHash('sha256').update(JSON.stringify(row)).digest('hex')}`)) % MODULUS
      }
    },
    read: () => ({ count, hash: sum.toString(16).padStart(64, '0') }),
  }
}
