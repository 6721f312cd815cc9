import AxeBuilder from '@axe-core/playwright'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'
import { DESKTOP, listScreens, PHONE } from './screens'

/** WCAG 2.2 (2023) levels A and AA, as far as a program can decide, and axe's own good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

// Every finding names its screen and element; a recording of all screens would take gigabytes and most of the time.
test.use({ trace: 'off' })

/** Dark changes colours alone: there the rules of contrast are the ones that can come out otherwise. */
const LOOKS = [
  { name: 'light', colorScheme: 'light', size: DESKTOP, rules: 'all' },
  { name: 'dark', colorScheme: 'dark', size: DESKTOP, rules: 'contrast' },
  { name: 'phone', colorScheme: 'light', size: PHONE, rules: 'all' },
  { name: 'dark phone', colorScheme: 'dark', size: PHONE, rules: 'contrast' },
] as const

async function listViolations(page: Page, rules: 'all' | 'contrast'): Promise<string[]> {
  const builder = new AxeBuilder({ page })
  const { violations } = await (rules === 'all'
    ? builder.withTags(TAGS)
    : builder.withRules(['color-contrast', 'link-in-text-block'])
  ).analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary?.replaceAll('\n', ' ')}`),
  )
}

test('no screen breaks a rule of accessibility, in light, in dark and on a phone', async ({
  backstage,
  demo,
  openAs,
  openAsVisitor,
  consoleWatch,
}) => {
  test.setTimeout(2_400_000)
  // The screen for an address that leads nowhere is one of them.
  consoleWatch.expect(/status of 404/)
  const link = await backstage.act('makeInvitation', {
    projectId: demo.skuaId,
    lead: CAST.lead.email,
    daysAgo: 0,
    companyName: 'Marram Flex',
  })
  const pages = new Map<string, Page>()
  const found: string[] = []
  for (const screen of listScreens({ ...demo, invitationPath: new URL(link).pathname })) {
    await test.step(screen.name, async () => {
      const person = screen.as ?? 'visitor'
      const page = pages.get(person) ?? (screen.as === null ? await openAsVisitor() : await openAs(screen.as))
      pages.set(person, page)
      // A new address with a fragment only would not load the page anew.
      await page.goto('about:blank')
      await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
      await page.setViewportSize(DESKTOP)
      await page.goto(screen.path)
      await page.waitForLoadState('networkidle')
      for (const look of LOOKS) {
        await page.emulateMedia({ colorScheme: look.colorScheme, reducedMotion: 'reduce' })
        await page.setViewportSize(look.size)
        for (const violation of await listViolations(page, look.rules))
          found.push(`${screen.name}, ${look.name}: ${violation}`)
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
        if (overflow > 0) found.push(`${screen.name}, ${look.name}: the page is ${overflow} px wider than the window`)
      }
    })
  }
  expect(found).toEqual([])
})
