import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'

/** The one file that signs in through the form. */

const OWN = { name: 'Runa Feddersen', password: 'godwit-turning-tide', newPassword: 'godwit-slack-water' }

async function signInByForm(page: Page, email: string, password: string): Promise<void> {
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
}

test('signing in leads to the page that was asked for; signing out ends this device, and everywhere is a choice', async ({
  openAsVisitor,
  openAs,
  demo,
}) => {
  const [here, elsewhere] = [await openAsVisitor(), await openAs('mechanical')]
  await elsewhere.goto('/account')
  await expect(elsewhere.getByRole('heading', { name: CAST.mechanical.name })).toBeVisible()

  await here.goto(`/projects/${demo.pipitId}`)
  await expect(here).toHaveURL(/\/sign-in\?next=/)
  await signInByForm(here, CAST.mechanical.email, CAST.mechanical.password)
  await expect(here.getByRole('heading', { name: 'Pipit', exact: true })).toBeVisible()
  await here.reload()
  await expect(here.getByRole('heading', { name: 'Pipit', exact: true })).toBeVisible()

  await here.getByRole('button', { name: CAST.mechanical.name }).click()
  await here.getByRole('menuitem', { name: 'Sign out' }).click()
  await expect(here).toHaveURL(/\/sign-in/)
  await here.goto('/account')
  await expect(here).toHaveURL(/\/sign-in/)
  await elsewhere.reload()
  await expect(elsewhere.getByRole('heading', { name: CAST.mechanical.name })).toBeVisible()

  const third = await openAs('mechanical')
  await third.goto('/account')
  const devices = third.getByRole('region', { name: 'Devices' }).or(third.locator('section', { hasText: 'Last used' }))
  await expect(devices.first()).toContainText('this device')
  await third.getByRole('button', { name: 'Sign out everywhere' }).click()
  await third.getByRole('dialog').getByRole('button', { name: 'Sign out everywhere' }).click()
  await expect(third).toHaveURL(/\/sign-in/)
  await elsewhere.reload()
  await expect(elsewhere).toHaveURL(/\/sign-in/)
})

test('a wrong password and an unknown address are refused in the same words, and what was typed stays', async ({
  openAsVisitor,
  consoleWatch,
}) => {
  consoleWatch.expect(/status of 401/)
  const page = await openAsVisitor()
  await page.goto('/sign-in')
  const words: string[] = []
  for (const email of [CAST.observer.email, 'nobody@quillmoor.example']) {
    await signInByForm(page, email, 'not the password')
    await expect(page.getByRole('main').getByRole('alert')).toBeVisible()
    words.push((await page.getByRole('main').getByRole('alert').textContent()) ?? '')
    await expect(page.getByLabel('E-mail address')).toHaveValue(email)
    await page.reload()
  }
  expect(words[0]).toBe(words[1])
})

test('a changed password ends the other sessions and not this one', async ({ backstage, openAs, openAsVisitor }) => {
  const lead = CAST.lead.email
  const projectId = await backstage.act('makeProject', { name: `Passwords ${Date.now()}`, lead })
  const email = `runa.${Date.now()}@quillmoor.example`
  await backstage.act('makeAccount', { projectId, lead, name: OWN.name, email, password: OWN.password })
  const [here, elsewhere] = [await openAs({ email }), await openAs({ email })]
  await elsewhere.goto('/account')
  await here.goto('/account')

  await here.getByLabel('Current password').fill(OWN.password)
  await here.getByLabel('New password', { exact: true }).fill('short')
  await here.getByLabel('New password again').fill('short')
  await here.getByRole('button', { name: 'Change the password' }).click()
  await expect(here.getByText('must have at least 12 characters')).toBeVisible()
  await here.getByLabel('New password', { exact: true }).fill(OWN.newPassword)
  await here.getByLabel('New password again').fill(OWN.newPassword)
  await here.getByRole('button', { name: 'Change the password' }).click()
  await expect(here.getByText('Changed. Your other devices have been signed out.')).toBeVisible()

  await here.reload()
  await expect(here.getByRole('heading', { name: OWN.name })).toBeVisible()
  await elsewhere.reload()
  await expect(elsewhere).toHaveURL(/\/sign-in/)

  const again = await openAsVisitor()
  await again.goto('/sign-in')
  await signInByForm(again, email, OWN.newPassword)
  await expect(again.getByRole('heading', { name: 'Waiting for me' })).toBeVisible()
})

test('an invitation lets one person in, once, and not after its day', async ({ backstage, openAsVisitor }) => {
  const lead = CAST.lead.email
  const projectId = await backstage.act('makeProject', { name: `Invitations ${Date.now()}`, lead })
  const order = { projectId, lead, companyName: 'Marram Flex' }
  const page = await openAsVisitor()

  await page.goto(await backstage.act('makeInvitation', { ...order, daysAgo: 20 }))
  await expect(page.getByRole('main')).toContainText('This invitation has expired')
  await expect(page.getByRole('button', { name: 'Join' })).toHaveCount(0)

  const link = await backstage.act('makeInvitation', { ...order, daysAgo: 0 })
  const second = await openAsVisitor()
  // Both have the form open before either sends it.
  for (const [index, visitor] of [page, second].entries()) {
    await visitor.goto(link)
    await visitor.getByLabel('Your name').fill('Orsolya Tarn')
    await visitor.getByLabel('Your e-mail address').fill(`orsolya.${index}.${Date.now()}@brackenfold.example`)
    await visitor.getByLabel('Choose a password').fill('sanderling-at-dawn')
  }
  await page.getByRole('button', { name: 'Join' }).click()
  await expect(page).toHaveURL(new RegExp(`/projects/${projectId}$`))
  await second.getByRole('button', { name: 'Join' }).click()
  await expect(second.getByRole('main').getByRole('alert')).toContainText('already used')
  await expect(second.getByLabel('Your name')).toHaveValue('Orsolya Tarn')
  await second.reload()
  await expect(second.getByRole('main')).toContainText('This invitation was already used')
})

test('what a person may not see answers like what never existed', async ({ openAs, demo, consoleWatch }) => {
  consoleWatch.expect(/status of 404/)
  const page = await openAs('ostrel')
  const texts: (string | null)[] = []
  // Revision A of Skua is not shared with Ostrel; the other id belongs to nothing.
  for (const id of [demo.skuaA, '00000000-0000-0000-0000-000000000000']) {
    await page.goto(`/projects/${demo.skuaId}/revisions/${id}`)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    texts.push(await page.getByRole('main').textContent())
  }
  expect(texts[0]).toBe(texts[1])
  expect(texts[0]).not.toContain('Skua')
})
