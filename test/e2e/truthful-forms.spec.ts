import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'

/** The body of an item, opened by its address. */
async function openItem(page: Page, revisionPath: string, itemId: string) {
  await page.goto(`${revisionPath}/checklist#item-${itemId}`)
  const item = page.locator(`#item-${itemId}`)
  await expect(item.getByText('how to check')).toBeVisible()
  return item
}

test('the answer form is there for those who may answer, and everybody else reads who may', async ({
  openAs,
  demo,
}) => {
  const revisionPath = `/projects/${demo.skuaId}/revisions/${demo.skuaB}`
  const [lead, brackenfold, observer] = [await openAs('lead'), await openAs('brackenfold'), await openAs('observer')]

  const ofFabricator = await openItem(lead, revisionPath, 'buildable-construction')
  await expect(ofFabricator.getByText('Answered by a fabricator with whom the revision is shared.')).toBeVisible()
  await expect(ofFabricator.getByRole('button', { name: 'Record the answer' })).toHaveCount(0)
  await expect(ofFabricator.getByRole('button', { name: 'Attach' })).toHaveCount(0)
  const own = await openItem(brackenfold, revisionPath, 'buildable-construction')
  await expect(own.getByRole('button', { name: 'Record the answer' })).toBeVisible()

  const ofTeam = await openItem(brackenfold, revisionPath, 'electrical-test')
  await expect(ofTeam.getByText('Answered by the team (lead engineer or member).')).toBeVisible()
  await expect(ofTeam.getByRole('button', { name: 'Record the answer' })).toHaveCount(0)
  const seen = await openItem(observer, revisionPath, 'electrical-test')
  await expect(seen.getByText('Answered by the team (lead engineer or member).')).toBeVisible()

  // "Mine to answer" lists nothing that opens without a form.
  for (const page of [lead, brackenfold]) {
    await page.goto(`${revisionPath}/checklist?show=mine`)
    await expect(page.getByRole('radio', { name: 'Mine to answer' })).toBeChecked()
    const items = page.locator('article.item')
    for (let at = 0; at < (await items.count()); at += 1) {
      const item = items.nth(at)
      await item.getByRole('button', { expanded: false }).first().click()
      await expect(item.getByRole('button', { name: 'Record the answer' })).toBeVisible()
      await item.getByRole('button', { expanded: true }).first().click()
    }
  }
  await observer.goto(`${revisionPath}/checklist?show=mine`)
  await expect(observer.getByText('No checklist item matches this filter.')).toBeVisible()
})

test('a connector window that is missed shows the window and the end that is missed', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  const item = await openItem(page, `/projects/${demo.skuaId}/revisions/${demo.skuaB}`, 'finger-thickness')
  const limit = item.locator('.item-limit')
  const table = item.getByRole('table')
  await expect(limit).toContainText(/270(\.0)? µm to 330(\.0)? µm/)
  await expect(table).toContainText(/within 270(\.0)? µm to 330(\.0)? µm/)
  await expect(table).toContainText(/(lower|upper) end: [\d.]+ µm against (270|330)(\.0)? µm/)
  const verdict = await item.locator('.verdict').first().textContent()
  const value = Number.parseFloat((await item.locator('.item-number').textContent()) ?? '')
  if (verdict === 'Meets') {
    expect(value).toBeGreaterThanOrEqual(270)
    expect(value).toBeLessThanOrEqual(330)
  } else {
    // The number on the line is the one that misses, beside the limit that it misses.
    const text = (await limit.textContent()) ?? ''
    const [sign, bound] = [text[0], Number.parseFloat(text.slice(1))]
    expect(sign === '≥' ? value < bound : value > bound).toBe(true)
  }
})

