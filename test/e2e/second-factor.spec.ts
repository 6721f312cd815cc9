import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { Secret, TOTP } from 'otpauth'
import { CAST } from '@/seed/sign-ins'
import { expect, type Page, test } from './fixtures'
import { FOUNDER, findFreePort, leave, type Started, setUp, startOwnServer } from './own-server'
import { choose } from './steps'

/** One-time codes and passkeys, on a server that is reached by a host name: browsers tie a passkey to one. */

/** An authenticator that the browser itself plays (WebAuthn WebDriver extension, by the DevTools protocol). */
async function addAuthenticator(page: Page): Promise<void> {
  const devTools = await page.context().newCDPSession(page)
  await devTools.send('WebAuthn.enable')
  await devTools.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  })
}

async function signOut(page: Page): Promise<void> {
  await page.getByRole('button', { name: FOUNDER.name }).click()
  await page.getByRole('menuitem', { name: 'Sign out' }).click()
  await expect(page).toHaveURL(/\/sign-in/)
}

async function passFirstStep(page: Page, { address }: Started): Promise<void> {
  await page.goto(`${address}/sign-in`)
  await page.getByLabel('E-mail address').fill(FOUNDER.email)
  await page.getByLabel('Password').fill(FOUNDER.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
}

async function confirmWithPassword(page: Page, summary: string | RegExp, label: string): Promise<void> {
  await page.getByText(summary).click()
  const form = page.getByRole('form', { name: label })
  await form.getByLabel('Your password').fill(FOUNDER.password)
  await form.getByRole('button', { name: label }).click()
}

test('one-time codes, recovery codes and passkeys, as a person sets them up and signs in with them', async ({
  openAsVisitor,
  consoleWatch,
}) => {
  test.setTimeout(900_000)
  consoleWatch.expect(/status of 40/)
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'bendworthy-factor-'))
  const port = await findFreePort()
  const environment = { BENDWORTHY_PUBLIC_URL: `http://localhost:${port}` }
  const server = await startOwnServer({ dataFolder, port, args: ['--empty'], environment })
  try {
    const page = await openAsVisitor()
    await setUp(page, server)
    await page.goto(`${server.address}/account`)

    await confirmWithPassword(page, 'Turn one-time codes on', 'Turn on one-time codes')
    await expect(page.getByRole('img', { name: 'QR code of the key below' })).toBeVisible()
    const secret = await page.getByLabel('Key', { exact: true }).inputValue()
    const makeCode = (steps = 0) =>
      new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: Date.now() + steps * 30_000 })
    await page.getByLabel('Current code').fill('000000')
    await page.getByRole('button', { name: 'Confirm the code' }).click()
    await expect(page.getByText('is not the current code')).toBeVisible()
    await page.getByLabel('Current code').fill(makeCode())
    await page.getByRole('button', { name: 'Confirm the code' }).click()
    const listed = page.getByRole('status').filter({ hasText: 'Recovery codes' })
    await expect(listed.getByRole('listitem')).toHaveCount(10)
    const [recoveryCode = ''] = await listed.getByRole('listitem').allTextContents()

    await signOut(page)
    await passFirstStep(page, server)
    await page.getByLabel('One-time code').fill('000000')
    await page.getByRole('button', { name: 'Continue' }).click()
    await expect(page.getByRole('main').getByRole('alert')).toContainText('neither the current code')
    // The password alone opened nothing.
    expect(await (await page.request.get(`${server.address}/api/auth/session`)).json()).toEqual({})
    // The next step's code: the one of this moment was seen when the codes were turned on.
    await page.getByLabel('One-time code').fill(makeCode(1))
    await page.getByRole('button', { name: 'Continue' }).click()
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))

    await page.goto(`${server.address}/account`)
    await signOut(page)
    await passFirstStep(page, server)
    await page.getByLabel('One-time code').fill(recoveryCode)
    await page.getByRole('button', { name: 'Continue' }).click()
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))

    await addAuthenticator(page)
    await page.goto(`${server.address}/account`)
    await expect(page.getByText('Recovery codes: 9 unused')).toBeVisible()
    await confirmWithPassword(page, 'Add a passkey', 'Continue')
    await page.getByLabel('Name of the passkey').fill('Laptop')
    await page.getByRole('button', { name: 'Add the passkey' }).click()
    await expect(page.getByText('Remove “Laptop”')).toBeVisible()

    // Alone, from the first page.
    await signOut(page)
    await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
    // And in place of a code.
    await page.goto(`${server.address}/account`)
    await signOut(page)
    await passFirstStep(page, server)
    await expect(page.getByLabel('One-time code')).toBeVisible()
    await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))

    // Removed, it opens nothing.
    await page.goto(`${server.address}/account`)
    await confirmWithPassword(page, 'Remove “Laptop”', 'Remove Laptop')
    await expect(page.getByText('Remove “Laptop”')).toHaveCount(0)
    await signOut(page)
    await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
    await expect(page.getByRole('main').getByRole('alert')).toContainText('not known here')
    await leave(page)
  } finally {
    await server.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})

