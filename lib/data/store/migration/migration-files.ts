import 'server-only'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import type { DatabaseKind } from '@/lib/config'
import type { MigrationList } from './schema-engine'

/**
 * Where migrations live, in the layout of Prisma's own tools: a folder per database, in it a folder per migration with
 * `migration.sql`, applied in the order of their names. Beside them lies a copy of the models as of the newest migration;
 * the next one is the difference from there, which needs no server.
 */
export interface MigrationPlaces {
  /** prisma/models.prisma, absolute. */
  readonly modelsFile: string
  /** prisma/migrations, absolute. */
  readonly migrationsFolder: string
}

export const DATABASE_KINDS: readonly DatabaseKind[] = ['sqlite', 'postgresql']

const LOCK_FILE = 'migration_lock.toml'
const MIGRATED_MODELS_FILE = 'models-as-migrated.prisma'

/** @param rootFolder  the project's, absolute */
export function migrationPlaces(rootFolder: string): MigrationPlaces {
  return {
    modelsFile: path.join(/* turbopackIgnore: true */ rootFolder, 'prisma', 'models.prisma'),
    migrationsFolder: path.join(/* turbopackIgnore: true */ rootFolder, 'prisma', 'migrations'),
  }
}

/** The migrations of one kind of database as the schema engine wants them, oldest first. */
export function readMigrations({ migrationsFolder }: MigrationPlaces, kind: DatabaseKind): MigrationList {
  const baseDir = path.join(migrationsFolder, kind)
  const names = existsSync(baseDir)
    ? readdirSync(baseDir, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
        .sort()
    : []
  return {
    baseDir,
    lockfile: { path: LOCK_FILE, content: lockFileText(kind) },
    shadowDbInitScript: '',
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(path.join(baseDir, name, 'migration.sql'), 'utf8') },
      },
    })),
  }
}

/** The models as of the newest migration; empty before the first. */
export function readMigratedModels({ migrationsFolder }: MigrationPlaces): string {
  const file = path.join(migrationsFolder, MIGRATED_MODELS_FILE)
  return existsSync(file) ? readFileSync(file, 'utf8') : ''
}

/**
 * Write one migration for every kind of database, and the models that it leads to.
 * @param name  folder name, time first
 */
export function writeMigration(
  { migrationsFolder }: MigrationPlaces,
  name: string,
  scripts: Readonly<Record<DatabaseKind, string>>,
  models: string,
): string[] {
  const written: string[] = []
  for (const kind of DATABASE_KINDS) {
    const folder = path.join(migrationsFolder, kind, name)
    mkdirSync(folder, { recursive: true })
    writeFileSync(path.join(migrationsFolder, kind, LOCK_FILE), lockFileText(kind))
    const file = path.join(folder, 'migration.sql')
    writeFileSync(file, scripts[kind])
    written.push(file)
  }
  const draft = path.join(migrationsFolder, `${MIGRATED_MODELS_FILE}.${process.pid}`)
  writeFileSync(draft, models)
  renameSync(draft, path.join(migrationsFolder, MIGRATED_MODELS_FILE))
  rmSync(draft, { force: true })
  return written
}

function lockFileText(kind: DatabaseKind): string {
  return `# Kept in version control; names the database that these migrations are for.\nprovider = "${kind}"\n`
}
