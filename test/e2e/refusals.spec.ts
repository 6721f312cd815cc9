import { readFileSync } from 'node:fs'
import { zipSync } from 'fflate'
import { CAST } from '@/seed/sign-ins'
import type { Backstage } from './backstage'
import { expect, type Page, test } from './fixtures'
import { saveDesign } from './steps'

/** Bad input: refused in words that name field or reason; nothing is half-written, and what was typed stays. */

const DESIGNER = CAST.designer.email

interface Scene {
  readonly projectId: string
  readonly revisionId: string
  readonly url: string
}

async function makeScene(backstage: Backstage): Promise<Scene> {
  const name = `Refusals ${Date.now()}`
  const projectId = await backstage.act('makeProject', {
    name,
    lead: CAST.lead.email,
    team: { [DESIGNER]: 'member', [CAST.mechanical.email]: 'member' },
  })
  const revisionId = await backstage.act('makeRevision', { projectId, by: DESIGNER, label: 'A', design: 'skua-rev-b' })
  return { projectId, revisionId, url: `/projects/${projectId}/revisions/${revisionId}` }
}

const readSkua = () => JSON.parse(readFileSync(new URL('../../seed/designs/skua-rev-b.json', import.meta.url), 'utf8'))

interface LooseDesign {
  construction: {
    layers: { id: string; thicknessUm: number; materialId: string }[]
    zones: { id: string; kind: string; presence: { layerId: string }[] }[]
  }
  bends: { id: string; zoneId: string }[]
}

async function importFile(page: Page, name: string, content: Buffer): Promise<void> {
  await page.getByLabel('Design file to import').setInputFiles({ name, mimeType: 'application/json', buffer: content })
}

test('a negative thickness is refused beside its field, stays as typed, and is not stored', async ({
  backstage,
  openAs,
}) => {
  const { revisionId, url } = await makeScene(backstage)
  const before = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  const page = await openAs('designer')
  await page.goto(`${url}/construction`)
  const cell = page.getByLabel('Thickness, Flexible base film')
  await cell.fill('-25')
  await expect(cell).toHaveAttribute('aria-invalid', 'true')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  // The field writes the sign as every number on the page.
  await expect(cell).toHaveValue('−25')
  await expect(page.locator('.save-state')).toContainText('needs correction')
  const after = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  expect(after.designHash).toBe(before.designHash)
  await cell.fill('12,5')
  await expect(page.getByText('write decimals with a point').first()).toBeAttached()
  await cell.fill('20')
  await saveDesign(page)
})

const BAD_DESIGNS: readonly { name: string; spoil: (design: LooseDesign) => void; says: RegExp }[] = [
  {
    name: 'a layer that no zone has',
    spoil: ({ construction }) => {
      for (const zone of construction.zones) zone.presence = zone.presence.filter(({ layerId }) => layerId !== 'base')
    },
    says: /layers\S*\D+.*zone/,
  },
  {
    name: 'a bend in a rigid zone',
    spoil: ({ bends }) => {
      const [first] = bends
      if (first !== undefined) first.zoneId = 'controller'
    },
    says: /bends\S*.*rigid/,
  },
  {
    name: 'an unknown material',
    spoil: ({ construction }) => {
      const [first] = construction.layers
      if (first !== undefined) first.materialId = 'unobtainium'
    },
    says: /materialId.*unobtainium/,
  },
  {
    name: 'a negative thickness',
    spoil: ({ construction }) => {
      const [first] = construction.layers
      if (first !== undefined) first.thicknessUm = -25
    },
    says: /thicknessUm/,
  },
]

