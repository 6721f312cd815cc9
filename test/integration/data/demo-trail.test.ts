import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { expect, it } from 'vitest'
import { openDatabase } from '@/lib/data/store/client'
import { describeOnBothDatabases, type TestDatabase } from '@/test/setup/databases'

/** A program of the project on this database, in a data folder of its own. */
async function run(file: string, { url }: TestDatabase, folder: string): Promise<{ status: number; output: string }> {
  const env = { ...process.env, DATABASE_URL: url, BENDWORTHY_DATA_FOLDER: folder }
  try {
    const program = ['--conditions=react-server', '--import', 'tsx', file]
    const { stdout, stderr } = await promisify(execFile)(process.execPath, program, { env })
    return { status: 0, output: stdout + stderr }
  } catch (error) {
    const failed = error as { code: number; stdout: string; stderr: string }
    return { status: failed.code, output: failed.stdout + failed.stderr }
  }
}

describeOnBothDatabases('the trail of the demo scenario', (current, kind) => {
  it('fits when it has been played, and the command names the record that was changed afterwards', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-demo-'))
    try {
      const played = await run('seed/index.ts', current(), folder)
      expect(played, played.output).toMatchObject({ status: 0 })
      const whole = await run('lib/cli/trail-check.ts', current(), folder)
      expect(whole, whole.output).toMatchObject({ status: 0 })
      const count = Number(/trail: (\d+) records fit/.exec(whole.output)?.[1])
      expect(count).toBeGreaterThan(100)

      const tampered = Math.floor(count / 2)
      const { client, close } = openDatabase(current().url)
      try {
        const change = `UPDATE "TrailRecord" SET "actorName" = 'Nobody' WHERE "sequence" = ${tampered}`
        await expect(client.$executeRawUnsafe(change), 'the database itself refuses it').rejects.toThrow()
        await client.$executeRawUnsafe(
          kind === 'sqlite'
            ? 'DROP TRIGGER "TrailRecord_refuse_update"'
            : 'ALTER TABLE "TrailRecord" DISABLE TRIGGER ALL',
        )
        await client.$executeRawUnsafe(change)
      } finally {
        await close()
      }
      const checked = await run('lib/cli/trail-check.ts', current(), folder)
      expect(checked.output).toContain(`does not match at record ${tampered}\n`)
      expect(checked.status).toBe(1)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  }, 600_000)
})
