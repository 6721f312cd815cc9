import { execFile } from 'node:child_process'
import path from 'node:path'
import { promisify } from 'node:util'
import { inject } from 'vitest'
import type { TestDatabase } from '@/test/setup/databases'

interface Ended {
  readonly status: number
  readonly output: string
}

async function run(program: string, args: readonly string[], { url }: TestDatabase): Promise<Ended> {
  try {
    const env = { ...process.env, DATABASE_URL: url }
    const { stdout, stderr } = await promisify(execFile)(program, args, { env })
    return { status: 0, output: stdout + stderr }
  } catch (error) {
    const failed = error as { code: number; stdout: string; stderr: string }
    return { status: failed.code, output: failed.stdout + failed.stderr }
  }
}

/** A command of the installation on this database, in a process of its own. */
const runBundled = (database: TestDatabase, name: string, typed: readonly string[]) =>
  run(
    process.execPath,
    ['--conditions=react-server', path.join(inject('commandsFolder'), `${name}.mjs`), ...typed],
    database,
  )

export const runTrailCheck = (database: TestDatabase, ...typed: readonly string[]) =>
  runBundled(database, 'trail-check', typed)
export const runPackageVerify = (database: TestDatabase, typed: readonly string[]) =>
  runBundled(database, 'package-verify', typed)
export const runAccountRecover = (database: TestDatabase, typed: readonly string[]) =>
  runBundled(database, 'account-recover', typed)
/** As the operator of the installation types it. */
export const typeAccountRecover = (database: TestDatabase, typed: readonly string[]) =>
  run('npm', ['run', '--silent', 'account:recover', '--', ...typed], database)
