import { randomUUID } from 'node:crypto'
import { CAST } from '@/seed/sign-ins'
import { expect, test } from './fixtures'

test('lengths switch between mm, um and mil everywhere, and the choice is kept', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/construction`)
  const cell = page.getByLabel('Thickness, Flexible base film')
  const units = page.getByRole('radiogroup', { name: 'Unit of length' })
  await expect(cell).toHaveValue('25')
  await units.getByRole('radio', { name: 'mil' }).click()
  // 25 um / 25.4 um per mil (exact by definition of the inch, ISO 80000-3:2019).
  expect(Number(await cell.inputValue())).toBeCloseTo(25 / 25.4, 4)
  await units.getByRole('radio', { name: 'mm' }).click()
  await expect(cell).toHaveValue('0.025')
  await page.reload()
  await expect(page.getByLabel('Thickness, Flexible base film')).toHaveValue('0.025')
  await page.getByLabel('Thickness, Flexible base film').fill('1 mil')
  await expect(page.getByLabel('Thickness, Flexible base film')).toHaveValue('1 mil')
  await page.getByLabel('Thickness, Flexible base film').blur()
  await expect(page.getByLabel('Thickness, Flexible base film')).toHaveValue('0.0254')
})

test('light and dark follow the choice, at once and after a reload', async ({ openAs }) => {
  const page = await openAs('designer')
  await page.goto('/account')
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  const light = await ground()
  await page.getByRole('radio', { name: 'Dark' }).click()
  await expect.poll(ground).not.toBe(light)
  const dark = await ground()
  await page.reload()
  expect(await ground()).toBe(dark)
  await page.getByRole('radio', { name: 'Light', exact: true }).click()
  await expect.poll(ground).toBe(light)
})

test('the work can be done from the keyboard alone', async ({ openAs, backstage }) => {
  const by = CAST.designer.email
  const name = `Keyboard ${Date.now()}`
  const projectId = await backstage.act('makeProject', { name, lead: CAST.lead.email, team: { [by]: 'member' } })
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'skua-rev-b' })
  const page = await openAs('designer')
  await page.goto('/projects')

  const isFocused = (text: string) =>
    page.evaluate((wanted) => (document.activeElement?.textContent ?? '').trim().startsWith(wanted), text)
  const tabTo = async (text: string) => {
    for (let presses = 0; presses < 60; presses += 1) {
      await page.keyboard.press('Tab')
      if (await isFocused(text)) return
    }
    throw new Error(`"${text}" was not reached with the Tab key`)
  }

  await tabTo(name)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name })).toBeVisible()
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/construction`)
  const cell = page.getByLabel('Thickness, Flexible base film')
  await cell.focus()
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type('20')
  await page.keyboard.press('ControlOrMeta+S')
  await expect(page.locator('.save-state')).toHaveText(/^Saved/)
  await page.keyboard.press('ControlOrMeta+Z')
  await expect(cell).toHaveValue('25')
  await page.getByLabel('Name, Flexible base film').focus()
  await page.keyboard.press('Alt+ArrowUp')
  await expect(page.locator('.save-state')).toContainText('not saved')

  await page.getByRole('button', { name: 'Starting constructions' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Starting constructions' })).toBeFocused()
})

test('a long page lists its parts, and going to one takes reading and keys there', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`)
  await page.getByRole('button', { name: 'On this page' }).press('Enter')
  const parts = page.getByRole('menu')
  const headings = page.getByRole('main').getByRole('heading', { level: 2 })
  await expect(parts.getByRole('menuitem')).toHaveText(await headings.allInnerTexts())
  await parts.getByRole('menuitem', { name: 'Figures' }).click()
  const chosen = page.getByRole('heading', { level: 2, name: 'Figures' })
  await expect(chosen).toBeFocused()
  await expect(chosen).toBeInViewport()
  const bar = await page.locator('.save-bar').boundingBox()
  const place = await chosen.boundingBox()
  expect(place?.y ?? 0).toBeGreaterThanOrEqual((bar?.y ?? 0) + (bar?.height ?? 0))
  await page.goto('/projects/new')
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await expect(page.getByRole('button', { name: 'On this page' })).toHaveCount(0)
})

test('one draft and one save for all pages of the design: edits go along, and leaving the design asks first', async ({
  openAs,
  backstage,
}) => {
  const by = CAST.designer.email
  const name = `One draft ${randomUUID().slice(0, 8)}`
  const projectId = await backstage.act('makeProject', { name, lead: CAST.lead.email, team: { [by]: 'member' } })
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'skua-rev-b' })
  const page = await openAs('designer')
  const revision = `/projects/${projectId}/revisions/${revisionId}`
  const state = page.locator('.save-state')
  const tabs = page.getByRole('navigation', { name: 'Parts of the revision' })
  await page.goto(`${revision}/construction`)
  const thickness = page.getByLabel('Thickness, Flexible base film')
  await thickness.fill('20')
  await thickness.press('Tab')
  await expect(state).toHaveText('Changed since version 1 (construction), not saved')

  // No question on the way to another page of the design, and what was typed is there.
  await tabs.getByRole('link', { name: 'Bends' }).click()
  await expect(page.getByRole('heading', { level: 2, name: 'Bends' })).toBeVisible()
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await expect(state).toHaveText('Changed since version 1 (construction), not saved')
  await expect(page.getByRole('button', { name: 'Restore draft' })).toHaveCount(0)
  const radius = page.getByLabel('Inside radius', { exact: true }).first()
  const before = Number(await radius.inputValue())
  await radius.fill(String(before + 1))
  await radius.press('Tab')
  await expect(state).toHaveText('Changed since version 1 (construction, bends), not saved')

  // An entry that cannot be read stays behind with its field: that is asked first, and staying keeps it.
  await radius.fill('wide')
  await tabs.getByRole('link', { name: 'Brief' }).click()
  await expect(page.getByRole('dialog')).toContainText('1 entry that cannot be read will be lost')
  await page.getByRole('button', { name: 'Stay' }).click()
  await expect(radius).toHaveValue('wide')
  await radius.fill(String(before + 1))
  await radius.press('Tab')

  // Leaving the design asks; one save stores what both pages changed.
  await tabs.getByRole('link', { name: /^Checklist/ }).click()
  await expect(page.getByRole('dialog')).toContainText('Your changes to the design are not stored yet')
  await page.getByRole('button', { name: 'Save and leave' }).click()
  await expect(page).toHaveURL(/\/checklist$/)
  await tabs.getByRole('link', { name: 'Construction' }).click()
  await expect(thickness).toHaveValue('20')
  await expect(state).toHaveText(/^Saved, version 2/)
  await tabs.getByRole('link', { name: 'Bends' }).click()
  await expect(radius).toHaveValue(String(before + 1))
})
