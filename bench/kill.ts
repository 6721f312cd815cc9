// npm run bench -- kill [rounds] [postgresql://… of an empty database]: a process that writes is killed without a word, again and again; nothing that it was told is
// stored may be missing, and the database must be whole. Its short form runs with the tests (test/integration/data-layer/durability.test.ts).
import { fork } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { openDatabase } from '@/lib/data/store/client'
import { applyMigrations, migrationPlaces } from '@/lib/data/store/migration'

const ROOT = fileURLToPath(new URL('..', import.meta.url))
const PROGRAM = fileURLToPath(new URL('../test/integration/data-layer/inserting-program.ts', import.meta.url))
const ROUNDS = 50

/** Rows that were acknowledged before the process was killed after some of them: another number each round. */
function writeUntilKilled(url: string, killAfter: number): Promise<readonly string[]> {
  return new Promise((resolve, reject) => {
    const program = fork(PROGRAM, [url], { execArgv: ['--conditions=react-server', '--import', 'tsx'] })
    const acknowledged: string[] = []
    program.on('error', reject)
    program.on('message', (name) => {
      acknowledged.push(String(name))
      if (acknowledged.length === killAfter) program.kill('SIGKILL')
    })
    program.on('exit', () => resolve(acknowledged))
  })
}

async function measure(name: string, url: string, rounds: number): Promise<void> {
  await applyMigrations(url, migrationPlaces(ROOT))
  let acknowledged = 0
  let lost = 0
  for (let round = 1; round <= rounds; round += 1) {
    const names = await writeUntilKilled(url, 1 + ((round * 37) % 200))
    const { kind, client, close } = openDatabase(url)
    try {
      const rows = await client.resetRequest.findMany({ select: { email: true } })
      const stored = new Set(rows.map(({ email }) => email))
      acknowledged += names.length
      lost += names.filter((email) => !stored.has(email)).length
      await client.resetRequest.deleteMany()
      if (kind === 'sqlite') requireWhole(await client.$queryRawUnsafe('PRAGMA integrity_check'))
    } finally {
      await close()
    }
  }
  process.stdout.write(`${name}: killed ${rounds} times, ${acknowledged} rows acknowledged, ${lost} lost\n`)
  if (lost > 0) process.exitCode = 1
}

function requireWhole(rows: unknown): void {
  if (JSON.stringify(rows) !== JSON.stringify([{ integrity_check: 'ok' }])) {
    throw new Error(`the database is not whole: ${JSON.stringify(rows)}`)
  }
}

const rounds = Number(process.argv[2] ?? ROUNDS)
const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-kill-'))
try {
  await measure('SQLite', `file:${path.join(folder, 'bendworthy.db')}`, rounds)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
const postgres = process.argv[3]
if (postgres !== undefined) await measure('PostgreSQL', postgres, rounds)
