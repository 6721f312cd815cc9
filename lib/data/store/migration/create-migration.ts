import 'server-only'
import { readFileSync } from 'node:fs'
import type { DatabaseKind } from '@/lib/config'
import { type MigrationPlaces, readMigratedModels, writeMigration } from './migration-files'
import { asSchema, NO_FILTER, withSqlDialect } from './schema-engine'

const NAME_PATTERN = /^[a-z0-9]+(?:[-_][a-z0-9]+)*$/

/**
 * Write the migration that leads from the models as last migrated to the models as they stand, for both databases.
 * Triggers and data changes are added to its SQL by hand before it is applied anywhere.
 *
 * @param name  what it does, such as `add-waiver-approval`
 * @param at  time of its making; migrations are applied in this order
 * @returns the files written; empty when the models have not changed
 * @throws RangeError  for a name that is not lower-case words joined by hyphens
 */
export async function createMigration(places: MigrationPlaces, name: string, at: Date): Promise<string[]> {
  const folder = folderName(name, at)
  const models = readFileSync(places.modelsFile, 'utf8')
  const scripts = await writeDifference(readMigratedModels(places), models)
  if (scripts === null) return []
  return writeMigration(places, folder, scripts, models)
}

/**
 * Write a migration for SQL that the models do not express, such as a trigger: a file for each database to fill in.
 * @throws RangeError  for a name that is not lower-case words joined by hyphens
 */
export function createMigrationByHand(places: MigrationPlaces, name: string, at: Date): string[] {
  const scripts = { sqlite: '-- SQL for SQLite\n', postgresql: '-- SQL for PostgreSQL\n' }
  return writeMigration(places, folderName(name, at), scripts, readMigratedModels(places))
}

/** Whether the models have changed since the newest migration was written. */
export async function hasUnmigratedModels(places: MigrationPlaces): Promise<boolean> {
  const models = readFileSync(places.modelsFile, 'utf8')
  return (await writeDifference(readMigratedModels(places), models)) !== null
}

/** Time first: migrations are applied in the order of their names. */
function folderName(name: string, at: Date): string {
  if (!NAME_PATTERN.test(name)) {
    throw new RangeError(
      `The migration's name is "${name}"; expected lower-case words joined by hyphens, such as add-waivers.`,
    )
  }
  const stamp = at.toISOString().replace(/\D/g, '').slice(0, 14)
  return `${stamp}_${name.replaceAll('-', '_')}`
}

async function writeDifference(from: string, to: string): Promise<Record<DatabaseKind, string> | null> {
  const sqlite = await differenceFor('sqlite', from, to)
  const postgresql = await differenceFor('postgresql', from, to)
  return sqlite === null && postgresql === null
    ? null
    : { sqlite: sqlite ?? NO_CHANGE_HERE, postgresql: postgresql ?? NO_CHANGE_HERE }
}

const NO_CHANGE_HERE = '-- This database needs no change.\nSELECT 1;\n'

async function differenceFor(kind: DatabaseKind, from: string, to: string): Promise<string | null> {
  const target = (models: string) => ({
    tag: 'schemaDatamodel' as const,
    files: [{ path: 'models.prisma', content: asSchema(kind, models) }],
  })
  const result = await withSqlDialect(kind, (engine) =>
    engine.diff({
      from: from.trim() === '' ? { tag: 'empty' } : target(from),
      to: target(to),
      script: true,
      exitCode: true,
      filters: NO_FILTER,
    }),
  )
  // As with the diff command: 0 for no difference, 2 for some.
  return result.exitCode === 2 ? `${(result.stdout ?? '').replace(CREATE_PUBLIC_SCHEMA, '').trim()}\n` : null
}

/** Tables go where the database's address says; an account without the right to make schemas must be able to migrate. */
const CREATE_PUBLIC_SCHEMA = /^-- CreateSchema\nCREATE SCHEMA IF NOT EXISTS "public";\n+/
