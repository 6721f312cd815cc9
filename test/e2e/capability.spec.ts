import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { expect, test } from './fixtures'

/** The grid of a sheet, files with a preview, and fabricators side by side on a revision. */

const cell = (page: Page, row: number, column: number) =>
  page.locator(`[role=grid] [aria-rowindex="${row + 1}"] [aria-colindex="${column + 1}"]`)

test('a fabricator edits the shelf in the grid, and takes a file over after a look at it', async ({ demo, openAs }) => {
  const page = await openAs('ostrel')
  await page.goto('/')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/fabrication`)
  await page
    .getByRole('table')
    .first()
    .getByRole('link', { name: /version/ })
    .nth(1)
    .click()
  await expect(page.getByRole('heading', { level: 1, name: 'Shelf' })).toBeVisible()
  await page.waitForLoadState('networkidle')
  const grid = page.getByRole('grid', { name: 'Shelf' })
  const rowCount = Number(await grid.getAttribute('aria-rowcount')) - 1

  await test.step('keys: type, Enter, Escape, Tab, Delete', async () => {
    await cell(page, 1, 2).click()
    await page.keyboard.type('26')
    await page.keyboard.press('Enter')
    await expect(cell(page, 1, 2)).toContainText('26')
    await expect(cell(page, 2, 2)).toBeFocused()
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('F2')
    await page.keyboard.type('9')
    await page.keyboard.press('Escape')
    await expect(cell(page, 1, 2).locator('.cell-text')).toHaveText('26')
    await page.keyboard.press('Tab')
    await expect(cell(page, 1, 3)).toBeFocused()
    await page.keyboard.press('Shift+Tab')
    await page.keyboard.press('Delete')
    await expect(cell(page, 1, 2)).toContainText('is empty')
    await expect(page.getByRole('button', { name: /^Save as version/ })).toBeDisabled()
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect(cell(page, 1, 2).locator('.cell-text')).toHaveText('26')
    await expect(page.getByText('1 row is not saved.')).toBeVisible()
  })

  await test.step('a block of a spreadsheet is pasted, with a formula that stays text', async () => {
    await cell(page, rowCount, 1).click()
    await page.keyboard.press('Control+Home')
    await cell(page, rowCount, 1).click()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await expect(grid).toHaveAttribute('aria-rowcount', String(rowCount + 2))
    await cell(page, rowCount + 1, 1).evaluate((element) => {
      const data = new DataTransfer()
      data.setData('text/plain', 'pi-black-coverlay\t25\npet-film\tthick')
      element.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }))
    })
    await expect(grid).toHaveAttribute('aria-rowcount', String(rowCount + 3))
    await expect(cell(page, rowCount + 2, 2)).toContainText('is not a number in um')
    await cell(page, rowCount + 2, 1).click()
    await page.getByRole('button', { name: 'Remove the row' }).click()
    await cell(page, rowCount + 1, 10).click()
    await page.keyboard.type('yes')
    await page.keyboard.press('Tab')
  })

  await test.step('it is saved as a new version', async () => {
    const save = page.getByRole('button', { name: /^Save as version/ })
    const name = await save.textContent()
    await save.click()
    await expect(page.getByText(`Version ${name?.match(/\d+/)?.[0]}, issued on`)).toBeVisible()
    await expect(page.getByText('Everything here is saved.')).toBeVisible()
  })

  await test.step('a file is shown first, and its bad rows are named', async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'sheet-')), 'stock.csv')
    writeFileSync(file, 'Material,Thickness,On the shelf,Note\npen-film,50,yes,=1+1\npet-film,thin,yes,\n')
    await page.getByText('Files: import rows from a spreadsheet').click()
    await page.getByLabel('CSV or XLSX file').setInputFiles(file)
    await page.getByRole('button', { name: 'Rows of the file' }).click()
    await page.getByRole('option', { name: 'add to and update the rows' }).click()
    await page.getByRole('button', { name: 'Show what the file would change' }).click()
    const preview = page.getByRole('region', { name: /stock\.csv would change/ })
    await expect(preview).toContainText('2 rows, of which 1 can be taken')
    await expect(preview).toContainText('"thin" is not a number in um')
    const take = preview.getByRole('button', { name: /^Import as version/ })
    await expect(take).toBeDisabled()
    await expect(grid).toHaveAttribute('aria-rowcount', String(rowCount + 2))
    await preview.getByText('Leave these rows out').click()
    await take.click()
    await expect(grid).toHaveAttribute('aria-rowcount', String(rowCount + 3))
    await expect(grid).toContainText('pen-film')
    await expect(grid).toContainText('=1+1')
  })
})

test('the team sees fabricators side by side, a fabricator only its own column', async ({ demo, openAs }) => {
  const address = `/projects/${demo.skuaId}/revisions/${demo.skuaB}/fabrication`
  const page = await openAs('designer')
  await page.goto(address)
  await page.waitForLoadState('networkidle')
  const values = page.getByRole('table').nth(1)
  await expect(values.getByRole('columnheader', { name: 'Brackenfold Circuits' })).toBeVisible()
  await expect(values.getByRole('columnheader', { name: 'Ostrel Flexible' })).toBeVisible()
  await expect(values).toContainText('Stretch')
  await page.getByRole('radio', { name: 'Every value' }).click()
  await expect(values).toContainText('Conductor layers, maximum')
  await expect(page.getByText(/Order now/).first()).toBeVisible()

  const own = await openAs('ostrel')
  await own.goto(address)
  await own.waitForLoadState('networkidle')
  await expect(own.getByRole('heading', { name: 'Values against your matrix' })).toBeVisible()
  await expect(own.getByRole('main')).not.toContainText('Brackenfold')
})

test('the matrix is read-only for the team, and downloaded as a file', async ({ demo, openAs }) => {
  const page = await openAs('designer')
  await page.goto(`/companies/${demo.brackenfoldId}/matrix`)
  await page.waitForLoadState('networkidle')
  await expect(page.getByRole('grid')).toHaveAttribute('aria-readonly', 'true')
  await cell(page, 1, 2).click()
  await page.keyboard.type('5')
  await expect(page.getByRole('grid').getByRole('textbox')).toHaveCount(0)
  await page.getByText('Save as a spreadsheet file').click()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Save as XLSX' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^brackenfold-circuits-capability-matrix-version-1\.xlsx$/)
})
