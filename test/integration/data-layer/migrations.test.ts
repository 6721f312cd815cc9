import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openDatabase } from '@/lib/data/store/client'
import {
  applyMigrations,
  createMigration,
  createMigrationByHand,
  DATABASE_KINDS,
  hasUnmigratedModels,
  isEmptyDatabase,
  MigrationError,
  type MigrationPlaces,
  migrationPlaces,
  wipeDatabase,
} from '@/lib/data/store/migration'
import { asSchema, NO_FILTER, withSchemaEngine, withSqlDialect } from '@/lib/data/store/migration/schema-engine'
import { rootFolder } from '../../../scripts/steps/places.mjs'
import { describeOnBothDatabases } from '../../setup/databases'

const places = migrationPlaces(rootFolder)

/** A copy of the migrations to which a test can add its own. */
let copy: MigrationPlaces
let folder = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-migrations-'))
  cpSync(path.join(rootFolder, 'prisma'), path.join(folder, 'prisma'), { recursive: true })
  copy = migrationPlaces(folder)
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function addMigration(name: string, sql: string): void {
  for (const kind of DATABASE_KINDS) {
    const place = path.join(copy.migrationsFolder, kind, name)
    mkdirSync(place, { recursive: true })
    writeFileSync(path.join(place, 'migration.sql'), sql)
  }
}

/** A fabricator's person in one project, invited to another. */
const COMPANY_OF_AN_EARLIER_VERSION = [
  `INSERT INTO "Company" ("id", "kind", "name", "nameKey") VALUES ('fab', 'fabricator', 'Fab', 'fab')`,
  `INSERT INTO "User" ("id", "email", "name", "passwordHash") VALUES ('oskar', 'oskar@example.org', 'Oskar', '')`,
  `INSERT INTO "Project" ("id", "name", "nameKey", "description", "createdById") VALUES ('skua', 'Skua', 'skua', '', 'oskar')`,
  `INSERT INTO "Project" ("id", "name", "nameKey", "description", "createdById") VALUES ('pipit', 'Pipit', 'pipit', '', 'oskar')`,
  `INSERT INTO "Membership" ("id", "userId", "projectId", "companyId", "role") VALUES ('m', 'oskar', 'skua', 'fab', 'fabricator')`,
  `INSERT INTO "Invitation" ("id", "tokenHash", "role", "projectId", "companyId", "createdById", "expiresAt")
   VALUES ('i', 'hash', 'fabricator', 'pipit', 'fab', 'oskar', '2099-01-01T00:00:00.000+00:00')`,
]

const BROKEN = '29990101000000_broken'

