import { CAST } from '@/seed/sign-ins'
import { expect, test } from './fixtures'

/** What the server answers, whatever the screen would have let somebody send. */

test('the trail of a revision is a file for its readers, and for nobody else', async ({
  openAs,
  openAsVisitor,
  demo,
}) => {
  const address = (format: string) => `/api/revisions/${demo.pipitA}/trail?format=${format}`
  const ask = async (page: Awaited<ReturnType<typeof openAs>>, format: string) =>
    page.context().request.get(address(format), { maxRedirects: 0, failOnStatusCode: false })
  const auditor = await openAs('auditor')
  const csv = await ask(auditor, 'csv')
  expect([csv.status(), csv.headers()['content-type']]).toEqual([200, 'text/csv; charset=utf-8'])
  expect(await csv.text()).toContain('declared design and artwork reviewed')
  const pdf = await ask(auditor, 'pdf')
  expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-')
  expect((await ask(auditor, 'exe')).status()).toBe(404)
  expect((await ask(await openAs('ostrel'), 'csv')).status()).toBeGreaterThanOrEqual(400)
  expect((await ask(await openAs('brackenfold'), 'csv')).status()).toBe(404)
  expect((await ask(await openAsVisitor(), 'csv')).status()).toBe(401)
})

test('an auditor reads a revision to its end and finds nothing to change', async ({ openAs, demo }) => {
  const page = await openAs('auditor')
  const url = `/projects/${demo.skuaId}/revisions/${demo.skuaB}`
  await page.goto(`${url}/trail?act=item-answered`)
  await expect(page.getByRole('status').filter({ hasText: /of \d+ records/ })).toBeVisible()
  await page.goto(`${url}/sign-off`)
  await expect(page.getByText('Authors of design and artwork')).toBeVisible()
  await expect(page.getByRole('button', { name: /Sign|Release|Declare|Withdraw|Follow|Move/ })).toHaveCount(0)
  await page.goto(`${url}/checklist`)
  await expect(page.getByRole('button', { name: /Record|Propose/ })).toHaveCount(0)
})

test('the demonstration was made by some, reviewed by another and approved by a third', async ({ openAs, demo }) => {
  const page = await openAs('auditor')
  await page.goto(`/projects/${demo.pipitId}/revisions/${demo.pipitA}/sign-off`)
  const main = page.getByRole('main')
  await expect(main.getByText(/Authors of design and artwork/)).toContainText(CAST.mechanical.name)
  await expect(main.getByText(/Authors of design and artwork/)).toContainText(CAST.designer.name)
  await expect(main.getByText(/Authors of design and artwork/)).not.toContainText(CAST.lead.name)
  await expect(main.locator('.signatures').filter({ hasText: CAST.quality.name }).first()).toContainText(
    'on the present content',
  )
  await expect(main.locator('.signatures').filter({ hasText: 'lead engineer' })).toContainText(CAST.lead.name)
  await expect(main.getByText('looser than usual')).toHaveCount(0)
})

test('a capacity that was not granted signs nothing, however the request is written', async ({
  openAs,
  backstage,
  consoleWatch,
}) => {
  consoleWatch.expect(/status of 40/)
  const lead = CAST.lead.email
  const projectId = await backstage.act('makeProject', { name: `Titles ${Date.now()}`, lead })
  const page = await openAs('lead')
  // Nobody grants a capacity to themselves while somebody else could.
  await page.goto(`/projects/${projectId}/capacities`)
  const form = page.getByRole('form', { name: 'Grant a capacity' })
  await form.getByRole('button', { name: /Person/ }).click()
  await page.getByRole('option', { name: /Halka Brannoch/ }).click()
  await form.getByLabel('Capacity').fill('Chief Medical Officer')
  await form.getByLabel('What the person answers for in it').fill('Answers for the patients.')
  await form.getByRole('button', { name: 'Grant', exact: true }).click()
  await expect(page.getByText('another lead or an admin must grant it')).toBeVisible()
  // Somebody outside the project who is no admin learns nothing of it.
  const strange = await (await openAs('brackenfold')).goto(`/projects/${projectId}/capacities`)
  expect(strange?.status()).toBe(404)
  const admin = await openAs('admin')
  await admin.goto(`/projects/${projectId}/capacities`)
  await expect(admin.getByRole('cell', { name: 'lead engineer', exact: true })).toBeVisible()
  expect((await admin.goto(`/projects/${projectId}`))?.status()).toBe(404)
})
