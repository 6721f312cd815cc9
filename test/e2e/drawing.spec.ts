import { readFileSync } from 'node:fs'
import type { Download, Page } from '@playwright/test'
import { expect, test } from './fixtures'

/** The drawing sheets on screen and as files, and what a fabricator would still ask. */

async function readDownload(page: Page, name: RegExp): Promise<{ download: Download; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name }).click()])
  return { download, text: readFileSync(await download.path(), 'latin1') }
}

test('the drawing follows the design, in the reader’s unit, and is downloaded in µm and mm', async ({
  demo,
  openAs,
}) => {
  const address = `/projects/${demo.skuaId}/revisions/${demo.skuaB}/drawing`
  const page = await openAs('designer')
  await page.goto(address)
  await page.waitForLoadState('networkidle')
  const sheet = page.getByRole('img', { name: /^Drawing sheet 1 of \d+/ })
  await expect(sheet).toContainText('Layers from the top face')
  await expect(sheet).toContainText('Thickness in µm, plan in mm.')
  await expect(sheet).toContainText('do not build from')

  await test.step('sheets and sizes are chosen by keyboard', async () => {
    await page.getByRole('radio', { name: 'Sheet 1', exact: true }).focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('img', { name: /^Drawing sheet 2 of/ })).toContainText('Bend call-outs')
    await page.getByRole('radio', { name: 'Double size' }).click()
    const frame = page.getByRole('region', { name: 'Sheet 2, scrolls' })
    await frame.focus()
    const width = await frame.evaluate((element) => [element.scrollWidth, element.clientWidth])
    expect(width[0]).toBeGreaterThan(width[1] ?? 0)
  })

  await test.step('files', async () => {
    const pdf = await readDownload(page, /All sheets/)
    expect(pdf.download.suggestedFilename()).toBe('skua-b-drawing.pdf')
    expect(pdf.text.slice(0, 5)).toBe('%PDF-')
    const paper = await readDownload(page, /Paper model, A4/)
    expect(paper.download.suggestedFilename()).toBe('skua-b-paper-a4-model.pdf')
    expect(paper.text.slice(0, 5)).toBe('%PDF-')
    const svg = await readDownload(page, /Sheet 2 \(SVG\)/)
    expect(svg.download.suggestedFilename()).toBe('skua-b-sheet-2.svg')
    expect(svg.text).toContain('width="420mm" height="297mm"')
  })

  await test.step('each question leads to where it is answered', async () => {
    await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/drawing`)
    const gaps = page.getByRole('region', { name: 'What a fabricator would still ask' })
    await expect(gaps.getByRole('heading', { level: 2 })).toBeVisible()
    const question = gaps.getByRole('link').first()
    await expect(question).toHaveAttribute('href', /\/(brief|construction|bends|features)/)
  })
})

test('a fabricator sees the drawing of a revision that is shared with them', async ({ demo, openAs }) => {
  const page = await openAs('ostrel')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}`)
  await page.getByRole('link', { name: 'Drawing' }).click()
  await expect(page.getByRole('img', { name: /^Drawing sheet 1 of/ })).toContainText('Layers from the top face')
  const pdf = await readDownload(page, /All sheets/)
  expect(pdf.text.slice(0, 5)).toBe('%PDF-')
  // A proposal of the other fabricator's was accepted: the person who made it is among the creators for the team only.
  const svg = await readDownload(page, /SVG/)
  expect(svg.text).toContain('Ines Vantongeren')
  expect(svg.text).not.toContain('Oskar Thornvale')
})