describeOnBothDatabases(
  'migrations',
  (current, kind) => {
    it('leave nothing to do on a database that has had them', async () => {
      expect(await applyMigrations(current().url, places)).toEqual([])
      expect(await isEmptyDatabase(current().database)).toBe(true)
      await current().database.client.company.create({ data: { kind: 'team', name: 'A', nameKey: 'a' } })
      expect(await isEmptyDatabase(current().database)).toBe(false)
    })

    it('are taken back whole when one fails, with its name and the reason, and can be tried again', async () => {
      const { client } = current().database
      await client.company.create({ data: { kind: 'team', name: 'Kept', nameKey: 'kept' } })
      await current().database.close()
      addMigration(BROKEN, `CREATE TABLE "Half" ("id" INTEGER);\nINSERT INTO "Nowhere" VALUES (1);\n`)
      for (let attempt = 0; attempt < 2; attempt++) {
        const error = await applyMigrations(current().url, copy).catch((reason: unknown) => reason)
        expect(error).toBeInstanceOf(MigrationError)
        expect(String(error)).toMatch(/29990101000000_broken failed and was rolled back: .*Nowhere/)
      }
      await expect(client.$queryRawUnsafe('SELECT * FROM "Half"')).rejects.toThrow()
      expect(await client.company.count()).toBe(1)

      await current().database.close()

      // Without the broken one the database is as good as before; with a corrected one it goes on.
      expect(await applyMigrations(current().url, places)).toEqual([])
      addMigration(BROKEN, 'CREATE TABLE "Whole" ("id" INTEGER);\n')
      expect(await applyMigrations(current().url, copy)).toEqual([BROKEN])
      expect(await client.$queryRawUnsafe('SELECT * FROM "Whole"')).toEqual([])
    })

    if (kind === 'sqlite') {
      it('say so when another program has the file open, and mind it only if due', async () => {
        await current().database.client.company.count()
        expect(await applyMigrations(current().url, places)).toEqual([])
        addMigration('29990101000000_due', 'CREATE TABLE "Due" ("id" INTEGER);\n')
        await expect(applyMigrations(current().url, copy)).rejects.toThrow('another program has it open')
        await current().database.close()
        expect(await applyMigrations(current().url, copy)).toEqual(['29990101000000_due'])
      })
    }

    it('are refused when one was changed after the database had it, or when a newer version was there', async () => {
      addMigration('29990101000000_newer', 'CREATE TABLE "Newer" ("id" INTEGER);\n')
      await applyMigrations(current().url, copy)
      await expect(applyMigrations(current().url, places)).rejects.toThrow(/does not know: 29990101000000_newer/)
      addMigration('29990101000000_newer', 'CREATE TABLE "Other" ("id" INTEGER);\n')
      await expect(applyMigrations(current().url, copy)).rejects.toThrow(/29990101000000_newer was changed/)
    })

    it('carry companies of earlier versions over: their people without rights, their projects awaiting consent', async () => {
      const { url, database } = current()
      await database.close()
      await wipeDatabase(url)
      for (const place of DATABASE_KINDS.map((each) => path.join(copy.migrationsFolder, each))) {
        const later = readdirSync(place).filter((name) => /^\d/.test(name) && name >= '20261128154837')
        for (const name of later) rmSync(path.join(place, name), { recursive: true })
      }
      await applyMigrations(url, copy)
      const before = openDatabase(url)
      for (const sql of COMPANY_OF_AN_EARLIER_VERSION) await before.client.$executeRawUnsafe(sql)
      await before.close()
      await applyMigrations(url, places)
      const after = openDatabase(url)
      try {
        expect(await after.client.companyPerson.findMany()).toMatchObject([
          { companyId: 'fab', userId: 'oskar', role: 'member', admittedById: null },
        ])
        expect(await after.client.participation.findMany({ orderBy: { projectId: 'asc' } })).toMatchObject([
          { companyId: 'fab', projectId: 'pipit', state: 'asked', matrixSharing: 'not-shared' },
          { companyId: 'fab', projectId: 'skua', state: 'asked', shelfSharing: 'not-shared' },
        ])
        expect(await after.client.company.findUnique({ where: { id: 'fab' } })).toMatchObject({
          scopeKey: 'workspace',
          projectId: null,
          ratesSharing: 'not-shared',
        })
        expect(await after.client.invitation.findMany()).toMatchObject([{ projectId: 'pipit', companyRole: null }])
      } finally {
        await after.close()
      }
    })

    it('can start again from nothing', async () => {
      const { url, database } = current()
      await database.client.company.create({ data: { kind: 'team', name: 'A', nameKey: 'a' } })
      await database.close()
      await wipeDatabase(url)
      expect((await applyMigrations(url, places)).length).toBeGreaterThan(0)
      const again = openDatabase(url)
      expect(await again.client.company.count()).toBe(0)
      await again.close()
    })
  },
  { fresh: 'test' },
)

