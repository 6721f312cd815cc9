import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, test } from './fixtures'
import { leave, readSetupCode, startOwnServer } from './own-server'

/** A real workspace: its own server, started with --empty as a person would. */

test('an empty installation leads its first visitor to the first account and project, once', async ({
  openAsVisitor,
}) => {
  test.setTimeout(600_000)
  const dataFolder = mkdtempSync(path.join(tmpdir(), 'bendworthy-empty-'))
  let server = await startOwnServer({ dataFolder, args: ['--empty'] })
  try {
    expect(server.printed()).toContain('create the first administrator')
    expect(server.printed()).not.toContain('Demo sign-ins')
    const page = await openAsVisitor()
    await page.goto(server.address)
    await expect(page).toHaveURL(/\/setup$/)
    const code = readSetupCode(server)
    await page.getByLabel('Set-up code').fill('ABCD-EFGH-2345')
    await page.getByLabel('Name of the workspace').fill('Turnstone Works')
    await page.getByLabel('Your company').fill('Turnstone Works')
    await page.getByLabel('First project').fill('Dunlin')
    await page.getByLabel('Your name').fill('Aldith Pew')
    await page.getByLabel('Your e-mail address').fill('aldith@turnstone.example')
    await page.getByLabel('Password').fill('short')
    await page.getByRole('button', { name: 'Set up' }).click()
    await expect(page.getByText('must have at least 12 characters')).toBeVisible()
    await expect(page.getByLabel('First project')).toHaveValue('Dunlin')
    await page.getByLabel('Password').fill('aldith-pew-turnstone')
    await page.getByLabel('Set-up code').fill(code)
    await page.getByRole('button', { name: 'Set up' }).click()
    await expect(page.getByText('is made mostly of your own name or address')).toBeVisible()
    await page.getByLabel('Password').fill('spring-tide-at-noon')
    await page.getByLabel('Set-up code').fill('ABCD-EFGH-2345')
    await page.getByRole('button', { name: 'Set up' }).click()
    await expect(page.getByText('is not the code that the server printed when it started')).toBeVisible()
    await page.getByLabel('Set-up code').fill(code)
    await page.getByRole('button', { name: 'Set up' }).click()
    await expect(page.getByRole('heading', { name: 'Dunlin' })).toBeVisible()
    await expect(page.getByText('No revision yet.')).toBeVisible()

    const second = await openAsVisitor()
    await second.goto(`${server.address}/setup`)
    await expect(second).toHaveURL(/\/sign-in$/)

    // Started again without the option it stays a real workspace and keeps what is in it.
    await leave(page, second)
    await server.stop()
    server = await startOwnServer({ dataFolder })
    expect(server.printed()).not.toContain('Demo sign-ins')
    expect(server.printed()).not.toContain('create the first administrator')
    await second.goto(`${server.address}/sign-in`)
    await second.getByLabel('E-mail address').fill('aldith@turnstone.example')
    await second.getByLabel('Password').fill('spring-tide-at-noon')
    await second.getByRole('button', { name: 'Sign in', exact: true }).click()
    // Going elsewhere before the answer would break the sign-in off.
    await second.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
    await second.goto(`${server.address}/projects`)
    await expect(second.getByRole('link', { name: 'Dunlin' })).toBeVisible()
    await leave(second)
  } finally {
    await server.stop()
    rmSync(dataFolder, { recursive: true, force: true })
  }
})
