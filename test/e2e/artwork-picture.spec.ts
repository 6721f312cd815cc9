import { readdirSync, readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import { zipSync } from 'fflate'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'

/** The layers of the artwork over the plan: opened, moved by keys, switched, led by findings, measured, and asked about. */

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .exclude('[data-live-announcer]')
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
}

const countTriangles = async (page: Page): Promise<number> =>
  Number(await page.locator('[data-triangles]').getAttribute('data-triangles'))

test('the layers lie over the plan, and findings lead to their places', async ({ openAs, demo }) => {
  const page = await openAs('lead')
  await page.goto(`/projects/${demo.pipitId}/revisions/${demo.pipitA}/artwork`)
  const part = page.getByRole('region', { name: 'Layers over the plan' })
  const picture = part.getByRole('application')
  await expect(picture).toHaveAttribute('data-painter', /WebGL 2|plain canvas/)
  await expect.poll(() => countTriangles(page)).toBeGreaterThan(100)
  await expectAccessible(page)

  // A layer goes and comes back; one can be seen alone.
  const all = await countTriangles(page)
  const before = await picture.screenshot()
  const layer = part.getByRole('checkbox', { name: /pipit-l1\.gbr/ })
  await layer.press('Space')
  await expect(layer).not.toBeChecked()
  expect(await countTriangles(page)).toBeLessThan(all)
  await expect.poll(async () => before.equals(await picture.screenshot())).toBe(false)
  await part.getByRole('button', { name: /^Alone ?: pipit-l1\.gbr$/ }).click()
  await expect(layer).toBeChecked()
  await expect(part.getByRole('checkbox', { name: /pipit-l2\.gbr/ })).not.toBeChecked()

  // By keyboard: nearer, to the right, over, and all of it again.
  await picture.focus()
  const shots = [await picture.screenshot()]
  for (const key of ['+', 'ArrowRight', 'f', '0']) {
    await page.keyboard.press(key)
    const last = shots.at(-1) as Buffer
    await expect.poll(async () => last.equals(await picture.screenshot()), key).toBe(false)
    shots.push(await picture.screenshot())
  }
  await expect(picture).toHaveAccessibleName(/from below, mirrored/)
  await part.getByRole('radio', { name: 'From above' }).click()
  await expect(picture).toHaveAccessibleName(/from above/)

  // A finding is shown, and leads to its item.
  const table = part.getByRole('table', { name: 'Findings in the artwork' })
  const row = table.getByRole('row').nth(1)
  const [x = '', y = ''] = (await row.getByRole('cell').allInnerTexts()).slice(-3)
  await row.getByRole('button', { name: /^Show/ }).click()
  await expect(part.getByRole('status')).toHaveText(`x ${x} mm, y ${y} mm of the plan`)
  await expect(picture.locator('[data-chosen]')).toHaveCount(1)
  await row.getByRole('link').click()
  await expect(page).toHaveURL(/\/checklist#item-/)

  // And back from there, at the same place.
  await page.getByRole('link', { name: 'Show it in the artwork' }).first().click()
  await expect(page).toHaveURL(/\/artwork\?in=\w+&at=/)
  await expect(part.getByRole('status')).toHaveText(/^x .* of the plan$/)
  await expect(picture.locator('[data-chosen]')).toHaveCount(1)

  // Measured by keyboard: from the middle, a known way to the right.
  await part.getByRole('button', { name: 'Measure' }).click()
  await picture.focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Enter')
  // Five mm lie across the shorter side, and a key moves by a tenth of it.
  await expect(part.getByRole('status')).toHaveText('0.5 mm; along x 0.5 mm, along y 0 mm')
  await expectAccessible(page)
})

test('without WebGL the same picture is drawn by the plain canvas, and said so', async ({ openAs, demo }) => {
  const page = await openAs('lead')
  await page.addInitScript(() => {
    const original = HTMLCanvasElement.prototype.getContext
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind === 'webgl2' ? null : Reflect.apply(original, this, [kind, ...rest])
    } as typeof original
  })
  await page.goto(`/projects/${demo.pipitId}/revisions/${demo.pipitA}/artwork`)
  const part = page.getByRole('region', { name: 'Layers over the plan' })
  await expect(part.getByText('This browser has no WebGL 2.')).toBeVisible()
  const inked = () =>
    part.locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] }
      let count = 0
      for (let at = 3; at < data.length; at += 4) if ((data[at] ?? 0) > 0) count += 1
      return count
    })
  await expect.poll(inked).toBeGreaterThan(1000)
})

test('somebody asks about a place in the artwork, and the place is marked', async ({ backstage, openAs }) => {
  test.setTimeout(240_000)
  const by = CAST.designer.email
  const projectId = await backstage.act('makeProject', {
    name: `Artwork ${Date.now()}`,
    lead: CAST.lead.email,
    team: { [by]: 'member' },
  })
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'pipit-rev-a' })
  const page = await openAs('designer')
  const address = `/projects/${projectId}/revisions/${revisionId}/artwork`
  await page.goto(address)
  const names = readdirSync('seed/artwork').filter((name) => name.startsWith('pipit'))
  const zip = zipSync(
    Object.fromEntries(names.map((name) => [name, new Uint8Array(readFileSync(`seed/artwork/${name}`))])),
  )
  await page.getByLabel('Add an artwork file').setInputFiles({
    name: 'pipit.zip',
    mimeType: 'application/zip',
    buffer: Buffer.from(zip),
  })
  await page.getByRole('button', { name: 'Add to the artwork' }).click()
  const part = page.getByRole('region', { name: 'Layers over the plan' })
  const picture = part.getByRole('application')
  await expect(picture).toBeVisible({ timeout: 90_000 })
  const box = await picture.boundingBox()
  if (box === null) throw new Error('no picture')
  await picture.click({ position: { x: box.width / 2 + 40, y: box.height / 2 } })
  await expect(part.getByRole('status')).toHaveText(/^x .* of the plan$/)
  await part.getByRole('link', { name: 'Ask or comment here' }).click()
  await expect(page).toHaveURL(/\/threads\?about=artwork/)
  const form = page.getByRole('region', { name: 'Ask or comment' })
  await expect(form.getByLabel(/^Place, x/)).not.toHaveValue('')
  await form.getByLabel('Subject').fill('Is this land large enough?')
  await form.getByLabel('Text').fill('It looks small beside the coverlay opening.')
  await form.getByRole('button', { name: 'Open the thread' }).click()
  await expect(page.getByRole('heading', { name: 'Is this land large enough?' })).toBeVisible()
  await page.goto(address)
  await expect(part.getByText('Squares mark places of threads.')).toBeVisible()
  await expect(picture.locator('.artwork-thread')).toHaveCount(1)
})
