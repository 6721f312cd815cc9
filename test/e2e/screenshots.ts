import { mkdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { CAST } from '@/seed/sign-ins'
import { arrive } from './arrive'
import { type Page, test } from './fixtures'
import { DESKTOP, listScreens, PHONE } from './screens'

/** SCREENSHOTS_FOLDER names another place; SCREENSHOTS_ONLY parts of the screens' names, with commas between them. */
const FOLDER = process.env.SCREENSHOTS_FOLDER ?? path.join(tmpdir(), 'bendworthy-screenshots')
const ONLY = (process.env.SCREENSHOTS_ONLY ?? '').split(',')

const LOOKS = [
  { name: 'light', colorScheme: 'light', size: DESKTOP },
  { name: 'dark', colorScheme: 'dark', size: DESKTOP },
  { name: 'phone', colorScheme: 'light', size: PHONE },
] as const

test('photographs of every screen', async ({ backstage, demo, openAs, openAsVisitor, consoleWatch }) => {
  consoleWatch.expect(/status of 404/)
  mkdirSync(FOLDER, { recursive: true })
  const order = { projectId: demo.skuaId, lead: CAST.lead.email, daysAgo: 0, companyName: 'Marram Flex' }
  const invitationPath = new URL(await backstage.act('makeInvitation', order)).pathname
  const pages = new Map<string, Page>()
  for (const screen of listScreens({ ...demo, invitationPath })) {
    if (!ONLY.some((part) => screen.name.includes(part))) continue
    const person = screen.as ?? 'visitor'
    const page = pages.get(person) ?? (screen.as === null ? await openAsVisitor() : await openAs(screen.as))
    pages.set(person, page)
    await page.goto('about:blank')
    await page.setViewportSize(DESKTOP)
    await arrive(page, screen)
    for (const look of LOOKS) {
      await page.emulateMedia({ colorScheme: look.colorScheme, reducedMotion: 'reduce' })
      await page.setViewportSize(look.size)
      // Pictures measure their place again after the window's size changed.
      await page.waitForTimeout(300)
      await page.screenshot({ path: path.join(FOLDER, `${screen.name}-${look.name}.png`), fullPage: true })
    }
  }
})
