// The part of starting that needs the project's own code: run by start-application.mjs, which it answers by message.
import { accessSync, chmodSync, constants, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import {
  ensureSecrets,
  ensureSetupCode,
  getSettings,
  isLoopbackOnly,
  listSettingWarnings,
  now,
  type Settings,
  SettingsError,
  withoutPassword,
} from '@/lib/config'
import { type Database, openDatabase } from '@/lib/data/store/client'
import { CopyError, copyDatabase } from '@/lib/data/store/copy-database'
import {
  applyMigrations,
  isEmptyDatabase,
  MigrationError,
  migrationPlaces,
  wipeDatabase,
} from '@/lib/data/store/migration'
import { inRoot, rootFolder } from './places.mjs'

/** What the start program needs to know. */
export interface Preparation {
  readonly host: string
  readonly port: number
  readonly publicUrl: string
  readonly dataFolder: string
  /** Lines worth reading about what was done. */
  readonly news: readonly string[]
  /** Set where the database is empty and is to be filled; the marker file lies in the data folder until that is done. */
  readonly seed: { readonly markerFile: string; readonly markerText: string } | null
  /** Demo sign-ins that this server will accept. */
  readonly signIns: readonly SignIn[]
  /** Whether nobody has an account yet. */
  readonly isEmpty: boolean
  /** What the first set-up asks for; null once somebody has an account, and where demo data are to come. */
  readonly setupCode: string | null
}

export interface SignIn {
  readonly name: string
  readonly email: string
  readonly password: string
  readonly role: string
}

export type PreparationAnswer = { readonly preparation: Preparation } | { readonly problem: string }

/** Something in the way that the person can remove; the message says how. */
class Obstacle extends Error {}

const SEED_PROGRAM = 'seed/index.ts'
const SIGN_INS = 'seed/sign-ins.ts'
/** In the data folder while the demo data are being made: half of them is not a workspace. */
const SEEDING_MARKER = 'demo-data-unfinished'
/** In the data folder of a workspace that was started with --empty. */
const REAL_WORKSPACE_MARKER = 'real-workspace'

/** The way back from an upgrade: the database as the older version left it. Nothing deletes it. */
async function copyBeforeMigrating(settings: Settings): Promise<string> {
  const folder = path.join(settings.dataFolder, 'before-migration', now().toISOString().replaceAll(/[:.]/g, '-'))
  const database = openDatabase(settings.databaseUrl)
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    return `Before the migration the database was copied to ${await copyDatabase(database, settings.databaseUrl, folder)}`
  } catch (error) {
    if (!(error instanceof CopyError)) throw error
    rmSync(folder, { recursive: true, force: true })
    return `Warning: no copy was made before the migration (${error.message})`
  } finally {
    await database.close()
  }
}

