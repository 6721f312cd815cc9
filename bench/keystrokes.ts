// npm run bench -- keys: what a key costs on the screens where a design is entered, in a browser whose processor is slowed four times.
// Builds the application where it is not built, and has a server and data of its own.
import { type CDPSession, chromium, devices, type Page } from '@playwright/test'
import { findBrowser } from '@/scripts/steps/find-browser.mjs'
import { CAST } from '@/seed/sign-ins'
import { openBackstage } from '@/test/e2e/backstage'
import prepareDemoData from '@/test/e2e/demo-data'
import { startServerUnderTest } from '@/test/e2e/server-under-test'
import { makeLargeDesign } from './large-design'

const SLOWER_TIMES = 4
const KEYS = 12
/** Longer than everything that one key sets off, so that what it costs can be told from the next one's. */
const PAUSE_MS = 1500
const TARGET_MS = { skua: 16, large: 50 } as const

interface KeyCost {
  /** From the key to its being handled and drawn by React: what stands between a person and the letter. */
  readonly handledMs: number
  /** Longest time for which the page could not have heard another key, among all that followed. */
  readonly longestTaskMs: number
  /** All script that the key set off, most of it in pieces between which keys are heard. */
  readonly scriptMs: number
}

interface TraceEvent {
  readonly name: string
  readonly dur?: number
  readonly pid: number
  readonly tid: number
  readonly args?: { readonly name?: string; readonly data?: { readonly type?: string } }
}

/** One key, with a trace of the page's main thread until all that it set off is done. */
async function pressOnce(page: Page, session: CDPSession, key: string): Promise<KeyCost> {
  const events: TraceEvent[] = []
  const collect = ({ value }: { value: object[] }) => {
    events.push(...(value as TraceEvent[]))
  }
  session.on('Tracing.dataCollected', collect)
  const before = await readScriptMs(session)
  await session.send('Tracing.start', { categories: 'toplevel,devtools.timeline,__metadata' })
  await page.keyboard.press(key)
  await page.waitForTimeout(PAUSE_MS)
  const ended = new Promise<void>((resolve) => session.once('Tracing.tracingComplete', () => resolve()))
  await session.send('Tracing.end')
  await ended
  session.off('Tracing.dataCollected', collect)
  const scriptMs = (await readScriptMs(session)) - before
  const dispatched = events.filter(
    ({ name, args }) =>
      name === 'EventDispatch' && ['keydown', 'beforeinput', 'input', 'keyup'].includes(args?.data?.type ?? ''),
  )
  const [{ pid, tid } = { pid: 0, tid: 0 }] = dispatched
  const tasks = events.filter((event) => event.pid === pid && event.tid === tid && /RunTask$/.test(event.name))
  const msOf = ({ dur = 0 }: TraceEvent): number => dur / 1000
  return {
    handledMs: dispatched.reduce((sum, event) => sum + msOf(event), 0),
    longestTaskMs: Math.max(0, ...tasks.map(msOf)),
    scriptMs,
  }
}

async function readScriptMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return 1000 * (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN)
}

function at(list: readonly number[], fraction: number): number {
  const sorted = [...list].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(fraction * sorted.length))] ?? Number.NaN
}

async function measureKeys(page: Page, what: string, label: string | RegExp, targetMs: number): Promise<void> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER_TIMES })
  const field = page.getByLabel(label).first()
  await field.focus()
  await page.keyboard.press('End')
  const costs: KeyCost[] = []
  for (let n = 0; n < KEYS; n += 1) {
    // Typed and taken back in turn, so that the field stays as long as it was.
    const cost = await pressOnce(page, session, n % 2 === 0 ? '1' : 'Backspace')
    // The first two fetch the engine and are compiled.
    if (n >= 2) costs.push(cost)
  }
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  await session.detach()
  const print = (key: keyof KeyCost) => {
    const list = costs.map((cost) => cost[key])
    return `${at(list, 0.5).toFixed(0).padStart(7)} ${at(list, 0.95).toFixed(0).padStart(6)}`
  }
  process.stdout.write(
    `${what.padEnd(44)} ${print('handledMs')} ${print('longestTaskMs')} ${print('scriptMs')}   goal ${targetMs} ms\n`,
  )
}

async function run(): Promise<void> {
  await prepareDemoData()
  const server = await startServerUnderTest('test-results/keystrokes-server.log')
  const backstage = openBackstage(server.dataFolder, server.address)
  const executablePath = await findBrowser()
  if (executablePath === null) throw new Error('No Chromium browser was found; npm run test:e2e brings one.')
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const lead = CAST.lead.email
    const projectId = await backstage.act('makeProject', { name: 'Keys', lead })
    const order = { projectId, by: lead, design: 'skua-rev-a' } as const
    const skua = await backstage.act('makeRevision', { ...order, label: 'A' })
    const large = await backstage.act('makeRevision', { ...order, label: 'B' })
    const designText = JSON.stringify(makeLargeDesign())
    await backstage.act('importDesignText', { revisionId: large, by: lead, designText })
    const context = await browser.newContext({ ...devices['Desktop Chrome'], baseURL: server.address, locale: 'en-GB' })
    const value = await backstage.act('makeSession', { email: lead })
    const cookie = { name: 'bendworthy-session', value, url: server.address, httpOnly: true, sameSite: 'Lax' } as const
    await context.addCookies([cookie])
    const page = await context.newPage()
    process.stdout.write(
      `Milliseconds at a processor ${SLOWER_TIMES} times slower: median and 95th percentile of ${KEYS - 2} keys\n`,
    )
    process.stdout.write(
      `${''.padEnd(44)} ${'handled'.padStart(14)} ${'longest task'.padStart(14)} ${'all script'.padStart(14)}\n`,
    )
    for (const [name, revisionId, targetMs] of [
      ['Skua', skua, TARGET_MS.skua],
      ['40 layers, 100 conductors', large, TARGET_MS.large],
    ] as const) {
      for (const [tab, label] of [
        ['construction', /^Thickness, /],
        ['construction', /^Name, /],
        ['features', /^Name, /],
        ['features', /^Width.*, /],
      ] as const) {
        await page.goto(`/projects/${projectId}/revisions/${revisionId}/${tab}`)
        await page.waitForLoadState('networkidle').catch(() => {})
        const field = tab === 'construction' ? 'layers' : 'conductors'
        await measureKeys(page, `${name}: ${tab}, ${field}, ${String(label).slice(2, 7)}`, label, targetMs)
      }
    }
  } finally {
    await browser.close()
    backstage.close()
    await server.stop()
  }
}

await run()
