import 'server-only'
import type { DatabaseKind } from '@/lib/config'
import type { Prisma } from '../generated/sqlite/client'

type ModelName = Prisma.ModelName

/** A row as the client gives it: every column of the model, and nothing of its relations. */
export type Row<M extends ModelName> = Prisma.TypeMap['model'][M]['payload']['scalars']

/** Values that a column must be among: given, or found in a column of another table. */
export type Among = readonly string[] | Selection

interface Selection {
  readonly model: ModelName
  readonly column: string
  readonly where: Condition
}

/** All of it must hold; a column that is absent is not asked for. */
export interface Condition {
  readonly among: Readonly<Record<string, Among>>
  readonly equals?: Readonly<Record<string, string>>
  readonly isNull?: readonly string[]
  /** Of the rows that share what stands in `by`, the one with the greatest number alone. */
  readonly latest?: { readonly by: readonly string[]; readonly number: string }
}

/** Which rows of a table are asked for. */
export interface Part<M extends ModelName = ModelName> extends Condition {
  readonly model: M
  /** These columns alone; all of them where it is absent. */
  readonly only?: readonly string[]
}

type RowOf<P extends Part> = P extends { readonly only: readonly (infer C)[] }
  ? Pick<Row<P['model']>, C & keyof Row<P['model']>>
  : Row<P['model']>

/** The rows of each part, by its name. */
export type RowsOf<P extends Readonly<Record<string, Part>>> = { readonly [K in keyof P]: RowOf<P[K]>[] }

/** What has to be known of the database that a client is open on. */
interface Dialect {
  readonly kind: DatabaseKind
  /** Of PostgreSQL, where it is not the one that is looked into first. */
  readonly schema: string | null
  readonly columns: ReadonlyMap<string, readonly Column[]>
}

interface Column {
  readonly name: string
  readonly type: string
  /** In the database, where it is another one. */
  readonly dbName?: string | null
}

/** With the process, as the open database is (`client.ts`): the server's bundles hold several copies of this module, and the one that asks need not be the one that opened. */
const PLACE = Symbol.for('bendworthy.dialects')
const process_ = globalThis as { [PLACE]?: WeakMap<object, Dialect> }
process_[PLACE] ??= new WeakMap()
const dialects = process_[PLACE]

/** Tells which database a client asks, and what its tables hold: the client knows it from the models that it was generated from. */
export function noteDialect(client: object, kind: DatabaseKind, schema: string | null): void {
  const { models } = Reflect.get(client, '_runtimeDataModel') as {
    models: Readonly<Record<string, { readonly fields: readonly (Column & { readonly kind: string })[] }>>
  }
  const columns = Object.entries(models).map(
    ([model, { fields }]) => [model, fields.filter((field) => field.kind === 'scalar')] as const,
  )
  dialects.set(client, { kind, schema, columns: new Map(columns) })
}

/** The same for a transaction of that client. */
export function noteTransaction(tx: object, client: object): void {
  const dialect = dialects.get(client)
  if (dialect !== undefined) dialects.set(tx, dialect)
}

/** What a statement written by hand has to know of the database of this client. */
export function describeDatabase(client: object): {
  readonly kind: DatabaseKind
  /** A table or function by its whole name. */
  readonly quote: (name: string) => string
} {
  const dialect = dialects.get(client)
  if (dialect === undefined) throw new Error('a client is asked that no database was opened with')
  return { kind: dialect.kind, quote: (name) => tableOf(dialect, name) }
}

/**
 * Rows of several tables by one statement, where asking for one table after the other would take thirty. They come in no order.
 *
 * The database gives the rows of each part as one JSON text (SQLite and PostgreSQL write it by functions of their own): an adapter and a client that unwrap
 * a thousand rows cell by cell take several times as long. Every column is text in it and is read by its type in the models.
 */
export async function readTogether<P extends Readonly<Record<string, Part>>>(
  tx: Pick<Prisma.TransactionClient, '$queryRawUnsafe'>,
  parts: P,
): Promise<RowsOf<P>> {
  const dialect = dialects.get(tx)
  if (dialect === undefined) throw new Error('a client is asked that no database was opened with')
  const { sql, values } = write(dialect, parts)
  const found = await tx.$queryRawUnsafe<{ readonly part: string; readonly cells: string }[]>(sql, ...values)
  const rows: Record<string, object[]> = {}
  for (const { part: name, cells } of found) {
    const part = parts[name]
    if (part === undefined) continue
    const columns = columnsOf(dialect, part)
    const lists: unknown = JSON.parse(cells)
    if (!Array.isArray(lists)) throw new Error(`the rows of ${name} did not come as a list`)
    rows[name] = lists.map((row) => decode(columns, row))
  }
  return rows as unknown as RowsOf<P>
}

