// npm run bench -- large [--small | --large] [postgresql://… of an empty database]: what pages cost beside the sign-in page, which asks the database next to
// nothing, by 1, 10 and 50 people at once: in a workspace with 100 revisions, and in one with 20,000 revisions and 1,000,000 records in its trail.
// The server is the built one, with data of its own; the person leads every project.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { CAST } from '@/seed/sign-ins'
import { openBackstage } from '@/test/e2e/backstage'
import prepareDemoData, { findDemoData } from '@/test/e2e/demo-data'
import { startOwnServer } from '@/test/e2e/own-server'
import { enlargeWorkspace, type WorkspaceSize } from './large-workspace'

const ROOT = fileURLToPath(new URL('..', import.meta.url))
const CLIENTS = [1, 10, 50]
/** Of one row of the table; slow pages get fewer requests, and at least one per client. */
const SECONDS = 6
const GIVE_UP_SECONDS = 60

const SMALL: WorkspaceSize = { projects: 10, revisions: 100, trailRecords: 5_000, openRevisions: 20 }
const LARGE: WorkspaceSize = { projects: 2_000, revisions: 20_000, trailRecords: 1_000_000, openRevisions: 400 }

interface Timing {
  readonly p50Ms: number
  readonly p95Ms: number
  readonly count: number
  /** Answers that were not 200. */
  readonly failed: number
}

async function load(address: string, headers: Record<string, string>, clients: number): Promise<Timing> {
  const times: number[] = []
  let failed = 0
  const endsAt = performance.now() + SECONDS * 1000
  const ask = async (): Promise<void> => {
    do {
      const start = performance.now()
      try {
        const response = await fetch(address, {
          headers,
          redirect: 'manual',
          signal: AbortSignal.timeout(GIVE_UP_SECONDS * 1000),
        })
        await response.arrayBuffer()
        if (response.status !== 200) failed += 1
      } catch {
        failed += 1
      }
      times.push(performance.now() - start)
    } while (performance.now() < endsAt)
  }
  await Promise.all(Array.from({ length: clients }, ask))
  times.sort((a, b) => a - b)
  const at = (fraction: number): number =>
    times[Math.min(times.length - 1, Math.floor(fraction * times.length))] ?? Number.NaN
  return { p50Ms: at(0.5), p95Ms: at(0.95), count: times.length, failed }
}

function print(...cells: readonly (string | number)[]): void {
  const [head, ...rest] = cells
  process.stdout.write(`${String(head).padEnd(34)}${rest.map((cell) => String(cell).padStart(10)).join('')}\n`)
}

/** Median by page and number of clients, for comparing sizes. */
async function measure(
  what: string,
  demoFolder: string,
  size: WorkspaceSize,
  postgres: string | null,
): Promise<ReadonlyMap<string, number>> {
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'bendworthy-load-'))
  cpSync(demoFolder, dataFolder, { recursive: true })
  const environment = { BENDWORTHY_DATA_FOLDER: dataFolder, ...(postgres === null ? {} : { DATABASE_URL: postgres }) }
  if (postgres !== null) {
    const names = Object.entries(environment).map(([name, value]) => `${name}=${value}`)
    const moved = spawnSync('env', [...names, 'npm', 'run', '--silent', 'db:move'], { cwd: ROOT })
    if (moved.status !== 0) throw new Error(String(moved.stderr))
  }
  const begun = performance.now()
  await enlargeWorkspace(postgres ?? `file:${path.join(dataFolder, 'bendworthy.db')}`, size)
  process.stdout.write(
    `\n${what}: ${size.projects} projects, ${size.revisions} revisions (${size.openRevisions} open), ${size.trailRecords} trail records; made in ${((performance.now() - begun) / 1000).toFixed(0)} s\n`,
  )
  const server = await startOwnServer({ dataFolder, environment, logFile: path.join(dataFolder, 'server.log') })
  const medians = new Map<string, number>()
  try {
    const backstage = openBackstage(dataFolder, server.address, postgres ?? '')
    const session = await backstage.act('makeSession', { email: CAST.lead.email })
    const { skuaId, skuaB } = await backstage.act('findDemo')
    backstage.close()
    const asLead = { cookie: `bendworthy-session=${session}` }
    const revision = `/projects/${skuaId}/revisions/${skuaB}`
    const pages: readonly (readonly [string, string, Record<string, string>])[] = [
      ['sign-in (the bare page)', '/sign-in', {}],
      ['home', '/', asLead],
      ['projects', '/projects', asLead],
      ['search, one hit', '/?find=lot+77', asLead],
      ['search, hits everywhere', '/?find=rolled-annealed', asLead],
      ['questions', '/questions', asLead],
      ['project', `/projects/${skuaId}`, asLead],
      ['revision: checklist', `${revision}/checklist`, asLead],
      ['revision: construction', `${revision}/construction`, asLead],
      ['revision: drawing', `${revision}/drawing`, asLead],
    ]
    const readMemory = async (): Promise<number> => {
      const text = await (await fetch(`${server.address}/api/metrics`)).text()
      return Number(/^process_resident_memory_bytes (\S+)/m.exec(text)?.[1] ?? Number.NaN) / 1e6
    }
    // Standings are worked out once, after an upgrade; then each page once.
    for (const [, page, headers] of pages) await load(server.address + page, headers, 1)
    print('', 'clients', 'p50 ms', 'p95 ms', 'p50 ratio', 'p95 ratio', 'answers', 'failed', 'MB')
    for (const clients of CLIENTS) {
      let bare: Timing | null = null
      for (const [name, page, headers] of pages) {
        const timing = await load(server.address + page, headers, clients)
        bare ??= timing
        medians.set(`${name}, ${clients}`, timing.p50Ms / bare.p50Ms)
        print(
          name,
          clients,
          timing.p50Ms.toFixed(1),
          timing.p95Ms.toFixed(1),
          (timing.p50Ms / bare.p50Ms).toFixed(2),
          (timing.p95Ms / bare.p95Ms).toFixed(2),
          timing.count,
          timing.failed,
          (await readMemory()).toFixed(0),
        )
      }
    }
  } finally {
    await server.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
  return medians
}

async function run(args: readonly string[]): Promise<void> {
  const postgres = args.find((argument) => argument.startsWith('postgres')) ?? null
  await prepareDemoData()
  const demoFolder = findDemoData()
  const database = postgres === null ? 'SQLite' : 'PostgreSQL'
  if (postgres !== null) {
    // One database holds one size.
    await measure(database, demoFolder, args.includes('--small') ? SMALL : LARGE, postgres)
    return
  }
  const small = args.includes('--large') ? new Map<string, number>() : await measure(database, demoFolder, SMALL, null)
  if (args.includes('--small')) return
  const large = await measure(database, demoFolder, LARGE, null)
  process.stdout.write('\nFrom 100 to 20,000 revisions, each as a ratio to its bare page (goal 1.5):\n')
  for (const [name, ratio] of large) print(name, `${(ratio / (small.get(name) ?? Number.NaN)).toFixed(2)} times`)
}

await run(process.argv.slice(2))
