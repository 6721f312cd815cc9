import { readFile } from 'node:fs/promises'
import AxeBuilder from '@axe-core/playwright'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'
import { pick, saveDesign } from './steps'

/** A newcomer draws a plan by number and by pointer, sees what follows, undoes, saves, reopens, and takes a drawing over. */

/** A DXF with an outline of lines in inches, a fold line, and a text that no plan has. */
const DXF = [
  ['0 SECTION', '2 HEADER', '9 $INSUNITS', '70 1', '0 ENDSEC', '0 SECTION', '2 ENTITIES'],
  ...[
    [0, 0, 2, 0],
    [2, 0, 2, 1],
    [2, 1, 0, 1],
    [0, 1, 0, 0],
  ].map(([x1, y1, x2, y2]) => ['0 LINE', '8 PROFILE', `10 ${x1}`, `20 ${y1}`, `11 ${x2}`, `21 ${y2}`]),
  ['0 LINE', '8 FOLD', '10 1', '20 0', '11 1', '21 1', '0 TEXT', '8 NOTES', '1 hello', '0 ENDSEC', '0 EOF'],
]
  .flat()
  .map((pair) => pair.replace(' ', '\n'))
  .join('\n')

async function typePoint(page: Page, x: number, y: number): Promise<void> {
  const form = page.getByRole('form', { name: /^Draw:/ })
  await form.getByLabel(/^x,/).fill(String(x))
  await form.getByLabel(/^y,/).fill(String(y))
  await page.keyboard.press('Enter')
}

/** Where a place of the plan is on screen, by what the drawing says it shows. */
async function pixelOf(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const canvas = page.locator('.plan-canvas')
  await canvas.scrollIntoViewIfNeeded()
  const box = await canvas.boundingBox()
  const [left = 0, top = 0, width = 1, height = 1] = ((await canvas.getAttribute('viewBox')) ?? '')
    .split(' ')
    .map(Number)
  if (box === null) throw new Error('no drawing')
  return { x: box.x + ((x - left) / width) * box.width, y: box.y + ((-y - top) / height) * box.height }
}

async function clickAt(page: Page, x: number, y: number): Promise<void> {
  const at = await pixelOf(page, x, y)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.up()
}

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .exclude('[data-live-announcer]')
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
}