function columnsOf({ columns }: Dialect, { model, only }: Pick<Part, 'model' | 'only'>): readonly Column[] {
  const found = columns.get(model)
  if (found === undefined) throw new Error(`there is no model ${model}`)
  return only === undefined ? found : found.filter(({ name }) => only.includes(name))
}

function write(dialect: Dialect, parts: Readonly<Record<string, Part>>) {
  const values: string[] = []
  const arms = Object.entries(parts).map(([name, part]) => {
    const cells = columnsOf(dialect, part).map((column) => asText(dialect, column))
    return `SELECT '${name}' AS "part", ${gather(dialect, cells)} AS "cells" FROM ${tableOf(dialect, part.model)} WHERE ${writeCondition(dialect, part.model, part, values)}`
  })
  return { sql: arms.join(' UNION ALL '), values }
}

/** All rows as one text: a list of lists. */
function gather({ kind }: Dialect, cells: readonly string[]): string {
  return kind === 'sqlite'
    ? `json_group_array(json_array(${cells.join(', ')}))`
    : `COALESCE(json_agg(json_build_array(${cells.join(', ')})), '[]')::text`
}

const tableOf = ({ schema }: Dialect, model: string) => `${schema === null ? '' : `"${schema}".`}"${model}"`

/** A column by its name in the database, which for some is not that of the model. */
function nameOf({ columns }: Dialect, model: string, column: string): string {
  const found = columns.get(model)?.find(({ name }) => name === column)
  if (found === undefined) throw new Error(`there is no column ${column} of ${model}`)
  return `"${found.dbName ?? found.name}"`
}

/** Both write a number with all its digits: PostgreSQL by itself, SQLite where it is told. */
function asText({ kind }: Dialect, { name, type, dbName }: Column): string {
  const column = `"${dbName ?? name}"`
  if (kind === 'postgresql') return `${column}::text`
  return type === 'Float'
    ? `CASE WHEN ${column} IS NULL THEN NULL ELSE printf('%!.17g', ${column}) END`
    : `CAST(${column} AS TEXT)`
}

function writeCondition(dialect: Dialect, model: string, condition: Condition, values: string[]): string {
  const { among, equals = {}, isNull = [], latest } = condition
  const place = (value: string) => {
    values.push(value)
    return dialect.kind === 'sqlite' ? '?' : `$${values.length}`
  }
  const own = () => [
    ...Object.entries(among).map(
      ([column, wanted]) => `${nameOf(dialect, model, column)} IN (${writeAmong(dialect, wanted, values)})`,
    ),
    ...Object.entries(equals).map(([column, value]) => `${nameOf(dialect, model, column)} = ${place(value)}`),
    ...isNull.map((column) => `${nameOf(dialect, model, column)} IS NULL`),
  ]
  if (latest === undefined) return own().join(' AND ')
  const by = latest.by.map((column) => `"${column}"`).join(', ')
  const newest = `SELECT ${by}, MAX("${latest.number}") FROM ${tableOf(dialect, model)} WHERE ${own().join(' AND ')} GROUP BY ${by}`
  return `(${by}, "${latest.number}") IN (${newest})`
}

function writeAmong(dialect: Dialect, wanted: Among, values: string[]): string {
  if (!('model' in wanted)) {
    // Nothing is among nothing.
    if (wanted.length === 0) return 'NULL'
    return wanted
      .map((value) => {
        values.push(value)
        return dialect.kind === 'sqlite' ? '?' : `$${values.length}`
      })
      .join(', ')
  }
  const { model, column, where } = wanted
  return `SELECT ${nameOf(dialect, model, column)} FROM ${tableOf(dialect, model)} WHERE ${writeCondition(dialect, model, where, values)}`
}

function decode(columns: readonly Column[], cells: readonly (string | null)[]): object {
  const row: Record<string, unknown> = {}
  columns.forEach(({ name, type }, at) => {
    const text = cells[at] ?? null
    row[name] = text === null ? null : decodeCell(type, text)
  })
  return row
}

function decodeCell(type: string, text: string): string | number | boolean | Date {
  switch (type) {
    case 'String':
      return text
    case 'Int':
    case 'Float':
      return Number(text)
    case 'Boolean':
      return text === '1' || text === 'true'
    case 'DateTime':
      return decodeTime(text)
    default:
      throw new Error(`columns of the type ${type} are not read together`)
  }
}

/** ISO 8601 with its zone, or as PostgreSQL writes it, without one, in UTC. */
function decodeTime(text: string): Date {
  const iso = text.replace(' ', 'T')
  return new Date(/(Z|[+-]\d\d:?\d\d)$/.test(iso) ? iso : `${iso}Z`)
}
