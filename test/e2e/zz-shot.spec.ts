import { test } from './fixtures'
for (const theme of ['light','dark'] as const) test('shot '+theme, async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.setViewportSize({ width: 1360, height: 1000 })
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/bends`)
  if (theme==='dark') await page.evaluate(()=>document.documentElement.setAttribute('data-theme','dark'))
  const section = page.getByRole('region', { name: 'Remedies' })
  await section.getByRole('button', { name: 'Find remedies' }).click()
  await section.locator('svg[role="img"]').waitFor()
  await page.waitForTimeout(800)
  await section.screenshot({ path: `/tmp/rem-${theme}.png` })
  await section.getByRole('button', { name: /^Try it/ }).nth(0).click()
  await page.waitForTimeout(1500)
  await page.screenshot({ path: `/tmp/rem-dialog-${theme}.png` })
  if (theme==='light') { await page.keyboard.press('Escape'); await page.setViewportSize({ width: 390, height: 800 }); await page.waitForTimeout(800); await section.screenshot({ path: '/tmp/rem-phone.png' }) }
})
