import { type ChildProcess, spawn } from 'node:child_process'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { expect, type Page } from './fixtures'

/** A server beside the one under test, started as a person would, on the build that is there already. */

const START = fileURLToPath(new URL('../../scripts/start.mjs', import.meta.url))

export async function findFreePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no port could be had')
  return address.port
}

export interface Started {
  readonly address: string
  readonly printed: () => string
  readonly stop: () => Promise<void>
}

interface OwnServer {
  readonly dataFolder: string
  readonly args?: readonly string[]
  readonly environment?: Readonly<Record<string, string>>
  readonly port?: number
}

export async function startOwnServer(order: OwnServer): Promise<Started> {
  const port = order.port ?? (await findFreePort())
  const child: ChildProcess = spawn(process.execPath, [START, '--port', String(port), ...(order.args ?? [])], {
    env: {
      ...process.env,
      BENDWORTHY_DATA_FOLDER: order.dataFolder,
      BENDWORTHY_PUBLIC_URL: '',
      DATABASE_URL: '',
      HOST: '',
      ...order.environment,
    },
  })
  let output = ''
  const collect = (part: Buffer) => {
    output += part.toString()
  }
  child.stdout?.on('data', collect)
  child.stderr?.on('data', collect)
  await expect.poll(() => output, { timeout: 240_000, message: 'what the start prints' }).toContain('Bendworthy is at')
  return {
    address: order.environment?.BENDWORTHY_PUBLIC_URL ?? `http://127.0.0.1:${port}`,
    printed: () => output,
    stop: () =>
      new Promise((resolve) => {
        child.once('exit', () => resolve())
        child.kill('SIGTERM')
      }),
  }
}

export const readSetupCode = ({ printed }: Started): string => /Set-up code[^:]*: (\S+)/.exec(printed())?.[1] ?? ''

export const FOUNDER = {
  name: 'Aldith Pew',
  email: 'aldith@turnstone.example',
  password: 'spring-tide-at-noon',
} as const

/** The first account, by the page. */
export async function setUp(page: Page, server: Started): Promise<void> {
  await page.goto(`${server.address}/setup`)
  await page.getByLabel('Set-up code').fill(readSetupCode(server))
  await page.getByLabel('Name of the workspace').fill('Turnstone Works')
  await page.getByLabel('Your company').fill('Turnstone Works')
  await page.getByLabel('First project').fill('Dunlin')
  await page.getByLabel('Your name').fill(FOUNDER.name)
  await page.getByLabel('Your e-mail address').fill(FOUNDER.email)
  await page.getByLabel('Password').fill(FOUNDER.password)
  await page.getByRole('button', { name: 'Set up' }).click()
  await expect(page.getByRole('heading', { name: 'Dunlin' })).toBeVisible()
}

/** A page that is still fetching ahead when its server stops would say so in the console. */
export async function leave(...pages: readonly Page[]): Promise<void> {
  for (const page of pages) await page.goto('about:blank')
}
