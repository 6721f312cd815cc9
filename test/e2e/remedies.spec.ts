import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from './fixtures'

/** A click on a page that does not yet listen is lost: it is repeated until the search begins. */
async function findRemedies(page: Page) {
  const section = page.getByRole('region', { name: 'Remedies' })
  const start = section.getByRole('button', { name: 'Find remedies' })
  await expect(async () => {
    if (await start.isVisible()) await start.click()
    await expect(section.getByText(/^Strain and life as they are:/)).toBeVisible({ timeout: 5_000 })
  }).toPass({ timeout: 60_000 })
  return section
}

test('remedies of a bend are found, tried beside the design, applied to the draft and undone', async ({
  openAs,
  demo,
}) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`)
  const section = await findRemedies(page)
  const rows = section.getByRole('table').first().locator('tbody tr')
  await expect(rows.nth(1)).toContainText('Meets')
  // What leads makes nothing of weight fail.
  await expect(rows.nth(1)).not.toContainText('Makes an item fail')
  const name = (await rows.nth(1).locator('button.choice').textContent()) ?? ''
  expect(name).not.toBe('')
  await expect(rows.first()).toContainText('As it is')
  await expect(section.locator('svg[role="img"]')).toHaveCount(1)

  await rows
    .nth(1)
    .getByRole('button', { name: /^Try it/ })
    .click()
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByText('With the remedy').first()).toBeVisible()
  await expect(dialog.locator('svg[role="img"]')).toHaveCount(2)
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  await dialog.getByRole('button', { name: 'Apply to the draft' }).click()

  await expect(dialog).toHaveCount(0)
  await expect(section.getByText(`Applied to the draft: ${name}.`)).toBeVisible()
  await expect(section.getByText(/earlier state of the design/)).toBeVisible()
  await section.getByRole('button', { name: 'Undo' }).click()
  await expect(section.getByText(/Applied to the draft/)).toHaveCount(0)
  await expect(section.getByText(/earlier state of the design/)).toHaveCount(0)
})

test('a remedy that a stated need forbids names the need and cannot be applied', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/bends`)
  const section = await findRemedies(page)
  await section.getByRole('button', { name: /^Show all/ }).click()
  const row = section.getByRole('row').filter({ hasText: 'Forbidden by Hinge' }).first()
  await expect(row).toContainText(/arc of Mirror hinge in Hinge.*at most 38 mm/i)
  await expect(row.getByRole('button', { name: /^Apply/ })).toHaveCount(0)
  await row.getByRole('button', { name: /^Try it/ }).click()
  await expect(page.getByRole('dialog').getByText(/A stated need forbids it/)).toBeVisible()
})

test('the search says which changes are enough, or by how much the nearest ones miss', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/bends`)
  const section = await findRemedies(page)
  await expect(
    section.getByText(
      /3 changes together are enough: .*larger radius and longer flex zone \(no\. 1\)\. It makes the part larger/,
    ),
  ).toBeVisible()
  const first = section.getByRole('table').first().locator('tbody tr').nth(1)
  await expect(first).toContainText('Meets')
  await expect(first.getByRole('button', { name: /^Apply/ })).toBeVisible()

  await section.getByRole('radio', { name: 'Radius is fixed' }).click()
  await expect(section.getByText('No allowed set of changes that was tried meets.')).toBeVisible({ timeout: 60_000 })
  await expect(
    section.getByText(/strain at the worst corner is [\d.]+ times its allowable, against [\d.]+ as it is/),
  ).toBeVisible()
})

test('remedies are priced by the panels of a fabricator, and where they are not the reason is the true one', async ({
  openAs,
  demo,
  consoleWatch,
}) => {
  const page = await openAs('designer')
  const bends = `/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`
  await page.goto(bends)
  const section = await findRemedies(page)
  const table = section.getByRole('table').first()
  const costs = table.locator('td[data-label="Cost, %"]')
  await expect(costs.first()).toHaveText('100.0')
  const texts = await costs.allTextContents()
  expect(texts.length).toBeGreaterThan(1)
  for (const text of texts) expect(text).toMatch(/^\d+\.\d$/)
  await expect(table.locator('td[data-label="Parts per panel"]').first()).toHaveText(/^\d+$/)
  await expect(section.getByText(/^Cost and parts per panel by the panels of Brackenfold Circuits/)).toBeVisible()
  await expect(section.getByText(/states no panel formats|keeps no panel formats/)).toHaveCount(0)

  // Whatever the server does not say is not said of the fabricator.
  consoleWatch.expect(/remedy-bases|ERR_FAILED/)
  await page.route('**/remedy-bases', (route) => route.abort())
  await page.goto(bends)
  await findRemedies(page)
  await expect(section.getByText(/are not included: the server did not answer/)).toBeVisible()
})

test('a search for remedies shows its progress, stops by hand and where the page is left, and can be begun again', async ({
  openAs,
  demo,
  consoleWatch,
}) => {
  const page = await openAs('designer')
  // The server is not reached before the test lets it: until then the search is under way.
  let isHeld = true
  const held: (() => void)[] = []
  const stopped: string[] = []
  page.on('requestfailed', (request) => stopped.push(new URL(request.url()).pathname))
  await page.route('**/remedies', async (route) => {
    if (isHeld) await new Promise<void>((resolve) => held.push(resolve))
    await route.continue().catch(() => {})
  })
  consoleWatch.expect(/remedies|ERR_ABORTED/)
  const bends = `/projects/${demo.skuaId}/revisions/${demo.skuaB}/bends`
  await page.goto(bends)
  const section = page.getByRole('region', { name: 'Remedies' })
  const start = section.getByRole('button', { name: 'Find remedies' })
  const stop = section.getByRole('button', { name: 'Stop' })
  const begin = () =>
    expect(async () => {
      if (await start.isVisible()) await start.click()
      await expect(stop).toBeVisible({ timeout: 2_000 })
    }).toPass({ timeout: 60_000 })

  await begin()
  await expect(section.getByRole('progressbar')).toBeVisible()
  await expect.poll(() => held.length).toBeGreaterThan(0)
  await stop.click()
  await expect(stop).toHaveCount(0)
  await expect(section.getByText(/^Strain and life as they are:/)).toHaveCount(0)
  await expect.poll(() => stopped.filter((path) => path.endsWith('/remedies')).length).toBe(1)

  await begin()
  await expect.poll(() => held.length).toBeGreaterThan(1)
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/checklist`)
  await expect.poll(() => stopped.filter((path) => path.endsWith('/remedies')).length).toBe(2)

  isHeld = false
  await page.goto(bends)
  await findRemedies(page)
})
