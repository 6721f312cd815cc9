import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import type { TestDatabase } from '@/test/setup/databases'

/** The command, as whoever runs the installation calls it, on this database. */
export async function runTrailCheck({ url }: TestDatabase): Promise<{ status: number; output: string }> {
  const program = ['--conditions=react-server', '--import', 'tsx', 'lib/cli/trail-check.ts']
  try {
    const env = { ...process.env, DATABASE_URL: url }
    const { stdout, stderr } = await promisify(execFile)(process.execPath, program, { env })
    return { status: 0, output: stdout + stderr }
  } catch (error) {
    const failed = error as { code: number; stdout: string; stderr: string }
    return { status: failed.code, output: failed.stdout + failed.stderr }
  }
}
