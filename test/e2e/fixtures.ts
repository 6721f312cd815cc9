import { type Browser, type BrowserContext, test as base, expect, type Page } from '@playwright/test'
import { CAST } from '@/seed/sign-ins'
import { type Backstage, openBackstage } from './backstage'

export { expect, type Page }

export type PersonName = keyof typeof CAST

/** The part of the environment that playwright.config.ts sets for its workers. */
function getSetting(name: 'BENDWORTHY_E2E_ADDRESS' | 'BENDWORTHY_E2E_DATA'): string {
  const value = process.env[name]
  if (value === undefined) throw new Error(`${name} is not set: run the tests with test/e2e/playwright.config.ts`)
  return value
}

/** Watches everything that a browser complains about in one test. */
export class ConsoleWatch {
  readonly #lines: string[] = []
  readonly #expected: RegExp[] = []

  watch(context: BrowserContext): void {
    context.on('console', (message) => {
      if (message.type() !== 'error' && message.type() !== 'warning') return
      this.#lines.push(`${message.text()} (${message.location().url})`)
    })
    context.on('weberror', (error) => this.#lines.push(String(error.error())))
  }

  /** A line that this test provokes, such as the browser's own note of a refused request. */
  expect(pattern: RegExp): void {
    this.#expected.push(pattern)
  }

  listStray(): string[] {
    return this.#lines.filter((line) => !this.#expected.some((pattern) => pattern.test(line)))
  }
}

interface TestFixtures {
  readonly consoleWatch: ConsoleWatch
  /** A page in a browser of its own, in which this demo person (or this address) is signed in. */
  readonly openAs: (person: PersonName | { readonly email: string }) => Promise<Page>
  /** A page in a browser of its own, in which nobody is signed in. */
  readonly openAsVisitor: () => Promise<Page>
}

interface WorkerFixtures {
  readonly backstage: Backstage
  readonly demo: Awaited<ReturnType<typeof findDemo>>
}

const findDemo = (backstage: Backstage) => backstage.act('findDemo')

export const test = base.extend<TestFixtures, WorkerFixtures>({
  backstage: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures that are asked for from this pattern.
    async ({}, use) => {
      const backstage = openBackstage(getSetting('BENDWORTHY_E2E_DATA'), getSetting('BENDWORTHY_E2E_ADDRESS'))
      await use(backstage)
      backstage.close()
    },
    { scope: 'worker' },
  ],
  demo: [async ({ backstage }, use) => use(await findDemo(backstage)), { scope: 'worker' }],
  consoleWatch: [
    async ({ context }, use) => {
      const watch = new ConsoleWatch()
      watch.watch(context)
      await use(watch)
      expect(watch.listStray(), 'lines in the browser console').toEqual([])
    },
    { auto: true },
  ],
  openAsVisitor: async ({ browser, consoleWatch }, use) => {
    const opened: BrowserContext[] = []
    await use(async () => {
      const context = await openContext(browser, consoleWatch)
      opened.push(context)
      return context.newPage()
    })
    for (const context of opened) await context.close()
  },
  openAs: async ({ browser, backstage, consoleWatch }, use) => {
    const opened: BrowserContext[] = []
    await use(async (person) => {
      const context = await openContext(browser, consoleWatch)
      opened.push(context)
      await signIn(context, backstage, typeof person === 'string' ? CAST[person].email : person.email)
      return context.newPage()
    })
    for (const context of opened) await context.close()
  },
})

function openContext(browser: Browser, watch: ConsoleWatch): Promise<BrowserContext> {
  const opening = browser.newContext({ baseURL: getSetting('BENDWORTHY_E2E_ADDRESS'), locale: 'en-GB' })
  return opening.then((context) => {
    watch.watch(context)
    return context
  })
}

/** Signs in without the form. */
export async function signIn(context: BrowserContext, backstage: Backstage, email: string): Promise<void> {
  const value = await backstage.act('makeSession', { email })
  const url = getSetting('BENDWORTHY_E2E_ADDRESS')
  await context.addCookies([{ name: 'bendworthy-session', value, url, httpOnly: true, sameSite: 'Lax' }])
}
