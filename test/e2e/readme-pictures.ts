import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { test } from './fixtures'
import { listScreens } from './screens'

const FOLDER = fileURLToPath(new URL('../../docs/pictures', import.meta.url))

/** Pictures of the README: screen, height, and the heading that stands at the top; null for the top of the page. */
const PICTURES = [
  { name: 'construction', screen: 'skua-b-construction', height: 900, heading: null },
  { name: 'results', screen: 'skua-a-overview', height: 900, heading: null },
  { name: 'bends', screen: 'skua-b-bends', height: 1000, heading: null },
  { name: 'plan', screen: 'skua-b-plan', height: 900, heading: 'Plan' },
  { name: 'artwork', screen: 'pipit-artwork', height: 900, heading: 'Artwork' },
  { name: 'checklist', screen: 'skua-b-checklist', height: 900, heading: null },
  { name: 'fabrication', screen: 'skua-b-fabrication', height: 860, heading: null },
  { name: 'panels', screen: 'skua-b-panels', height: 860, heading: null },
  { name: 'drawing', screen: 'skua-b-drawing', height: 860, heading: 'Drawing sheets' },
  { name: 'sign-off', screen: 'skua-b-sign-off', height: 900, heading: null },
] as const

/** Takes the pictures of the README again: npm run pictures. Look at each before it is committed. Not a test. */
test('pictures of the README', async ({ demo, openAs, consoleWatch }) => {
  consoleWatch.expect(/status of 404/)
  const screens = listScreens({ ...demo, invitationPath: '/' })
  for (const { name, screen, height, heading } of PICTURES) {
    const found = screens.find((each) => each.name === screen)
    if (found?.as == null) throw new RangeError(`no screen ${screen}`)
    const page = await openAs(found.as)
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
    await page.setViewportSize({ width: 1280, height })
    await page.goto(found.path)
    await page.waitForLoadState('networkidle')
    if (heading !== null) {
      const place = page.getByRole('heading', { name: heading, exact: true }).first()
      await place.evaluate((element) => window.scrollTo(0, element.getBoundingClientRect().top + window.scrollY - 24))
    }
    await page.screenshot({ path: path.join(FOLDER, `${name}.png`) })
    await page.close()
  }
})
