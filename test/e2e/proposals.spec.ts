import AxeBuilder from '@axe-core/playwright'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'
import { pick } from './steps'

/** A fabricator proposes a change in the editor, the team sees what it would come to, and accepts it. */

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

async function expectAccessible(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle')
  // What the component library is just saying aloud may name a choice whose dialog has closed; it is gone in seconds.
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).exclude('[data-live-announcer]').analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([])
}

test('a fabricator proposes, the team compares and accepts; what no longer applies is refused with its reason', async ({
  backstage,
  consoleWatch,
  openAs,
}) => {
  test.setTimeout(300_000)
  consoleWatch.expect(/status of 404/)
  const name = `Skua proposals ${Date.now()}`
  const projectId = await backstage.act('makeProject', {
    name,
    lead: CAST.lead.email,
    team: { [CAST.designer.email]: 'member' },
    fabricators: { [CAST.brackenfold.email]: 'Brackenfold Circuits', [CAST.ostrel.email]: 'Ostrel Flexible' },
  })
  const revisionId = await backstage.act('makeRevision', {
    projectId,
    by: CAST.designer.email,
    label: 'A',
    design: 'skua-rev-b',
  })
  await backstage.act('shareAndAdvance', { revisionId, lead: CAST.lead.email })
  const address = `/projects/${projectId}/revisions/${revisionId}`
  const [fabricator, rival, lead] = [await openAs('brackenfold'), await openAs('ostrel'), await openAs('lead')]
  const before = await backstage.act('readRevision', { revisionId, as: CAST.lead.email })
  const hinge = before.design.bends[0]
  if (hinge === undefined) throw new Error('the demo design has no bend')

  const proposeRadius = async (page: Page, radius: string, title: string) => {
    await page.goto(`${address}/bends`)
    await page.getByRole('button', { name: 'Propose a change' }).click()
    await page.getByLabel('Inside radius', { exact: true }).fill(radius)
    await expect(page.locator('.save-state')).toContainText('not proposed yet')
    await page.getByRole('button', { name: 'Propose these changes' }).click()
    const dialog = page.getByRole('dialog')
    await expect(dialog).toContainText(`bend ${hinge.name} inside radius ${hinge.insideRadiusMm} mm to`)
    await dialog.getByLabel('Subject').fill(title)
    await dialog.getByLabel('Why').fill('Our former has no smaller step.')
    await pick(dialog, 'Kind', 'must change')
    await dialog.getByRole('button', { name: 'Propose', exact: true }).click()
    await expect(page).toHaveURL(/\/proposals\/[0-9a-f-]+$/)
  }

  await test.step('the fabricator, who may not save, proposes an edit made in the editor', async () => {
    await proposeRadius(fabricator, '6 mm', 'Hinge on the 6 mm former')
    await expect(fabricator.getByRole('heading', { name: 'Hinge on the 6 mm former' }).first()).toBeVisible()
    await expectAccessible(fabricator)
    const { designHash } = await backstage.act('readRevision', { revisionId, as: CAST.lead.email })
    expect(designHash).toBe(before.designHash)
  })

  await test.step('another fabricator sees nothing of it', async () => {
    await rival.goto(`${address}/proposals`)
    await expect(rival.getByText('No changes have been proposed')).toBeVisible()
    await rival.goto(new URL(fabricator.url()).pathname)
    await expect(rival.getByText('Hinge on the 6 mm former')).toHaveCount(0)
  })

  await test.step('the lead sees inputs and verdicts that would move, and narrows the comparison by its address', async () => {
    await lead.goto(`${address}/proposals`)
    await lead.getByRole('link', { name: 'Hinge on the 6 mm former' }).click()
    const inputs = lead.getByRole('region', { name: 'Differing inputs' })
    await expect(inputs.first()).toContainText(`inside radius ${hinge.insideRadiusMm} mm to 6 mm`)
    await expect(lead.getByRole('region', { name: 'Verdicts that changed' }).first()).toContainText('Fails')
    await lead.getByRole('link', { name: 'Compare as proposed' }).click()
    await expect(lead).toHaveURL(/\/compare\?from=base/)
    await expectAccessible(lead)
    await lead.getByRole('radio', { name: /^Verdicts/ }).click()
    await expect(lead).toHaveURL(/show=verdicts/)
    await expect(lead.getByRole('heading', { name: 'Differing inputs' })).toHaveCount(0)
    await lead.reload()
    await expect(lead.getByRole('heading', { name: 'Verdicts that changed' })).toBeVisible()
    await expect(lead.getByRole('heading', { name: 'Differing inputs' })).toHaveCount(0)
  })

  await test.step('the lead accepts it, with the reason on record', async () => {
    await lead.goto(new URL(fabricator.url()).pathname)
    await lead.getByRole('button', { name: 'Accept', exact: true }).click()
    await lead.getByRole('button', { name: 'Accept the change' }).click()
    await expect(lead.getByText('is empty')).toBeVisible()
    await lead.getByLabel('Reason for accepting').fill('The housing has room for it.')
    await lead.getByRole('button', { name: 'Accept the change' }).click()
    await expect(lead.getByRole('button', { name: 'Accept the change' })).toHaveCount(0)
    await expect(lead.locator('dl').getByText('The housing has room for it.')).toBeVisible()
    const after = await backstage.act('readRevision', { revisionId, as: CAST.lead.email })
    expect(after.design.bends[0]?.insideRadiusMm).toBe(6)
    expect(after.proposals[0]).toMatchObject({ state: 'accepted', madeVersion: after.designVersion })
  })

  await test.step('a proposal that the design has left behind says which operation does not apply, and why', async () => {
    await fabricator.goto(`${address}/bends`)
    await fabricator.getByRole('button', { name: 'Propose a change' }).click()
    await fabricator.getByLabel('Inside radius', { exact: true }).fill('7 mm')
    await fabricator.getByRole('button', { name: 'Propose these changes' }).click()
    const dialog = fabricator.getByRole('dialog')
    await dialog.getByLabel('Subject').fill('Hinge at 7 mm')
    await dialog.getByLabel('Why').fill('Measured on the first part.')
    await dialog.getByRole('button', { name: 'Propose', exact: true }).click()
    await expect(fabricator).toHaveURL(/\/proposals\/[0-9a-f-]+$/)
    await backstage.act('importDesign', { revisionId, by: CAST.designer.email, design: 'skua-rev-b' })
    await lead.goto(new URL(fabricator.url()).pathname)
    await expect(lead.getByText('This proposal no longer applies.')).toBeVisible()
    await expect(lead.getByText(/operation 2 of 3 .*the proposal was made on 6 mm, the design now has/)).toBeVisible()
    await expect(lead.getByRole('button', { name: 'Accept', exact: true })).toBeDisabled()
    await expectAccessible(lead)
  })
})
