import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from './fixtures'

async function expectNoViolations(page: Page) {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
}

test('panels and cost: a fabricator states both, the team sees several, a fabricator only its own', async ({
  openAs,
  demo,
}) => {
  const revision = `/projects/${demo.skuaId}/revisions/${demo.skuaB}/fabrication`
  const fabricator = await openAs('brackenfold')
  await fabricator.goto(`/companies/${demo.brackenfoldId}/panels`)
  const format = fabricator.getByRole('group', { name: 'Half panel' })
  const margin = format.getByLabel('Margin left')

  // Bad input is refused beside its field, and what was typed stays.
  await expect(async () => {
    await margin.fill('400')
    await margin.blur()
    await fabricator.getByRole('button', { name: 'Save as a new version' }).click()
    await expect(format.getByText(/leave nothing of the width/)).toBeVisible({ timeout: 3_000 })
  }).toPass({ timeout: 60_000 })
  await expect(margin).toHaveValue('400')
  await margin.fill('14')
  await margin.blur()
  await fabricator.getByRole('button', { name: 'Save as a new version' }).click()
  await expect(fabricator.getByText(/^Version 2, issued on/)).toBeVisible()
  // Again: what the fields said aloud while they were filled is gone then.
  await fabricator.reload()
  await expect(format).toBeVisible()
  await expectNoViolations(fabricator)

  await fabricator.goto(`/companies/${demo.brackenfoldId}/rates`)
  const rate = fabricator.getByRole('textbox', { name: 'Rate: Solder mask' })
  await expect(async () => {
    if (!(await rate.isVisible())) await fabricator.getByRole('button', { name: 'Replace: Solder mask' }).click()
    await expect(rate).toBeVisible({ timeout: 2_000 })
  }).toPass({ timeout: 60_000 })
  await rate.fill('1,5')
  await fabricator.getByRole('button', { name: 'Save as a new version' }).click()
  await expect(fabricator.getByText('Write decimals with a point.')).toBeVisible()
  await rate.fill('1.5')
  await fabricator.getByRole('button', { name: 'Save as a new version' }).click()
  await expect(fabricator.getByText(/^Version 2, issued on/)).toBeVisible()

  const ostrel = await openAs('ostrel')
  await ostrel.goto(`${revision}/panels`)
  await expect(ostrel.getByRole('heading', { name: 'Panels of Ostrel Flexible' })).toBeVisible()
  await expect(ostrel.getByText('Brackenfold')).toHaveCount(0)
  await ostrel.goto(`${revision}/cost`)
  await expect(ostrel.getByRole('heading', { name: 'Cost at Ostrel Flexible' })).toBeVisible()
  await expect(ostrel.getByText('Brackenfold')).toHaveCount(0)
  await expect(ostrel.getByText('Includes illustrative rates.')).toBeVisible()

  const team = await openAs('designer')
  await team.goto(`${revision}/panels`)
  for (const name of ['Brackenfold Circuits', 'Ostrel Flexible']) {
    const section = team.getByRole('region', { name: `Panels of ${name}` })
    await expect(section.getByRole('img')).toHaveCount(2)
    // The part is delivered in arrays of four: whole arrays alone are counted, and what single parts would come to stands beside.
    const row = section.getByRole('table').first().locator('tbody tr').first()
    const cells = await row.locator('td').allInnerTexts()
    expect(Number(cells[0])).toBeGreaterThan(0)
    expect(Number(cells[0]) % 4).toBe(0)
    const said = /(\d+) arrays? of 4 parts.*Laid singly it would be (\d+) parts/.exec((await row.textContent()) ?? '')
    expect(Number(said?.[1]) * 4).toBe(Number(cells[0]))
    expect(Number(said?.[2])).toBeGreaterThan(Number(cells[0]))
  }
  await expectNoViolations(team)

  await team.goto(`${revision}/cost`)
  const cost = team.getByRole('region', { name: 'Cost at Brackenfold Circuits' })
  await expect(cost.getByRole('img')).toHaveCount(2)
  // No array was drawn in revision A, so its parts lie singly.
  await expect(cost.getByRole('row', { name: /^Revision A/ })).toContainText('cheaper')
  await cost.getByText('Steps and the rules that select them').click()
  const mask = cost.getByRole('row', { name: /^Solder mask/ })
  await expect(mask).toContainText('Every solder mask is coated, imaged and cured.')
  await expect(mask).toContainText('own')
  await expectNoViolations(team)

  // A larger order is cheaper for each part.
  const readIndex = async () => Number(await cost.locator('dd').first().textContent())
  const before = await readIndex()
  await team.getByLabel('Good parts ordered').fill('50000')
  await team.getByRole('button', { name: 'Recalculate' }).click()
  await expect(team.getByText('Cost for an order of 50 000 good parts.')).toBeVisible()
  expect(await readIndex()).toBeLessThan(before)
})

test('an outline is pasted from a spreadsheet, drawn, and refused where it crosses itself', async ({
  openAs,
  demo,
}) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/features`)
  const section = page.getByRole('region', { name: 'Outline' })
  await expect(section.getByRole('img', { name: 'Outline in the flat' })).toBeVisible()
  const field = section.getByLabel(/^Corners, x and y in mm/)
  await expect(async () => {
    if (!(await field.isVisible())) await section.getByText('Paste corners from a spreadsheet').click()
    await field.fill('x\ty\n0\t0\n80\t60\n80\t0\n0\t60', { timeout: 2_000 })
    await section.getByRole('button', { name: /these corners/ }).click({ timeout: 2_000 })
    await expect(section.getByRole('paragraph').filter({ hasText: /^4 corners, 80 × 60 mm/ })).toBeVisible({
      timeout: 2_000,
    })
  }).toPass({ timeout: 60_000 })
  await expect(section.getByText(/meets the edge from corner 1/)).toBeVisible()
  await page.getByRole('button', { name: 'Undo' }).first().click()
  await expect(section.getByRole('paragraph').filter({ hasText: /^19 corners, 114 × 63 mm/ })).toBeVisible()
})
