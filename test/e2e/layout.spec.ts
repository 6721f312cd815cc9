import { expect, type Page, test } from './fixtures'

/** A phone, and the two widths at which the editor and its pictures stand side by side. */
const WIDTHS_PX = [390, 1280, 1440]

/**
 * What is wrong with the pictures of the open page: one that is wider than its place, a label that leaves what is shown of it,
 * labels over one another. Measured on the glyphs as the browser sets them.
 */
function listFaults(page: Page, title: RegExp): Promise<string[]> {
  return page.evaluate(
    ([source = '', flags]) => {
      const pattern = new RegExp(source, flags)
      const figures = [...document.querySelectorAll('figure.picture')].filter((figure) =>
        pattern.test(figure.querySelector('svg > title')?.textContent ?? ''),
      )
      if (figures.length === 0) return ['there is no such picture']
      return figures.flatMap((figure) => {
        const place = figure.getBoundingClientRect()
        const faults: string[] = []
        if (figure.scrollWidth > figure.clientWidth) {
          faults.push(`needs ${figure.scrollWidth} px and has ${figure.clientWidth}`)
        }
        const labels = [...figure.querySelectorAll('svg text')]
          .filter((label) => label.querySelector('text, tspan') === null && (label.textContent ?? '').trim() !== '')
          .map((label) => ({ text: label.textContent ?? '', box: label.getBoundingClientRect() }))
        if (labels.length < 3) faults.push('has no labels')
        for (const { text, box } of labels) {
          if (box.left < place.left - 0.5 || box.right > place.right + 0.5) faults.push(`"${text}" is cut`)
          if (text.includes('…')) faults.push(`"${text}" is shortened`)
        }
        labels.forEach((a, at) => {
          for (const b of labels.slice(at + 1)) {
            const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
            // The box of a line of text has room above and below its glyphs.
            const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
            if (across > 1 && down > 0.4 * Math.min(a.box.height, b.box.height))
              faults.push(`"${a.text}" over "${b.text}"`)
          }
        })
        return faults
      })
    },
    [title.source, title.flags],
  )
}

/** Opens the page again at each width: a picture is measured as it is first drawn. */
async function checkAtEveryWidth(page: Page, title: RegExp, prepare: () => Promise<void>): Promise<void> {
  for (const width of WIDTHS_PX) {
    await page.setViewportSize({ width, height: 900 })
    await prepare()
    await expect
      .poll(() => listFaults(page, title), { message: `${title} at ${width} px`, timeout: 15_000 })
      .toEqual([])
  }
}

test('the sections of a part of five zones are whole beside the editor and on a phone', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await checkAtEveryWidth(page, /^Section/, async () => {
    await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/construction`)
    await expect(page.getByRole('img', { name: /^Section along the part/ })).toBeVisible()
    for (const name of ['Controller', 'Hinge', 'Sensor', 'Link', 'Optics']) {
      await expect(page.locator('figure.picture svg text').filter({ hasText: name }).first()).toBeVisible()
    }
  })
})

test('the labels of outline and remedies are whole and apart', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await checkAtEveryWidth(page, /outline/i, async () => {
    await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaB}/features`)
    await expect(page.getByRole('img', { name: /outline/i }).first()).toBeVisible()
  })
  await checkAtEveryWidth(page, /remed/i, async () => {
    await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/bends`)
    await page.getByRole('button', { name: 'Find remedies' }).first().click()
    await expect(page.getByRole('img', { name: /remed/i }).first()).toBeVisible({ timeout: 120_000 })
  })
})

test('no part of a line of the checklist passes its right edge on a phone', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  for (const width of [320, 390]) {
    await page.setViewportSize({ width, height: 900 })
    for (const revisionId of [demo.skuaA, demo.skuaB]) {
      await page.goto(`/projects/${demo.skuaId}/revisions/${revisionId}/checklist`)
      await expect(page.locator('.item-line').first()).toBeVisible()
      const past = await page.locator('.item-line').evaluateAll((lines) =>
        lines.flatMap((line) => {
          const edge = line.getBoundingClientRect().right
          return [...line.querySelectorAll('*')]
            .filter((part) => part.getBoundingClientRect().right > edge + 0.5)
            .map((part) => part.textContent ?? '')
        }),
      )
      expect(past, `${width} px`).toEqual([])
    }
  }
})