test('somebody with one-time codes gives one to approve a waiver, beside the password', async ({
  openAs,
  backstage,
  consoleWatch,
}) => {
  consoleWatch.expect(/status of 40/)
  const [lead, member] = ['dewi.marrable@quillmoor.example', 'ines.vantongeren@quillmoor.example']
  const projectId = await backstage.act('makeProject', { name: 'Codes', lead, team: { [member]: 'member' } })
  const order = { projectId, by: member, label: 'A', design: 'skua-rev-a' as const }
  const revisionId = await backstage.act('makeRevision', order)
  const { items } = await backstage.act('readRevision', { revisionId, as: member })
  const failing = items.find(({ result }) => result.verdict === 'fails')
  if (failing === undefined) throw new Error('nothing fails in the first Skua')
  const url = `/projects/${projectId}/revisions/${revisionId}/checklist#item-${failing.itemId}`

  const designer = await openAs('designer')
  await designer.goto(url)
  const proposed = designer.locator(`#item-${failing.itemId}`)
  await proposed.getByLabel('Why release against this item').fill('For the first build alone.')
  await proposed.getByRole('button', { name: 'Propose a waiver' }).click()
  await expect(proposed).toContainText('proposed, waiting for approval')

  const page = await openAs('quality')
  await page.goto('/account')
  const confirm = async (summary: string, label: string) => {
    await page.getByText(summary).click()
    const form = page.getByRole('form', { name: label })
    await form.getByLabel('Your password').fill(CAST.quality.password)
    await form.getByRole('button', { name: label }).click()
  }
  await confirm('Turn one-time codes on', 'Turn on one-time codes')
  const secret = await page.getByLabel('Key', { exact: true }).inputValue()
  const makeCode = (steps = 0) =>
    new TOTP({ secret: Secret.fromBase32(secret) }).generate({ timestamp: Date.now() + steps * 30_000 })
  await page.getByLabel('Current code').fill(makeCode())
  await page.getByRole('button', { name: 'Confirm the code' }).click()
  await expect(page.getByRole('status').filter({ hasText: 'Recovery codes' })).toBeVisible()

  await page.goto(url)
  const offered = page.locator(`#item-${failing.itemId}`)
  await expect(offered.getByLabel('Your password')).toHaveCount(0)
  await choose(offered, 'Your decision', 'approve')
  await offered.getByLabel('Your password').fill(CAST.quality.password)
  await offered.getByRole('button', { name: 'Record the decision' }).click()
  await expect(offered.getByText('is empty: your account has a second factor')).toBeVisible()
  await offered.getByLabel('One-time code').fill('000000')
  await offered.getByRole('button', { name: 'Record the decision' }).click()
  await expect(offered.getByText('is neither the current code')).toBeVisible()
  // The code that turned codes on was used up by that; the next one is right within its window.
  await offered.getByLabel('One-time code').fill(makeCode(1))
  await offered.getByRole('button', { name: 'Record the decision' }).click()
  await expect(offered).toContainText(`Decided by ${CAST.quality.name}`)

  await page.goto('/account')
  await confirm('Turn one-time codes off', 'Turn off one-time codes')
  await expect(page.getByText('Turn one-time codes on')).toBeVisible()
})
