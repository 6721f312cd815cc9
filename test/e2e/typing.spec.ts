import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'

/*
 * What follows from a key is drawn after the key. On a slow machine that is long after: nothing that is done meanwhile may go by what the
 * screen still shows.
 */

const SLOWER_TIMES = 12

async function slowDown(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER_TIMES })
}

test('keys that come faster than the screen is drawn are saved, taken back and shown as typed', async ({
  openAs,
  backstage,
}) => {
  const lead = CAST.lead.email
  const projectId = await backstage.act('makeProject', { name: 'Fast keys', lead })
  const order = { projectId, by: lead, design: 'skua-rev-a' } as const
  const revisionId = await backstage.act('makeRevision', { ...order, label: 'A' })
  const read = async () => (await backstage.act('readRevision', { revisionId, as: lead })).design
  const page = await openAs('lead')
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/construction`)
  const layers = page.getByRole('table', { name: /^Layers|^From the top face/ }).first()
  const name = layers.getByLabel(/^Name, /).first()
  const thickness = layers.getByLabel(/^Thickness, /).first()
  const state = page.locator('.save-state')
  await expect(state).toHaveText(/^Saved, version \d+$/)
  const [before] = (await read()).construction.layers
  const widthBefore = await thickness.inputValue()
  await slowDown(page)

  // Saved from the keyboard, right behind the last key.
  await name.fill('')
  await name.pressSequentially('Upper film')
  await page.keyboard.press('Control+s')
  await expect(state).toHaveText(/^Saved, version \d+$/)
  await expect(name).toHaveValue('Upper film')
  expect((await read()).construction.layers[0]?.name).toBe('Upper film')

  // A number typed and taken back to what it was is no change, and no key in between is left over.
  await thickness.focus()
  await page.keyboard.press('End')
  await page.keyboard.type('75')
  await page.keyboard.press('Backspace')
  await page.keyboard.press('Backspace')
  await expect(thickness).toHaveValue(widthBefore)
  await expect(state).toHaveText(/^Saved, version \d+$/)
  await page.keyboard.press('Control+s')
  await expect(state).toHaveText(/^Saved, version \d+$/)
  expect((await read()).construction.layers[0]?.thicknessUm).toBe(before?.thicknessUm)

  // Taken back from the keyboard while the screen has not come to it.
  await name.focus()
  await page.keyboard.press('End')
  await page.keyboard.type(' and more')
  await page.keyboard.press('Control+z')
  await expect(name).toHaveValue('Upper film')

  // Pressed right behind the last key: the button goes by what was typed.
  await name.focus()
  await page.keyboard.press('End')
  await page.keyboard.type(', 25 um')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(state).toHaveText(/^Saved, version \d+$/)
  await expect(name).toHaveValue('Upper film, 25 um')
  expect((await read()).construction.layers[0]?.name).toBe('Upper film, 25 um')

  // What cannot be read keeps its reason and its text; the rest of the row goes on.
  await thickness.fill('twelve')
  await expect(page.getByText('1 entry needs correction').first()).toBeVisible()
  await name.focus()
  await expect(thickness).toHaveValue('twelve')
  await thickness.fill(widthBefore)
  await expect(page.getByText('1 entry needs correction')).toHaveCount(0)

  // Results follow: the thread that evaluates has read the last key.
  await thickness.fill('-1')
  await expect(page.getByText('Errors to fix')).toBeVisible()
  await expect(page.locator('.draft[data-outdated]')).toBeVisible()
  await thickness.fill(widthBefore)
  await expect(page.locator('.draft[data-outdated]')).toHaveCount(0)
})
