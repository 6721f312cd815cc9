import { CAUTIONS } from '@/lib/engine/cautions'
import { expect, type Page, test } from './fixtures'

async function expectCautions(page: Page, path: string) {
  await page.goto(path)
  const list = page.getByRole('main').getByRole('list', { name: 'Cautions' }).first()
  await expect(list.getByRole('listitem')).toHaveText([...CAUTIONS])
}

test('results never leave without their cautions: on screen, as JSON, and on a single sheet', async ({
  openAs,
  demo,
}) => {
  const designer = await openAs('designer')
  const revision = `/projects/${demo.skuaId}/revisions/${demo.skuaB}`
  await expectCautions(designer, revision)
  await expectCautions(designer, `${revision}/drawing`)
  await expectCautions(designer, `/projects/${demo.pipitId}/revisions/${demo.pipitA}/sign-off`)
  await expect(designer.getByRole('link', { name: 'Download the package' })).toBeVisible()

  const results = await (await designer.request.get(`/api/revisions/${demo.skuaB}/results`)).json()
  expect(results.cautions).toEqual(CAUTIONS)
  expect(results.sources.fatigueDuctility.kind).toBe('quoted')

  const answer = await designer.request.get(`/api/revisions/${demo.skuaB}/drawing?format=svg&sheet=1`)
  const words = [...(await answer.text()).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text).join(' ')
  for (const caution of CAUTIONS) expect(words).toContain(caution)

  // A limit that only a guide quotes says so where the checklist shows whose it is.
  await designer.goto(`${revision}/checklist`)
  await expect(designer.getByRole('main')).not.toContainText(/IPC-\d+[A-Z]? \(published\)/)
})