test('a design file with a fault is not taken, and the fault is named with its place', async ({
  backstage,
  openAs,
}) => {
  const { revisionId, url } = await makeScene(backstage)
  const before = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  const page = await openAs('designer')
  await page.goto(`${url}/construction`)
  for (const { name, spoil, says } of BAD_DESIGNS) {
    await test.step(name, async () => {
      const design = readSkua()
      spoil(design)
      await importFile(page, 'design.json', Buffer.from(JSON.stringify(design)))
      await expect(page.getByRole('alert').filter({ hasText: says })).toBeVisible()
    })
  }
  await test.step('a ZIP that calls itself JSON', async () => {
    const zip = Buffer.from(zipSync({ 'design.json': new TextEncoder().encode(JSON.stringify(readSkua())) }))
    await importFile(page, 'design.json', zip)
    await expect(page.getByRole('alert').filter({ hasText: /ZIP|archive|not JSON/i })).toBeVisible()
  })
  await test.step('5 MB of JSON', async () => {
    const text = JSON.stringify({ ...readSkua(), padding: 'x'.repeat(5_000_000) })
    await importFile(page, 'design.json', Buffer.from(text))
    await expect(page.getByRole('alert').filter({ hasText: /characters|bytes|large/ })).toBeVisible()
  })
  await test.step('truncated JSON', async () => {
    await importFile(page, 'design.json', Buffer.from(JSON.stringify(readSkua()).slice(0, 2000)))
    await expect(page.getByRole('alert').filter({ hasText: /JSON/ })).toBeVisible()
  })
  await expect(page.locator('.save-state')).toHaveText(/^Saved/)
  const after = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  expect(after.version).toBe(before.version)
})

