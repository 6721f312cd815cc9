import 'server-only'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import type * as engineModule from '@prisma/schema-engine-wasm'
import type { DatabaseKind } from '@/lib/config'
import { OrderlySqlite } from '../sqlite-adapter'
import { PostgresDialect } from './dialect-adapter'
import { WholeScriptPostgres } from './whole-script-postgres'

export type SchemaEngine = engineModule.SchemaEngine
export type MigrationList = Parameters<SchemaEngine['applyMigrations']>[0]['migrationsList']

export const NO_FILTER = { externalTables: [], externalEnums: [] }

/** The generated bindings, and the two doors through which a WebAssembly module is handed to them. */
type Bindings = Pick<typeof engineModule, 'SchemaEngine'> & { __wbg_set_wasm(exports: WebAssembly.Exports): void }

let bindings: Promise<Bindings> | undefined

/**
 * Prisma's own schema engine, compiled to WebAssembly. The package expects a bundler to load its module, so it is loaded
 * here by hand; the native engine that the `prisma` command wants has to be downloaded from elsewhere.
 */
async function loadBindings(): Promise<Bindings> {
  const require = createRequire(import.meta.url)
  const folder = path.dirname(require.resolve('@prisma/schema-engine-wasm'))
  const loaded = (await import(pathToFileURL(path.join(folder, 'schema_engine_bg.js')).href)) as Bindings
  const { instance } = await WebAssembly.instantiate(readFileSync(path.join(folder, 'schema_engine_bg.wasm')), {
    './schema_engine_bg.js': loaded as unknown as WebAssembly.ModuleImports,
  })
  loaded.__wbg_set_wasm(instance.exports)
  const start = instance.exports.__wbindgen_start
  if (typeof start === 'function') start()
  return loaded
}

/**
 * Work with a schema engine that is connected to a database.
 * @param url  `file:` with an absolute path, or `postgresql:`
 * @param work  is also given a way to ask for what the driver last threw: the engine drops the database's own words
 */
export async function withSchemaEngine<T>(
  url: string,
  work: (engine: SchemaEngine, getDriverError: () => unknown) => Promise<T>,
): Promise<T> {
  const { factory, closeAll, getDriverError } = recordConnections(
    url.startsWith('file:') ? new OrderlySqlite(url, { forMigration: true }) : new WholeScriptPostgres(url),
  )
  try {
    return await runEngine(factory, (engine) => work(engine, getDriverError), getDriverError)
  } finally {
    await closeAll()
  }
}

/** Work with a schema engine that knows the SQL of one kind of database and is connected to none. */
export function withSqlDialect<T>(kind: DatabaseKind, work: (engine: SchemaEngine) => Promise<T>): Promise<T> {
  return runEngine(kind === 'sqlite' ? new OrderlySqlite('file::memory:') : new PostgresDialect(), work)
}

async function runEngine<T>(
  factory: SqlMigrationAwareDriverAdapterFactory,
  work: (engine: SchemaEngine) => Promise<T>,
  getDriverError: () => unknown = () => undefined,
): Promise<T> {
  bindings ??= loadBindings()
  const { SchemaEngine } = await bindings
  const bound = bindMigrationAwareSqlAdapterFactory(factory)
  const engine = await SchemaEngine.new({ datamodels: undefined }, () => {}, bound).catch((error: unknown) => {
    throw getDriverError() ?? error
  })
  try {
    return await work(engine)
  } finally {
    engine.free()
  }
}

/** The engine closes none of the connections it opens. */
function recordConnections(inner: SqlMigrationAwareDriverAdapterFactory) {
  const open: SqlDriverAdapter[] = []
  let driverError: unknown
  const noting =
    <Arguments extends unknown[], T>(work: (...args: Arguments) => Promise<T>) =>
    async (...args: Arguments): Promise<T> => {
      try {
        return await work(...args)
      } catch (error) {
        driverError = error
        throw error
      }
    }
  const recorded = (connect: () => Promise<SqlDriverAdapter>) =>
    noting(async () => {
      const adapter = await connect()
      open.push(adapter)
      adapter.executeScript = noting(adapter.executeScript.bind(adapter))
      adapter.queryRaw = noting(adapter.queryRaw.bind(adapter))
      adapter.executeRaw = noting(adapter.executeRaw.bind(adapter))
      return adapter
    })
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: inner.provider,
    adapterName: inner.adapterName,
    connect: recorded(() => inner.connect()),
    connectToShadowDb: recorded(() => inner.connectToShadowDb()),
  }
  return {
    factory,
    closeAll: () => Promise.all(open.map((adapter) => adapter.dispose())),
    getDriverError: () => driverError,
  }
}

/** The shared models with the header that makes them a schema for one kind of database. */
export function asSchema(kind: DatabaseKind, models: string): string {
  return `datasource db {\n  provider = "${kind}"\n}\n\n${models}`
}