async function prepare(): Promise<Preparation> {
  const settings = getSettings()
  await requireFreePort(settings)
  requireWritableFolder(settings.dataFolder)
  ensureSecrets(settings.dataFolder)

  const news: string[] = listSettingWarnings().map((warning) => `Warning: ${warning}`)
  const inData = (name: string) => path.join(settings.dataFolder, name)
  const seedingMarker = inData(SEEDING_MARKER)
  if (existsSync(seedingMarker) && readFileSync(seedingMarker, 'utf8') === settings.databaseUrl) {
    news.push('The demo data were only half made last time; starting them over')
    await wipeDatabase(settings.databaseUrl)
  }
  const applied = await applyMigrations(settings.databaseUrl, migrationPlaces(rootFolder), async () => {
    news.push(await copyBeforeMigrating(settings))
  })
  const place = describePlace(settings)
  if (applied.length > 0)
    news.push(`Database ${place}: ${applied.length} ${applied.length === 1 ? 'migration' : 'migrations'} applied`)

  const database = openDatabase(settings.databaseUrl)
  try {
    const isEmpty = await isEmptyDatabase(database)
    if (settings.startsEmpty && isEmpty)
      writeFileSync(inData(REAL_WORKSPACE_MARKER), 'Started with --empty: no demo data are made here.\n', {
        mode: 0o600,
      })
    if (settings.startsEmpty && !isEmpty) news.push(`--empty has no effect: the database ${place} already holds data`)
    const isWanted =
      settings.wantsDemoData && !existsSync(inData(REAL_WORKSPACE_MARKER)) && existsSync(inRoot(SEED_PROGRAM))
    // Everybody can read the demo passwords.
    if (isEmpty && isWanted && !isLoopbackOnly(settings)) {
      news.push('No demo data: they are made only where other machines cannot reach the server')
    }
    const isSeedDue = isEmpty && isWanted && isLoopbackOnly(settings)
    return {
      host: settings.host,
      port: settings.port,
      publicUrl: settings.publicUrl,
      dataFolder: settings.dataFolder,
      news,
      seed: isSeedDue ? { markerFile: seedingMarker, markerText: settings.databaseUrl } : null,
      signIns: isLoopbackOnly(settings) ? await listSignIns(database) : [],
      isEmpty,
      setupCode: isEmpty && !isSeedDue ? ensureSetupCode(settings.dataFolder) : null,
    }
  } finally {
    await database.close()
  }
}

async function requireFreePort({ host, port }: Settings): Promise<void> {
  const server = createServer()
  const error = await new Promise<NodeJS.ErrnoException | null>((resolve) => {
    server.once('error', resolve)
    server.listen(port, host, () => server.close(() => resolve(null)))
  })
  if (error === null) return
  const reasons: Readonly<Record<string, string>> = {
    EADDRINUSE: `Port ${port} on ${host} is in use; stop what listens there or choose another: npm start -- --port ${port === 65535 ? 3001 : port + 1}`,
    EACCES: `Port ${port} on ${host} may not be used by this account; choose one above 1023: npm start -- --port 3000`,
    EADDRNOTAVAIL: `HOST is "${host}"; expected an address of this machine, such as 127.0.0.1.`,
    ENOTFOUND: `HOST is "${host}"; expected an address of this machine, such as 127.0.0.1.`,
  }
  throw new Obstacle(reasons[error.code ?? ''] ?? `Cannot listen on ${host}, port ${port}: ${error.message}`)
}

function requireWritableFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    // Also one that was there before: what is in it is nobody's else to read.
    chmodSync(folder, 0o700)
    accessSync(folder, constants.W_OK | constants.X_OK)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    throw new Obstacle(
      `The data folder ${folder} cannot be written to (${reason}); correct its rights or name another in BENDWORTHY_DATA_FOLDER.`,
    )
  }
}

/** A path relative to the project where that is shorter to read. */
function describePlace({ databaseKind, databaseUrl }: Settings): string {
  if (databaseKind === 'postgresql') return withoutPassword(databaseUrl)
  const file = databaseUrl.slice('file:'.length)
  const relative = path.relative(rootFolder, file)
  return relative.startsWith('..') ? file : relative
}

/** The published sign-ins whose accounts this database has. */
async function listSignIns({ client }: Database): Promise<SignIn[]> {
  if (!existsSync(inRoot(SIGN_INS))) return []
  const { signIns } = (await import(pathToFileURL(inRoot(SIGN_INS)).href)) as { signIns: readonly SignIn[] }
  const demoUsers = await client.user.findMany({ where: { isDemo: true, disabledAt: null }, select: { email: true } })
  const emails = new Set(demoUsers.map(({ email }) => email))
  return signIns.filter(({ email }) => emails.has(email))
}

function answer(message: PreparationAnswer): void {
  process.send?.(message)
}

try {
  answer({ preparation: await prepare() })
} catch (error) {
  const isExpected = error instanceof Obstacle || error instanceof SettingsError || error instanceof MigrationError
  answer({ problem: isExpected ? error.message : String(error instanceof Error ? error.stack : error) })
} finally {
  process.disconnect?.()
}