test('a new revision from a faulty file is refused by the server with the place, and none is made', async ({
  backstage,
  openAs,
}) => {
  const { projectId } = await makeScene(backstage)
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('Z')
  await page.getByText('a design file (JSON)').click()
  const design = readSkua()
  design.bends[0].zoneId = 'controller'
  await page
    .getByLabel('Design file', { exact: true })
    .setInputFiles({ name: 'z.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(design)) })
  await page.getByRole('button', { name: 'Create revision' }).click()
  await expect(page.getByRole('main').getByRole('alert')).toContainText('bends')
  await expect(page.getByLabel('Label')).toHaveValue('Z')
  expect(await backstage.act('listRevisions', { projectId, as: DESIGNER })).toHaveLength(1)
})

test('a design that costs more than one evaluation may is refused by the server, and pages of others answer meanwhile', async ({
  backstage,
  openAs,
}) => {
  const { projectId, url } = await makeScene(backstage)
  const [page, other] = [await openAs('designer'), await openAs('mechanical')]
  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('Y')
  await page.getByText('a design file (JSON)').click()
  const design = readSkua()
  const fold = design.bends.at(-1)
  const zone = design.construction.zones.find(({ id }: { id: string }) => id === fold.zoneId)
  const base = design.construction.layers.find(({ id }: { id: string }) => id === 'base')
  for (let at = 0; at < 6; at += 1) {
    design.construction.layers.push({ ...base, id: `base-${at}`, name: `Base film ${at}` })
    zone.presence.push({
      ...zone.presence[0],
      layerId: `base-${at}`,
      coverageFraction: null,
      platedCopper: null,
      hatch: null,
    })
  }
  design.bends = Array.from({ length: 400 }, (_, at) => ({ ...fold, id: `fold-${at}`, name: `Fold ${at}` }))
  await page
    .getByLabel('Design file', { exact: true })
    .setInputFiles({ name: 'y.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(design)) })
  const answered = other.request.get(`${url}/bends`)
  await page.getByRole('button', { name: 'Create revision' }).click()
  await expect(page.getByRole('main').getByRole('alert')).toContainText('a design has at most 4000 layers in its bends')
  expect((await answered).status()).toBe(200)
  const after = await other.request.get(`${url}/bends`, { timeout: 5000 })
  expect(after.status()).toBe(200)
  expect(await backstage.act('listRevisions', { projectId, as: DESIGNER })).toHaveLength(1)
})

test('of two tabs on one design the second to save is told who was first and what changed', async ({
  backstage,
  openAs,
}) => {
  const { revisionId, url } = await makeScene(backstage)
  const [first, second] = [await openAs('mechanical'), await openAs('designer')]
  await first.goto(`${url}/construction`)
  await second.goto(`${url}/construction`)
  await second.getByLabel('Thickness, Upper rigid laminate').fill('160')
  await first.getByLabel('Thickness, Flexible base film').fill('20')
  await saveDesign(first)
  await second.getByRole('button', { name: 'Save', exact: true }).click()
  const notice = second.getByText(/Nothing was saved/)
  await expect(notice).toBeVisible()
  await expect(second.getByRole('main')).toContainText(CAST.mechanical.name)
  await expect(second.getByLabel('Thickness, Upper rigid laminate')).toHaveValue('160')
  const { design } = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  const thicknessOf = (id: string) => design.construction.layers.find((layer) => layer.id === id)?.thicknessUm
  expect([thicknessOf('base'), thicknessOf('laminate-top')]).toEqual([20, 150])

  await second.getByRole('button', { name: 'Compare with mine' }).click()
  await expect(second.getByRole('dialog')).toContainText('20')
  await second.getByRole('dialog').getByRole('button', { name: 'Load the stored design' }).click()
  await expect(second.getByLabel('Thickness, Flexible base film')).toHaveValue('20')
})

test('a double click on a button does it once', async ({ backstage, openAs }) => {
  const { projectId, revisionId, url } = await makeScene(backstage)
  const page = await openAs('designer')
  await page.goto(`/projects/${projectId}/revisions/new`)
  await page.getByLabel('Label').fill('twice')
  await page.getByRole('button', { name: 'Create revision' }).dblclick()
  await expect(page).toHaveURL(/\/construction$/)
  expect(await backstage.act('listRevisions', { projectId, as: DESIGNER })).toHaveLength(2)

  await page.goto(`${url}/threads`)
  await page.getByLabel('Subject').fill('Said once')
  await page.getByLabel('Text', { exact: true }).fill('and only once')
  await page.getByRole('button', { name: 'Open the thread' }).dblclick()
  await expect(page.getByRole('article')).toHaveCount(1)
  const { threads } = await backstage.act('readRevision', { revisionId, as: DESIGNER })
  expect(threads).toHaveLength(1)
})

test('an answer that would overrule a failed calculation cannot be given', async ({ openAs, demo }) => {
  const page = await openAs('designer')
  await page.goto(`/projects/${demo.skuaId}/revisions/${demo.skuaA}/checklist#item-fatigue-life`)
  const item = page.locator('#item-fatigue-life')
  await expect(item.getByRole('radio', { name: 'concern' })).toBeAttached()
  await expect(item.getByRole('radio', { name: 'meets', exact: true })).toHaveCount(0)
})

test('routes refuse strangers and other fabricators with a reason and no content', async ({
  openAs,
  openAsVisitor,
  demo,
}) => {
  const visitor = await openAsVisitor()
  const asked = `/api/revisions/${demo.skuaA}/design`
  const stranger = await visitor.request.get(asked)
  expect(stranger.status()).toBe(401)
  expect(await stranger.json()).toMatchObject({ error: { kind: 'signed-out' } })
  // Revision A was never shared with Ostrel: for them it does not exist.
  const ostrel = await openAs('ostrel')
  const refused = await ostrel.request.get(asked)
  expect(refused.status()).toBe(404)
  expect(JSON.stringify(await refused.json())).not.toContain('Brackenfold')
  const shared = await ostrel.request.get(`/api/revisions/${demo.skuaB}/design`)
  expect(shared.status()).toBe(200)
})

test('rates and shelves are no observer’s: remedies are priced for the team only', async ({ openAs, demo }) => {
  const asked = `/api/revisions/${demo.skuaB}/remedy-bases`
  const team = await openAs('designer')
  const priced = await (await team.request.get(asked)).text()
  expect(priced).toContain('Brackenfold Circuits')
  const observer = await openAs('observer')
  const answer = await observer.request.get(asked)
  expect(answer.status()).toBe(200)
  expect(await answer.text()).not.toContain('Brackenfold Circuits')
  for (const sheet of ['', '/limits', '/matrix', '/shelf', '/panels', '/rates']) {
    const page = await observer.request.get(`/companies/${demo.brackenfoldId}${sheet}`)
    expect(await page.text(), sheet).not.toContain('Brackenfold Circuits')
  }
})
