import { readFileSync } from 'node:fs'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'
import { choose, saveDesign } from './steps'

/** The four-layer demo as a person would keep it in a spreadsheet: layers down, zones across. */
const SHEET = readFileSync(new URL('../fixtures/layer-sheets/skua-b.tsv', import.meta.url), 'utf8')

const pasteInto = (page: Page, row: number, column: number, text: string) =>
  page
    .getByRole('grid', { name: 'Layer sheet' })
    .locator(`tr[aria-rowindex="${row + 1}"] > [aria-colindex="${column + 1}"]`)
    .evaluate((element, cells) => {
      const data = new DataTransfer()
      data.setData('text/plain', cells)
      element.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
    }, text)

const cell = (page: Page, row: number, column: number) =>
  page
    .getByRole('grid', { name: 'Layer sheet' })
    .locator(`tr[aria-rowindex="${row + 1}"] > [aria-colindex="${column + 1}"]`)

/** Of each zone, where the table of zones says it. */
const finished = (page: Page) =>
  page
    .locator('table', { has: page.locator('caption', { hasText: 'In order along the part' }) })
    .locator('td[data-label="Finished"]')
const readFinished = (page: Page) => finished(page).allInnerTexts()
const openSheet = (page: Page) => page.getByRole('radio', { name: 'Sheet', exact: true }).click()

test('the four-layer demo is entered from a spreadsheet by one paste, and comes to the same thicknesses', async ({
  openAs,
  backstage,
  demo,
}) => {
  const projectId = await backstage.act('makeProject', {
    name: `Layer sheet ${Date.now()}`,
    lead: CAST.lead.email,
    team: { [CAST.designer.email]: 'member' },
  })
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/construction`)
  await expect(finished(page)).toHaveCount(5)
  const wanted = await readFinished(page)

  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('A')
  await choose(page, 'Start from', 'a blank design')
  await page.getByRole('button', { name: 'Create revision' }).click()
  await expect(page).toHaveURL(/\/construction$/)
  await openSheet(page)
  await cell(page, 1, 1).click()
  await pasteInto(page, 1, 1, SHEET)
  await expect(page.getByText('17 layers and 5 zones were read.')).toBeVisible()
  await expect.poll(() => readFinished(page)).toEqual(wanted)
  await saveDesign(page)
  await page.reload()
  await expect.poll(() => readFinished(page)).toEqual(wanted)
  // The form shows the same layers, none of which is marked as assumed.
  await expect(page.getByLabel('Thickness, Flexible base film')).toHaveValue('25')
  await expect(page.getByRole('button', { name: /^Confirm the assumed/ })).toHaveCount(0)
})

test('a cell that cannot be read keeps its text and its reason, and the design stays as it was', async ({
  openAs,
  backstage,
}) => {
  const projectId = await backstage.act('makeProject', {
    name: `Layer sheet faults ${Date.now()}`,
    lead: CAST.lead.email,
    team: { [CAST.designer.email]: 'member' },
  })
  const by = CAST.designer.email
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'skua-rev-b' })
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/construction`)
  await expect(finished(page)).toHaveCount(5)
  const before = await readFinished(page)
  await openSheet(page)

  await test.step('bad text is refused at its cell', async () => {
    await cell(page, 1, 4).click()
    await page.keyboard.type('two')
    await page.keyboard.press('Enter')
    await expect(cell(page, 1, 4)).toContainText('"two" is not a length such as')
    await expect(page.getByText('Correct or discard the marked cells')).toBeVisible()
    expect(await readFinished(page)).toEqual(before)
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await expect(page.locator('.save-state')).toContainText('1 entry needs correction')
  })

  await test.step('a thickness in mil takes its place, and is filled down', async () => {
    await cell(page, 1, 4).click()
    await page.keyboard.type('2 mil')
    await page.keyboard.press('Enter')
    await expect(cell(page, 1, 4)).not.toHaveAttribute('aria-invalid')
    await expect.poll(() => readFinished(page)).not.toEqual(before)
    await page.keyboard.press('Control+d')
    await expect(cell(page, 2, 4).locator('.cell-text')).toHaveText('2 mil')
    // One undo for the grid, which the draft follows.
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    await expect.poll(() => readFinished(page)).toEqual(before)
  })

  await test.step('the sheet leaves as a file and comes back the same', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as XLSX' }).click(),
    ])
    const file = await download.path()
    await page.getByLabel('Spreadsheet of layers to import').setInputFiles({
      name: 'layers.xlsx',
      mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      buffer: readFileSync(file),
    })
    await expect(page.getByText('17 layers and 5 zones were read.')).toBeVisible()
    await expect.poll(() => readFinished(page)).toEqual(before)
  })
})

test('a material of the workspace’s own is described, used in a layer, kept with a construction and begun with elsewhere', async ({
  openAs,
  backstage,
}) => {
  const stamp = Date.now()
  const projectId = await backstage.act('makeProject', { name: `Library ${stamp}`, lead: CAST.lead.email, team: {} })
  const film = `Stiff film ${stamp}`
  const page = await openAs('lead')
  await page.goto('/workspace/library')
  await page.getByRole('button', { name: 'Add a material' }).click()
  await page.getByLabel('Name', { exact: true }).fill(film)
  await page.getByLabel('Modulus: value').fill('8.1')
  await page.getByLabel("Poisson's ratio: value").fill('0.34')
  await page.getByLabel('Reason').fill('Measured')
  await page.getByRole('button', { name: 'Save the material' }).click()
  await expect(page.getByText('say where the value comes from: a data sheet, a test report')).toHaveCount(2)
  await page.getByLabel('Modulus: source of the value').fill('Our test report 24-113')
  await page.getByLabel("Poisson's ratio: source of the value").fill('Our test report 24-113')
  await page.getByRole('button', { name: 'Save the material' }).click()
  await expect(page.getByRole('row', { name: new RegExp(film) })).toContainText('Our test report 24-113')

  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('A')
  await choose(page, 'Start from', 'a starting construction')
  await choose(page, 'Starting construction', /^Double-sided flex Two/)
  await page.getByRole('button', { name: 'Create revision' }).click()
  await expect(page).toHaveURL(/\/construction$/)
  const made = page
    .getByLabel(/^Material, /)
    .filter({ hasText: film })
    .first()
  await made.selectOption({ label: film })
  await saveDesign(page)
  await page.getByRole('button', { name: 'Keep as a starting construction' }).click()
  const form = page.getByRole('form', { name: 'Keep as a starting construction' })
  await form.getByLabel('Name').fill(`Stiff two-layer ${stamp}`)
  await form.getByLabel('Chosen for').fill('Two layers that must stand by themselves.')
  await form.getByRole('button', { name: 'Keep it' }).click()
  await expect(page.getByText(`“Stiff two-layer ${stamp}” is kept.`)).toBeVisible()

  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('B')
  await choose(page, 'Start from', 'a construction that the workspace keeps')
  await page.getByRole('button', { name: 'Create revision' }).click()
  await expect(page).toHaveURL(/\/construction$/)
  await expect(made.locator('option:checked')).toHaveText(film)
})
