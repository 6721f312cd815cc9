import { execFile } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { expect, it } from 'vitest'
import { unpackText } from '@/lib/data/records/packed-text'
import { openDatabase } from '@/lib/data/store/client'
import { readStoredResultsDocument } from '@/lib/engine'
import { describeOnBothDatabases, type TestDatabase } from '@/test/setup/databases'
import { auditPipit, auditSkua } from './audit-list'

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

const WEARABLE = 'wearable-on-skin'
const SETTLED = ['meets', 'not-applicable', 'needs-judgment']

/** The bytes of a package, as they lie in the data folder: of this project, for the team or the company whose name begins so. */
async function readPackage({ url }: TestDatabase, folder: string, project: string, of = 'team'): Promise<Uint8Array> {
  const { client, close } = openDatabase(url)
  try {
    const company = await client.company.findFirst({ where: { name: { startsWith: of } } })
    const audience = of === 'team' ? 'team' : (company?.id ?? '')
    const revision = { project: { name: project } }
    const { sha256 } = await client.package.findFirstOrThrow({ where: { audience, revision } })
    const found = readdirSync(folder, { recursive: true, encoding: 'utf8' }).find(
      (name) => path.basename(name) === sha256,
    )
    if (found === undefined) throw new Error(`no file ${sha256}`)
    return new Uint8Array(readFileSync(path.join(folder, found)))
  } finally {
    await close()
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
      auditPipit(await readPackage(current(), folder, 'Pipit'))
      const released = await run('test/integration/data/release-skua-program.ts', current(), folder)
      expect(released, released.output).toMatchObject({ status: 0 })
      auditSkua({
        team: await readPackage(current(), folder, 'Skua'),
        brackenfold: await readPackage(current(), folder, 'Skua', 'Brackenfold'),
        ostrel: await readPackage(current(), folder, 'Skua', 'Ostrel'),
      })

      const tampered = Math.floor(count / 2)
      const { client, close } = openDatabase(current().url)
      try {
        const { profilesJson, answers, evaluations } = await client.revision.findFirstOrThrow({
          where: { label: 'A', project: { name: 'Pipit' } },
          include: { answers: true, evaluations: { orderBy: { ordinal: 'desc' }, take: 1 } },
        })
        const recorded = readStoredResultsDocument(JSON.parse(unpackText(evaluations[0]?.resultsJson ?? 'null')))
        expect(recorded.items.filter(({ verdict }) => !SETTLED.includes(verdict))).toEqual([])
        expect(JSON.parse(profilesJson)).toEqual([WEARABLE])
        const answered = answers.map(({ itemId }) => itemId)
        const forJudgment = recorded.items.filter(({ verdict }) => verdict === 'needs-judgment')
        expect(forJudgment.map(({ itemId }) => itemId).filter((id) => !answered.includes(id))).toEqual([])
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