describe('migrations', () => {
  it('lead to the models as they stand', async () => {
    expect(await hasUnmigratedModels(places)).toBe(false)
  })

  it('are written for both databases from what changed in the models', async () => {
    expect(await createMigration(copy, 'nothing-new', new Date('2999-01-01T00:00:00Z'))).toEqual([])
    writeFileSync(path.join(folder, 'prisma', 'models.prisma'), '\nmodel Extra {\n  id Int @id\n  at DateTime\n}\n', {
      flag: 'a',
    })
    const files = await createMigration(copy, 'add-extra', new Date('2999-01-01T00:00:00Z'))
    expect(files.map((file) => path.relative(copy.migrationsFolder, file).split(path.sep).join('/'))).toEqual([
      'sqlite/29990101000000_add_extra/migration.sql',
      'postgresql/29990101000000_add_extra/migration.sql',
    ])
    expect(await hasUnmigratedModels(copy)).toBe(false)
    const url = `file:${path.join(folder, 'fresh.db')}`
    expect((await applyMigrations(url, copy)).at(-1)).toBe('29990101000000_add_extra')
  })

  it('can be written by hand, and want a proper name', async () => {
    const files = createMigrationByHand(copy, 'guard-signatures', new Date('2999-01-01T00:00:00Z'))
    expect(files).toHaveLength(2)
    await expect(createMigration(copy, 'Add Extra', new Date())).rejects.toThrow('"Add Extra"')
    await expect(createMigration(copy, '../escape', new Date())).rejects.toThrow('expected lower-case words')
  })

  it('exist under the same names for both databases', () => {
    const [sqlite, postgresql] = DATABASE_KINDS.map((kind) =>
      readdirSync(path.join(places.migrationsFolder, kind)).sort(),
    )
    expect(sqlite).toEqual(postgresql)
  })
})

describeOnBothDatabases(
  'a database that had every migration',
  (current, kind) => {
    // What the migrations' SQL does is another matter than the copy of the models that is kept beside it.
    it('has the tables that the models describe', async () => {
      const files = [{ path: 'models.prisma', content: asSchema(kind, readFileSync(places.modelsFile, 'utf8')) }]
      const to = { tag: 'schemaDatamodel' as const, files }
      if (kind === 'sqlite') {
        const from = { tag: 'schemaDatasource' as const, files, configDir: folder }
        const { exitCode } = await withSchemaEngine(current().url, (engine) =>
          engine.diff({ from, to, script: true, exitCode: true, filters: WITHOUT_SEARCH }),
        )
        expect(exitCode).toBe(0)
        return
      }
      // The engine cannot read a PostgreSQL database back through this driver: the tables are made once more, from the models.
      const { stdout } = await withSqlDialect(kind, (engine) =>
        engine.diff({ from: { tag: 'empty' }, to, script: true, exitCode: true, filters: NO_FILTER }),
      )
      const client = new pg.Client(current().url)
      await client.connect()
      try {
        const migrated = await describeTables(client)
        await client.query(`CREATE SCHEMA "fromModels"; SET search_path TO "fromModels"; ${stdout ?? ''}`)
        expect(migrated.length).toBeGreaterThan(500)
        expect(migrated).toEqual(await describeTables(client))
      } finally {
        await client.end()
      }
    })
  },
  { fresh: 'test' },
)

/** SQLite's index of words lies in tables of its own, which the models do not have. */
const WITHOUT_SEARCH = {
  ...NO_FILTER,
  externalTables: [
    '_search_row',
    '_search_text',
    ...['config', 'content', 'data', 'docsize', 'idx'].map((part) => `_search_text_${part}`),
  ],
}

/** Each column and index of the schema in use, apart from the record of migrations. */
async function describeTables(client: pg.Client): Promise<string[]> {
  const columns = await client.query(
    `SELECT concat_ws(' ', table_name, column_name, data_type, is_nullable, column_default) AS line
     FROM information_schema.columns WHERE table_schema = current_schema()`,
  )
  const indexes = await client.query(
    `SELECT replace(indexdef, quote_ident(schemaname) || '.', '') AS line FROM pg_indexes WHERE schemaname = current_schema()`,
  )
  const lines = [...columns.rows, ...indexes.rows].map(({ line }: { line: string }) => line)
  // The indexes of words go by expressions, which the models cannot say.
  return lines.filter((line) => !line.includes('_prisma_migrations') && !line.includes('search_words(')).sort()
}
