import { type ChildProcess, spawn } from 'node:child_process'
import { appendFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { expect, type Page } from '@playwright/test'

/** A server started as a person would start it, on the build that is there already. */

/** Generous: a slow machine must not look like a defect. */
const LONGEST_START_MS = 240_000

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
  /** Gets a copy of all that the server prints. */
  readonly logFile?: string
}

export async function startOwnServer(order: OwnServer): Promise<Started> {
  const port = order.port ?? (await findFreePort())
  const child: ChildProcess = spawn(process.execPath, [START, '--port', String(port), ...(order.args ?? [])], {
    env: {
      ...process.env,
      BENDWORTHY_DATA_FOLDER: order.dataFolder,
      BENDWORTHY_PUBLIC_URL: '',
      // Whatever the person who runs the tests has set for a server of their own stays out of them.
      DATABASE_URL: '',
      HOST: '',
      BENDWORTHY_EMPTY: '',
      BENDWORTHY_DEMO: '',
      BENDWORTHY_SMTP_URL: '',
      ...order.environment,
    },
  })
  let output = ''
  await new Promise<void>((resolve, reject) => {
    const giveUp = (reason: string) => reject(new Error(`The server ${reason}. It printed:\n${output}`))
    const timer = setTimeout(() => giveUp('did not start in time'), LONGEST_START_MS)
    child.once('exit', (code) => giveUp(`ended by itself (${code})`))
    const collect = (part: Buffer) => {
      output += part.toString()
      if (order.logFile !== undefined) appendFileSync(order.logFile, part)
      if (!output.includes('Bendworthy is at')) return
      clearTimeout(timer)
      resolve()
    }
    child.stdout?.on('data', collect)
    child.stderr?.on('data', collect)
  })
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