test('a newcomer draws an L with a bend that does not fit, undoes, saves, reopens, and takes a drawing over', async ({
  backstage,
  openAs,
}) => {
  test.setTimeout(300_000)
  const by = CAST.designer.email
  const projectId = await backstage.act('makeProject', {
    name: `Plan ${Date.now()}`,
    lead: CAST.lead.email,
    team: { [by]: 'member' },
  })
  const order = { projectId, by, label: 'A', design: 'skua-rev-b' as const, withoutPlan: true }
  const revisionId = await backstage.act('makeRevision', order)
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/plan`)

  // A shape to begin with.
  const begin = page.getByRole('region', { name: 'Begin a plan' })
  await pick(begin, /Shape/, 'L')
  await begin.getByLabel(/^Width of an arm/).fill('16')
  await begin.getByRole('button', { name: 'Begin with this shape' }).click()
  await expect(begin).toBeHidden()
  const list = page.getByRole('region', { name: 'What is drawn' })
  await expect(list.getByRole('button', { name: 'Outline' })).toBeVisible()

  // By number and keyboard: a line that divides it, and what the two areas are.
  await page.getByRole('button', { name: 'Dividing line', exact: true }).focus()
  await page.keyboard.press('Enter')
  await typePoint(page, 24, 0)
  await typePoint(page, 24, 16)
  await page.getByRole('button', { name: 'Finish' }).focus()
  await page.keyboard.press('Enter')
  await expect(list.getByRole('button', { name: 'Dividing line 1' })).toBeVisible()
  await page.getByRole('button', { name: 'Area mark', exact: true }).click()
  await page
    .getByRole('form', { name: /^Draw:/ })
    .getByLabel('Zone')
    .selectOption('hinge')
  await typePoint(page, 50, 8)
  await page
    .getByRole('form', { name: /^Draw:/ })
    .getByLabel('Zone')
    .selectOption('controller')
  await typePoint(page, 8, 30)
  await page.getByRole('button', { name: 'Choose and move' }).click()
  const sizes = page.getByRole('region', { name: 'Sizes of areas and bends' })
  // 60 - 24 by 16: nobody typed it.
  await expect(sizes.getByRole('row', { name: /^Area 1 / })).toContainText(/36(\.0*)?.*16(\.0*)?/)

  // By pointer: a bend whose band reaches past the end of the part.
  await page.getByRole('button', { name: 'Bend line', exact: true }).click()
  await page
    .getByRole('form', { name: /^Draw:/ })
    .getByLabel('Bend')
    .selectOption('hinge')
  await clickAt(page, 56, 0)
  await clickAt(page, 56, 16)
  const findings = page.getByRole('region', { name: 'Findings' })
  await expect(list.locator('summary', { hasText: 'Bend lines' })).toBeVisible()
  const misfit = findings.getByRole('listitem').filter({ hasText: 'Fails' }).filter({ hasText: /Hinge/ })
  await expect(misfit.first()).toBeVisible()
  await expectAccessible(page)
  await page.getByRole('button', { name: 'Undo' }).first().click()
  await expect(list.locator('summary', { hasText: 'Bend lines' })).toBeHidden()

  // Again, nearer to the middle, and moved by arrow keys from the list.
  await page.getByRole('button', { name: 'Bend line', exact: true }).click()
  await page
    .getByRole('form', { name: /^Draw:/ })
    .getByLabel('Bend')
    .selectOption('hinge')
  await typePoint(page, 41, 0)
  await typePoint(page, 41, 16)
  await list.locator('summary', { hasText: 'Bend lines' }).locator('xpath=..').getByRole('button').first().focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('region', { name: 'Chosen' }).getByLabel('From, x')).toHaveValue('42')

  // Dragged by pointer, it is one step of undo.
  const [from, to] = [await pixelOf(page, 42, 8), await pixelOf(page, 40, 8)]
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move((from.x + to.x) / 2, from.y, { steps: 4 })
  await page.mouse.move(to.x, to.y, { steps: 4 })
  await page.mouse.up()
  await expect(page.getByRole('region', { name: 'Chosen' }).getByLabel('From, x')).toHaveValue('40')
  await page.getByRole('button', { name: 'Undo' }).first().click()
  await expect(page.getByRole('region', { name: 'Chosen' }).getByLabel('From, x')).toHaveValue('42')
  await saveDesign(page)
  await page.reload()
  await expect(list.getByRole('button', { name: 'Dividing line 1' })).toBeVisible()
  await expect(sizes.getByRole('row', { name: /^Area 1 / })).toContainText(/36(\.0*)?.*16(\.0*)?/)

  // A file that is none is refused with its reason; one that is shows what comes of it before it is taken over.
  const file = page.getByLabel('Drawing file to import')
  await file.setInputFiles({ name: 'none.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from('hello') })
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('alert')).toContainText('not a DXF file')
  await page.keyboard.press('Escape')
  await file.setInputFiles({ name: 'part.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from(DXF) })
  await expect(dialog).toContainText('The file is drawn in inches.')
  await expect(dialog).toContainText('Its name holds "PROFILE".')
  await expect(dialog).toContainText('1 × TEXT: not drawn in a plan, passed over')
  await expect(dialog.getByRole('img', { name: 'What the file adds' })).toBeVisible()
  await dialog.getByRole('button', { name: 'Add to the plan' }).click()
  await list.getByRole('button', { name: 'Outline' }).click()
  await expect(page.getByRole('region', { name: 'Chosen' }).getByLabel('Point 2, x')).toHaveValue('50.8')
  await page.getByRole('button', { name: 'Undo' }).first().click()
  await expect(page.getByRole('region', { name: 'Chosen' }).getByLabel('Point 2, x')).toHaveValue('60')

  // Out again: both files.
  for (const [name, start] of [
    ['Export DXF', '  0'],
    ['Export SVG', '<svg'],
  ] as const) {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()])
    const stream = await download.createReadStream()
    const chunks: Buffer[] = []
    for await (const chunk of stream) chunks.push(chunk as Buffer)
    expect(Buffer.concat(chunks).toString('utf8').startsWith(start)).toBe(true)
  }
})

test('who may not edit sees the plan and changes nothing', async ({ openAs, demo }) => {
  const page = await openAs('observer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/plan`)
  await expect(page.getByRole('region', { name: 'Plan', exact: true })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Bend line', exact: true })).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Import DXF or SVG' })).toHaveCount(0)
})