test('nothing is chosen beforehand when a fabricator declares', async ({ openAs, demo }) => {
  const page = await openAs('brackenfold')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/sign-off`)
  const choice = page.getByRole('radiogroup', { name: 'With our process, this revision is' })
  const main = page.getByRole('main')
  for (const radio of await choice.getByRole('radio').all()) await expect(radio).not.toBeChecked()
  const before = await main.locator('.signatures > li').count()
  await expect(async () => {
    await page.getByRole('button', { name: 'Declare' }).click()
    await expect(main.getByText('choose whether it can be built')).toBeVisible({ timeout: 3_000 })
  }).toPass({ timeout: 30_000 })
  await expect(main.locator('.signatures > li')).toHaveCount(before)
})

test('an entry that cannot be read leaves no verdict looking current', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`)
  const radius = page.getByLabel('Inside radius', { exact: true })
  const mark = page.locator('.draft .verdict > span').first()
  const ageOf = () => mark.evaluate((span) => getComputedStyle(span, '::after').content)
  await expect(async () => {
    await radius.fill('eight')
    await expect(page.locator('.save-state')).toContainText('1 entry needs correction', { timeout: 3_000 })
  }).toPass({ timeout: 60_000 })
  await expect(page.getByText('Results and verdicts on this page are from the last valid state')).toBeVisible()
  expect(await ageOf()).toContain('earlier state')
  await expect(page.getByRole('button', { name: 'Find remedies' })).toBeDisabled()
  await radius.fill('8')
  await expect(page.locator('.save-state')).not.toContainText('correction')
  expect(await ageOf()).toBe('none')
})

test('focus stays where remedies were asked for', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`)
  const section = page.getByRole('region', { name: 'Remedies' })
  const find = section.getByRole('button', { name: 'Find remedies' })
  await expect(async () => {
    if (await find.isVisible()) {
      await find.focus()
      await page.keyboard.press('Enter')
    }
    await expect(section.getByText(/^Strain and life as they are:/)).toBeVisible({ timeout: 5_000 })
  }).toPass({ timeout: 60_000 })
  await expect(section.getByRole('button').first()).toBeFocused()
})

test('a new feature starts empty, a new bend marked, and the label is the revision’s own', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  const revisionPath = `/projects/${demo.skuaId}/revisions/${demo.skuaB}`
  await page.goto(`${revisionPath}/features`)
  const slits = page.getByRole('region', { name: 'Slits and cut-outs' })
  await expect(async () => {
    await slits.getByRole('button', { name: 'Add slit' }).click()
    await expect(slits.getByLabel(/^Relief at the end, diameter/).last()).toHaveValue('', { timeout: 3_000 })
  }).toPass({ timeout: 60_000 })
  await expect(slits.getByRole('row').last()).toContainText('Not computed')
  const stiffeners = page.getByRole('region', { name: 'Stiffeners' })
  await expect(stiffeners.getByRole('button', { name: /^Add/ })).toHaveCount(0)
  await expect(stiffeners.getByRole('row').nth(1)).toBeVisible()
  await page.getByRole('button', { name: 'Undo' }).first().click()

  await page.goto(`${revisionPath}/bends`)
  await expect(async () => {
    await page.getByRole('button', { name: 'Add a bend' }).click()
    await expect(page.getByRole('button', { name: /^Confirm the assumed Inside radius/ })).toBeVisible({
      timeout: 3_000,
    })
  }).toPass({ timeout: 60_000 })
  await page.getByLabel('Inside radius', { exact: true }).fill('6')
  await expect(page.getByRole('button', { name: /^Confirm the assumed Inside radius/ })).toHaveCount(0)
  await page.getByRole('button', { name: /^Confirm the assumed Angle/ }).click()
  await expect(page.getByRole('button', { name: /^Confirm the assumed Angle/ })).toHaveCount(0)
  await page.getByRole('button', { name: 'Undo' }).first().click()

  await page.goto(`${revisionPath}/brief`)
  await expect(page.getByLabel('Revision label')).toHaveCount(0)
  await expect(page.getByText('The revision’s own label, printed on the drawing and in the package.')).toBeVisible()
})

test('what the brief says stands beside the item that asks about it', async ({ openAs, demo, backstage }) => {
  const page = await openAs('designer')
  const { design } = await backstage.act('readRevision', { revisionId: demo.skuaB, as: CAST.designer.email })
  expect(design.brief.packingAndHandling).not.toBe('')
  const item = await openItem(page, `/projects/${demo.skuaId}/revisions/${demo.skuaB}`, 'packing')
  await expect(item.getByText(design.brief.packingAndHandling)).toBeVisible()
})
