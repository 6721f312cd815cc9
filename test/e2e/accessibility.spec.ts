import AxeBuilder from '@axe-core/playwright'
import { CAST } from '@/seed/sign-ins'
import { arrive } from './arrive'
import type { Backstage } from './backstage'
import { expect, type Page, test } from './fixtures'
import { DESKTOP, listScreens, NO_SCENE, PHONE } from './screens'

/** WCAG 2.2 (2023) levels A and AA, as far as a program can decide, and axe's own good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

type RunOptions = Parameters<AxeBuilder['options']>[0]
type Results = Awaited<ReturnType<AxeBuilder['analyze']>>
interface WithAxe {
  readonly axe: { readonly run: (context: Document, options: RunOptions) => Promise<Results> }
}

// Each screen is looked at by itself, so the workers share them.
test.describe.configure({ mode: 'parallel' })

// Every finding names its screen and element; a recording of all screens would take gigabytes and most of the time.
test.use({ trace: 'off' })

/** Dark changes colours alone: there the rules of contrast are the ones that can come out otherwise. */
const LOOKS = [
  { name: 'light', colorScheme: 'light', size: DESKTOP, rules: 'all' },
  { name: 'dark', colorScheme: 'dark', size: DESKTOP, rules: 'contrast' },
  { name: 'phone', colorScheme: 'light', size: PHONE, rules: 'all' },
  { name: 'dark phone', colorScheme: 'dark', size: PHONE, rules: 'contrast' },
] as const

/** The same rules run; only what passes is not described element by element. */
const optionsOf = (rules: 'all' | 'contrast'): RunOptions => ({
  runOnly:
    rules === 'all'
      ? { type: 'tag', values: TAGS }
      : { type: 'rule', values: ['color-contrast', 'link-in-text-block'] },
  resultTypes: ['violations'],
})

/**
 * The first look brings the rules into the page, where they stay for the others. In legacy mode, since otherwise the whole tree goes to a
 * second page and back, which takes ten times as long; it is for frames of other origins, and there are none.
 */
async function listViolations(page: Page, rules: 'all' | 'contrast'): Promise<string[]> {
  const options = optionsOf(rules)
  const isThere = await page.evaluate(() => 'axe' in window)
  const { violations } = isThere
    ? await page.evaluate((given) => (window as unknown as WithAxe).axe.run(document, given), options)
    : await new AxeBuilder({ page }).setLegacyMode().options(options).analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary?.replaceAll('\n', ' ')}`),
  )
}

/** What measures itself (tables that scroll, plots) draws again after the window has changed: the browser is idle once it has. A folded view is never idle for long. */
const settle = (page: Page): Promise<void> =>
  page.evaluate(
    (timeout) =>
      new Promise((done) => requestIdleCallback(() => requestIdleCallback(() => done(), { timeout }), { timeout })),
    LONGEST_SETTLE_MS,
  )

const LONGEST_SETTLE_MS = 1000

async function listFindings(page: Page): Promise<string[]> {
  const found: string[] = []
  for (const look of LOOKS) {
    await page.emulateMedia({ colorScheme: look.colorScheme, reducedMotion: 'reduce' })
    await page.setViewportSize(look.size)
    await settle(page)
    for (const violation of await listViolations(page, look.rules)) found.push(`${look.name}: ${violation}`)
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    if (overflow > 0) found.push(`${look.name}: the page is ${overflow} px wider than the window`)
  }
  return found
}

// One screen alone: npm run test:e2e -- accessibility -g "own-shelf"
for (const { name } of listScreens(NO_SCENE)) {
  test(`${name} breaks no rule of accessibility, in light, in dark and on a phone`, async ({
    backstage,
    demo,
    openAs,
    openAsVisitor,
    openToLook,
    consoleWatch,
  }) => {
    // The screen for an address that leads nowhere is one of them.
    if (name === 'not-found') consoleWatch.expect(/status of 404/)
    const invitationPath = name === 'invitation' ? await makeInvitationPath(backstage, demo.skuaId) : ''
    const screen = listScreens({ ...demo, invitationPath }).find((each) => each.name === name)
    if (screen === undefined) throw new Error(`there is no screen ${name} in the demo's scene`)
    // A choice that is made there may be remembered: the next screen must not begin with it.
    const open = screen.choice === undefined ? openToLook : openAs
    const page = screen.as === null ? await openAsVisitor() : await open(screen.as)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
    await page.setViewportSize(DESKTOP)
    await arrive(page, screen)
    expect(await listFindings(page)).toEqual([])
  })
}

async function makeInvitationPath(backstage: Backstage, projectId: string): Promise<string> {
  const lead = CAST.lead.email
  const link = await backstage.act('makeInvitation', { projectId, lead, daysAgo: 0, companyName: 'Marram Flex' })
  return new URL(link).pathname
}
