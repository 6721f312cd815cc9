import { expect, test } from './fixtures'

test('the built application answers, keeps the console quiet and gives no page to strangers', async ({ page }) => {
  const strayLines: string[] = []
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) strayLines.push(message.text())
  })
  page.on('pageerror', (error) => strayLines.push(error.message))

  const response = await page.goto('/')
  expect(response?.ok()).toBe(true)
  await expect(page).toHaveURL(/\/sign-in/)
  await expect(page.getByRole('main')).toBeVisible()
  expect(response?.headers()['content-security-policy']).toContain("default-src 'self'")
  expect(strayLines).toEqual([])
})
