import { CAST } from '@/seed/sign-ins'
import { expect, test } from './fixtures'
import { choose } from './steps'

/** A limit like no other number, in millimetres: nothing that a team opens may hold it. */
const LIMIT_MM = 2.1937
const WRITTEN = ['2.1937', '2.194', '2193.7', '86.366', '86.37']

const TABS = [
  '',
  '/brief',
  '/construction',
  '/bends',
  '/features',
  '/drawing',
  '/fabrication',
  '/fabrication/panels',
  '/fabrication/cost',
  '/artwork',
  '/checklist',
  '/proposals',
  '/threads',
  '/sign-off',
  '/trail',
]

test('a company agrees to a project, lets it check designs against its limits, and shows none of them', async ({
  backstage,
  demo,
  openAs,
}) => {
  test.setTimeout(600_000)
  const lead = await openAs('lead')
  const projectName = `Checked head ${Date.now()}`
  const projectId = await backstage.act('makeProject', {
    name: projectName,
    lead: CAST.lead.email,
    team: { [CAST.observer.email]: 'observer' },
  })
  const limit = { by: CAST.brackenfold.email, companyId: demo.brackenfoldId, key: 'bendToRigidMm' }

  await test.step('typing the name lets nobody in: the company is asked', async () => {
    await lead.goto(`/projects/${projectId}/invite`)
    await choose(lead, 'Joins as', /^fabricator/)
    await lead.getByLabel('Fabricator’s company').fill('brackenfold circuits')
    await lead.getByRole('button', { name: 'Create link' }).click()
    await expect(lead.getByRole('status')).toContainText('Brackenfold Circuits was asked to take part')
    await expect(lead.getByLabel('Link', { exact: true })).toHaveCount(0)
    await lead.goto(`/projects/${projectId}`)
    await expect(lead.getByRole('row', { name: /Brackenfold Circuits/ })).toContainText('asked, awaiting consent')
  })

  await test.step('its administrator takes part, and lets the team check against its matrix and limits', async () => {
    const administrator = await openAs('brackenfold')
    await administrator.goto(`/companies/${demo.brackenfoldId}`)
    const part = administrator.getByRole('listitem').filter({ hasText: projectName })
    await expect(part).toContainText('asks you to take part')
    await part.getByRole('button', { name: 'Take part' }).click()
    await expect(part).toContainText('Matrix and limits not shared; shelf not shared; rates and panels not shared')
    await part.getByText(`Change what ${projectName} sees`).click()
    await choose(part, 'Capability matrix and limits', /^checked/)
    await part.getByRole('button', { name: 'Save sharing' }).click()
    await expect(part).toContainText('Matrix and limits checked, not shown')
    await part.getByRole('button', { name: `Bring ${CAST.brackenfold.name} into ${projectName}` }).click()
    await expect(part).toContainText(`In the project: ${CAST.brackenfold.name}`)
    await expect(administrator.getByRole('heading', { name: 'Verdicts changed by teams' })).toBeVisible()
  })

  try {
    await backstage.act('setCompanyLimit', { ...limit, value: LIMIT_MM })
    const order = { projectId, by: CAST.lead.email, label: 'A', design: 'skua-rev-b' as const }
    const revisionId = await backstage.act('makeRevision', order)
    const revision = `/projects/${projectId}/revisions/${revisionId}`

    await test.step('the team reads verdict and band, and no limit, on every page and in every file', async () => {
      await lead.goto(revision)
      await lead.getByRole('button', { name: 'Share with Brackenfold Circuits' }).click()
      await expect(lead.getByRole('button', { name: 'Stop sharing' })).toBeVisible()
      await lead.goto(`${revision}/checklist`)
      const observer = await openAs('observer')
      for (const page of [lead, observer]) {
        const files = [
          `/api/revisions/${revisionId}/results`,
          `/api/revisions/${revisionId}/design`,
          `/api/revisions/${revisionId}/remedy-bases`,
          `/api/revisions/${revisionId}/drawing?format=svg&sheet=1`,
        ]
        for (const address of [...TABS.map((tab) => `${revision}${tab}`), `/projects/${projectId}`, '/', ...files]) {
          const text = await (await page.request.get(address)).text()
          for (const written of WRITTEN) expect(text.includes(written), `${written} in ${address}`).toBe(false)
        }
      }
      const results = await (await lead.request.get(`/api/revisions/${revisionId}/results`)).text()
      expect(results).toContain('the limit of Brackenfold Circuits, which is not shown')
      // The lead also leads the demonstration's project, where Brackenfold shows its matrix and limits; what its pages hold back from a
      // team that may only be checked against is in the integration tests.
    })

    await test.step('the company’s own people read the limit', async () => {
      const own = await openAs('brackenfold')
      const text = await (await own.request.get(`/api/revisions/${revisionId}/results`)).text()
      expect(text).toContain(`${LIMIT_MM}`)
    })

    await test.step('a draft that is not saved says that it is checked when saved', async () => {
      await lead.goto(`${revision}/bends`)
      const main = lead.getByRole('main')
      await expect(main.getByText(/the limit of Brackenfold Circuits, which is not shown/).first()).toBeAttached()
      await lead.getByLabel('Inside radius', { exact: true }).fill('9 mm')
      await expect(main.getByText(/Checked when saved: Brackenfold Circuits/).first()).toBeAttached()
      expect(await lead.content()).not.toContain(`${LIMIT_MM}`)
    })
  } finally {
    await backstage.act('setCompanyLimit', { ...limit, value: null })
  }
})

test('the admin sees who a name stands for, and the attempt of the impostor is on record', async ({ openAs }) => {
  const admin = await openAs('admin')
  await admin.goto('/workspace/companies')
  await expect(admin.getByRole('heading', { name: /Brackenfold Circuits/ })).toBeVisible()
  await expect(admin.getByRole('main')).toContainText('Prices (declined)')
  const trail = await (await admin.request.get('/api/workspace/trail')).text()
  expect(trail).toContain('company-declined')
  expect(trail).toContain('sales.desk@throwaway.example')
  await admin.getByRole('link', { name: 'Workspace' }).first().click()
})
