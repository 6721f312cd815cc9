import { execFile } from 'node:child_process'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, type Locator, type Page } from '@playwright/test'

/** What a person does with the application's controls, found by the names that a screen reader gives them. */

/** One of several round or square choices under a heading. */
export async function choose(within: Page | Locator, group: string | RegExp, label: string | RegExp): Promise<void> {
  const radio = within.getByRole('radiogroup', { name: group }).getByRole('radio', { name: label, exact: true })
  // The platform's own control lies invisibly under the drawn one; its label takes the click.
  await radio.locator('xpath=ancestor::label').click()
  await expect(radio).toBeChecked()
}

/** An entry of a list that opens. */
export async function pick(within: Page | Locator, label: string | RegExp, option: string | RegExp): Promise<void> {
  await within.getByRole('button', { name: label }).click()
  const page = 'keyboard' in within ? within : within.page()
  await page.getByRole('option', { name: option }).click()
}

/** Saves the design through the page and waits until it is stored. */
export async function saveDesign(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.locator('.save-state')).toHaveText(/^Saved, version \d+$/)
}

/** Opens an item of the checklist and records an answer. */
export async function answerItem(page: Page, itemId: string, state: string, reason: string): Promise<void> {
  const item = page.locator(`#item-${itemId}`)
  const line = item.getByRole('button', { expanded: false }).first()
  // The address opens the item once the page listens; a click before that would close it again, so it comes second.
  await expect(async () => {
    const form = item.getByRole('radiogroup', { name: 'This item is' })
    await form.waitFor({ timeout: 5_000 }).catch(() => line.click({ timeout: 5_000 }))
    await expect(form).toBeVisible({ timeout: 5_000 })
  }).toPass({ timeout: 60_000 })
  await choose(item, 'This item is', state)
  await item.getByLabel('Reason or remark').fill(reason)
  await item.getByRole('button', { name: 'Record the answer' }).click()
  await expect(item.locator('.answer-record')).toContainText(reason)
}

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..')

/** Runs one of the project's commands as a person would. */
export function runCommand(script: string, ...args: string[]): Promise<{ status: number; output: string }> {
  return new Promise((resolve) => {
    execFile('npm', ['run', '--silent', script, '--', ...args], { cwd: ROOT }, (error, stdout, stderr) => {
      resolve({ status: error === null ? 0 : Number(error.code ?? 1), output: stdout + stderr })
    })
  })
}
