import 'server-only'
import { execFile } from 'node:child_process'
import { chmod } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import { makeEnvironment } from '@/lib/config'
import type { Database } from './client'

/** A copy could not be made; the message says why, and what to do. */
export class CopyError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options)
    this.name = 'CopyError'
  }
}

/**
 * A consistent copy of the database in a folder, made while others use it: SQLite's own statement for it, and PostgreSQL's own tool.
 * @returns the file
 * @throws CopyError  where PostgreSQL's tool is not there or fails
 */
export async function copyDatabase({ kind, client }: Database, url: string, folder: string): Promise<string> {
  if (kind === 'sqlite') {
    const file = path.join(/* turbopackIgnore: true */ folder, 'bendworthy.db')
    await client.$executeRaw`VACUUM INTO ${file}`
    await chmod(file, 0o600)
    return file
  }
  const file = path.join(/* turbopackIgnore: true */ folder, 'bendworthy.dump')
  await dumpPostgres(url, file)
  await chmod(file, 0o600)
  return file
}

async function dumpPostgres(url: string, file: string): Promise<void> {
  const address = new URL(url)
  const schema = address.searchParams.get('schema')
  const password = decodeURIComponent(address.password)
  address.search = ''
  // Arguments of a process can be read by others on the machine, its environment cannot.
  address.password = ''
  const chosen = schema === null ? [] : [`--schema=${schema}`]
  try {
    await promisify(execFile)('pg_dump', ['--format=custom', `--file=${file}`, ...chosen, `--dbname=${address.href}`], {
      env: makeEnvironment({ PGPASSWORD: password }),
    })
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    throw new CopyError(
      code === 'ENOENT'
        ? 'pg_dump is not there: install the client programs of PostgreSQL, of the version of the server or newer'
        : `pg_dump failed: ${readReason(error)}`,
      { cause: error },
    )
  }
}

/** What the program said, in its first line. */
function readReason(error: unknown): string {
  const said = typeof error === 'object' && error !== null && 'stderr' in error ? String(error.stderr) : String(error)
  return said.trim().split('\n')[0] ?? ''
}