test('the part is seen folded: bend by bend, from each side, and in space', async ({ openAs, demo, consoleWatch }) => {
  // The browser's own remark on pictures that a test takes of what a graphics card would draw.
  consoleWatch.expect(/GPU stall due to ReadPixels/)
  const page = await openAs('lead')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/plan`)
  const folded = page.getByRole('region', { name: 'Folded' })
  const slider = folded.getByRole('slider', { name: /How far it is folded/ })
  await expect(folded.getByRole('status').or(folded.locator('output'))).toHaveText('Folded.')
  const drawing = folded.getByRole('img', { name: /Part folded/ })
  const boxOf = async () => (await drawing.getAttribute('viewBox')) ?? ''
  const whole = await boxOf()
  await slider.focus()
  await page.keyboard.press('Home')
  await expect(folded.locator('output')).toHaveText('Flat.')
  expect(await boxOf()).not.toBe(whole)
  await page.keyboard.press('ArrowRight')
  await expect(folded.locator('output')).toHaveText(/^0 of 2 bends made, .* on the way\.$/)
  await folded.getByRole('radio', { name: 'Front' }).click()
  await page.keyboard.press('Tab')
  await expect(drawing).toBeVisible()
  await expectAccessible(page)
  await folded.getByRole('button', { name: 'Turn it in space' }).click()
  const space = folded.getByRole('img', { name: /in space/ })
  await expect(space.or(folded.getByText('This browser draws nothing in space'))).toBeVisible()
  await expect(folded.getByRole('button', { name: 'Turn left' })).toBeVisible()
  const before = await space.screenshot()
  await folded.getByRole('button', { name: 'Turn left' }).click()
  await expect.poll(async () => before.equals(await space.screenshot())).toBe(false)
  await folded.getByRole('radio', { name: 'Perspective' }).click()
  await expectAccessible(page)
})

test('the folded part is handed over as glTF and STEP', async ({ openAs, demo }) => {
  const page = await openAs('lead')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/drawing`)
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Folded part (glTF)' }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/folded\.glb$/)
  const bytes = await readFile(await file.path())
  expect(bytes.subarray(0, 4).toString()).toBe('glTF')
  expect(bytes.readUInt32LE(8)).toBe(bytes.length)
  for (const [name, fileName] of [
    ['Folded part (STEP)', /folded\.step$/],
    ['Flat part (STEP)', /flat\.step$/],
  ] as const) {
    const [step] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name }).click()])
    expect(step.suggestedFilename()).toMatch(fileName)
    const text = await readFile(await step.path(), 'utf8')
    expect(text.startsWith('ISO-10303-21;')).toBe(true)
    expect(text).toContain('MANIFOLD_SOLID_BREP')
  }
})

test('all that an entry of the plan says is typed beside the drawing, and an array is drawn', async ({
  backstage,
  openAs,
}) => {
  test.setTimeout(180_000)
  const by = CAST.designer.email
  const projectId = await backstage.act('makeProject', {
    name: `Fields ${Date.now()}`,
    lead: CAST.lead.email,
    team: { [by]: 'member' },
  })
  const revisionId = await backstage.act('makeRevision', { projectId, by, label: 'A', design: 'skua-rev-b' as const })
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/${revisionId}/plan`)
  const drawn = page.getByRole('region', { name: 'What is drawn' })
  const chosen = page.getByRole('region', { name: 'Chosen' })

  // A column of holes becomes a pattern: counts and the step.
  await drawn
    .getByRole('listitem')
    .filter({ hasText: /^Holes/ })
    .getByRole('button')
    .first()
    .click()
  await chosen.getByLabel('Columns', { exact: true }).fill('2')
  await chosen.getByRole('button', { name: 'State step between columns' }).click()
  await chosen.getByLabel('Step between columns, x').fill('2.5')
  await chosen.getByLabel('Step between columns, x').press('Enter')
  await expect(chosen.getByLabel('Step between columns, x')).toHaveValue('2.5')

  // A dimension by number, with its tolerance.
  await page.getByRole('button', { name: 'Dimension', exact: true }).click()
  await typePoint(page, 0, 0)
  await typePoint(page, 52, 0)
  const dimensions = drawn
    .getByRole('listitem')
    .filter({ hasText: /^Dimensions/ })
    .getByRole('button')
  await dimensions.last().click()
  await chosen.getByLabel('Tolerance, plus').fill('0.2')
  await expect(chosen.getByLabel('Direction')).toHaveValue('along-x')

  const array = page.getByRole('region', { name: 'Array', exact: true })
  await array.getByRole('button', { name: 'Remove the array' }).click()
  await array.getByRole('button', { name: 'Draw an array' }).click()
  await array.getByLabel('Columns', { exact: true }).fill('2')
  await array.getByLabel('Step between columns').fill('120')
  await array.getByRole('button', { name: 'Add a tab' }).click()
  await expectAccessible(page)
  await saveDesign(page)
  await page.reload()
  await expect(array.getByLabel('Step between columns')).toHaveValue('120')
  await expect(array.getByLabel('Tab 1, x')).toHaveValue('0')
})
