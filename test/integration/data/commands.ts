import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import type { TestDatabase } from '@/test/setup/databases'

interface Ended {
  readonly status: number
  readonly output: string
}

/** A command as the operator of the installation types it, in a process of its own, on this database. */
async function runCommand({ url }: TestDatabase, script: string, typed: readonly string[] = []): Promise<Ended> {
  const order = ['run', '--silent', script, '--', ...typed]
  try {
    const { stdout, stderr } = await promisify(execFile)('npm', order, { env: { ...process.env, DATABASE_URL: url } })
    return { status: 0, output: stdout + stderr }
  } catch (error) {
    const failed = error as { code: number; stdout: string; stderr: string }
    return { status: failed.code, output: failed.stdout + failed.stderr }
  }
}

export const runTrailCheck = (database: TestDatabase) => runCommand(database, 'trail:check')
export const runAccountRecover = (database: TestDatabase, typed: readonly string[]) =>
  runCommand(database, 'account:recover', typed)
