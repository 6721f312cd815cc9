import path from 'node:path'
import {
  type Browser,
  type BrowserContext,
  test as base,
  type ConsoleMessage,
  expect,
  type Page,
  type WebError,
} from '@playwright/test'
import { CAST } from '@/seed/sign-ins'
import { type Backstage, openBackstage } from './backstage'
import { type ServerUnderTest, startServerUnderTest } from './server-under-test'

export { expect, type Page }

export type PersonName = keyof typeof CAST

/** Watches everything that a browser complains about in one test. */
export class ConsoleWatch {
  readonly #lines: string[] = []
  /** The browser's own remark on pictures that are taken of what a graphics card would draw. */
  readonly #expected: RegExp[] = [/GPU stall due to ReadPixels/]

  readonly #hear = (message: ConsoleMessage): void => {
    if (message.type() !== 'error' && message.type() !== 'warning') return
    this.#lines.push(`${message.text()} (${message.location().url})`)
  }

  readonly #hearError = (error: WebError): void => {
    this.#lines.push(String(error.error()))
  }

  watch(context: BrowserContext): void {
    context.on('console', this.#hear)
    context.on('weberror', this.#hearError)
  }

  /** A browser that several tests use is watched by each in its turn. */
  leave(context: BrowserContext): void {
    context.off('console', this.#hear)
    context.off('weberror', this.#hearError)
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
  /** A page in the browser in which this person looks at one screen after the other: what it has fetched and compiled stays. For tests that only look. */
  readonly openToLook: (person: PersonName) => Promise<Page>
}

interface WorkerFixtures {
  /** By person, kept as long as the worker. */
  readonly lookers: Map<PersonName, BrowserContext>
  /** Of this worker alone. */
  readonly server: ServerUnderTest
  readonly backstage: Backstage
  readonly demo: Awaited<ReturnType<typeof findDemo>>
}

const findDemo = (backstage: Backstage) => backstage.act('findDemo')

export const test = base.extend<TestFixtures, WorkerFixtures>({
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures that are asked for from this pattern.
    async ({}, use, { project, workerIndex }) => {
      const server = await startServerUnderTest(path.join(project.outputDir, `server-${workerIndex}.log`))
      await use(server)
      await server.stop()
    },
    { scope: 'worker', timeout: 300_000 },
  ],
  baseURL: ({ server }, use) => use(server.address),
  backstage: [
    async ({ server }, use) => {
      const backstage = openBackstage(server.dataFolder, server.address)
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
  openAsVisitor: async ({ browser, consoleWatch, server }, use) => {
    const opened: BrowserContext[] = []
    await use(async () => {
      const context = await openContext(browser, server, consoleWatch)
      opened.push(context)
      return context.newPage()
    })
    for (const context of opened) await context.close()
  },
  lookers: [
    // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the fixtures that are asked for from this pattern.
    async ({}, use) => {
      const lookers = new Map<PersonName, BrowserContext>()
      await use(lookers)
      for (const context of lookers.values()) await context.close()
    },
    { scope: 'worker' },
  ],
  openToLook: async ({ browser, backstage, consoleWatch, lookers, server }, use) => {
    const opened: { readonly page: Page; readonly context: BrowserContext }[] = []
    await use(async (person) => {
      const known = lookers.get(person)
      const context = known ?? (await openContext(browser, server, consoleWatch))
      if (known === undefined) {
        await signIn(context, server, backstage, CAST[person].email)
        lookers.set(person, context)
      } else consoleWatch.watch(context)
      const page = await context.newPage()
      opened.push({ page, context })
      return page
    })
    for (const { page, context } of opened) {
      await page.close()
      consoleWatch.leave(context)
    }
  },
  openAs: async ({ browser, backstage, consoleWatch, server }, use) => {
    const opened: BrowserContext[] = []
    await use(async (person) => {
      const context = await openContext(browser, server, consoleWatch)
      opened.push(context)
      await signIn(context, server, backstage, typeof person === 'string' ? CAST[person].email : person.email)
      return context.newPage()
    })
    for (const context of opened) await context.close()
  },
})

function openContext(browser: Browser, { address }: ServerUnderTest, watch: ConsoleWatch): Promise<BrowserContext> {
  const opening = browser.newContext({ baseURL: address, locale: 'en-GB' })
  return opening.then((context) => {
    watch.watch(context)
    return context
  })
}

/** Signs in without the form. */
export async function signIn(
  context: BrowserContext,
  { address: url }: ServerUnderTest,
  backstage: Backstage,
  email: string,
): Promise<void> {
  const value = await backstage.act('makeSession', { email })
  await context.addCookies([{ name: 'bendworthy-session', value, url, httpOnly: true, sameSite: 'Lax' }])
}
