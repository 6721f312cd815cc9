import { expect, type Page } from '@playwright/test'
import type { Screen } from './screens'

/** Longest that a search on the server may take on a machine that does other things too, ms. */
const LONGEST_WAIT = 120_000

/** Goes to a screen, and waits until it shows what it is looked at for. */
export async function arrive(page: Page, { path, choice, until }: Screen): Promise<void> {
  await page.goto(path)
  await page.waitForLoadState('networkidle')
  if (choice !== undefined) {
    await page
      .getByRole('radio', { name: choice, exact: true })
      .locator('xpath=ancestor-or-self::label | self::button')
      .first()
      .click()
  }
  if (until !== undefined)
    await expect(page.getByRole('button', { name: until })).toBeVisible({ timeout: LONGEST_WAIT })
}
