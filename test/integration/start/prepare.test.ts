import { fork } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Preparation, PreparationAnswer } from '../../../scripts/steps/prepare'

/** The first step of `npm start`, on a data folder of its own, as the start program runs it. */
function prepare(environment: Record<string, string>): Promise<PreparationAnswer> {
  return new Promise((resolve, reject) => {
    const child = fork('scripts/steps/prepare.ts', {
      env: { ...process.env, BENDWORTHY_DATA_FOLDER: undefined, ...environment },
      execArgv: ['--conditions=react-server', '--import', 'tsx'],
    })
    let answer: PreparationAnswer | undefined
    child.on('message', (message) => {
      answer = message as PreparationAnswer
    })
    child.on('close', () => (answer === undefined ? reject(new Error('no answer')) : resolve(answer)))
  })
}

async function prepared(environment: Record<string, string>): Promise<Preparation> {
  const answer = await prepare(environment)
  if ('problem' in answer) throw new Error(answer.problem)
  return answer.preparation
}

async function findFreePort(): Promise<string> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no port')
  return String(address.port)
}

describe('starting on an empty data folder', () => {
  let parent = ''
  beforeAll(() => {
    parent = mkdtempSync(path.join(tmpdir(), 'bendworthy-start-'))
  })
  afterAll(() => rmSync(parent, { recursive: true, force: true }))
  const inParent = (name: string) => path.join(parent, name)

  it('on this machine alone: is migrated and to be filled with the demo scenario', async () => {
    const dataFolder = inParent('local')
    const plan = await prepared({ PORT: await findFreePort(), BENDWORTHY_DATA_FOLDER: dataFolder })
    expect(plan).toMatchObject({ host: '127.0.0.1', isEmpty: true, setupCode: null, dataFolder })
    expect(plan.seed?.markerFile).toContain(dataFolder)
    expect(existsSync(path.join(dataFolder, 'bendworthy.db'))).toBe(true)
  }, 60_000)

  it.each<Record<string, string>>([{ HOST: '0.0.0.0' }, { BENDWORTHY_PUBLIC_URL: 'https://review.example.org' }])(
    'where other machines reach it (%o): no demo data and no demo sign-ins, and says so',
    async (reachable) => {
      const dataFolder = inParent(Object.keys(reachable).join())
      const plan = await prepared({ ...reachable, PORT: await findFreePort(), BENDWORTHY_DATA_FOLDER: dataFolder })
      expect(plan).toMatchObject({ isEmpty: true, seed: null, signIns: [] })
      expect(plan.setupCode).toMatch(/^[2-9A-Z]{4}(-[2-9A-Z]{4}){2}$/)
      expect(plan.news).toContain('No demo data: they are made only where other machines cannot reach the server')
    },
    60_000,
  )

  it('with --empty: stays without demo data for good', async () => {
    const folder = { BENDWORTHY_DATA_FOLDER: inParent('real') }
    const port = await findFreePort()
    expect(await prepared({ ...folder, PORT: port, BENDWORTHY_EMPTY: '1' })).toMatchObject({
      seed: null,
      isEmpty: true,
    })
    const again = await prepared({ ...folder, PORT: port })
    expect(again).toMatchObject({ seed: null, isEmpty: true })
    // The same code until it is used: a restart must not leave an older console lying.
    expect((await prepared({ ...folder, PORT: port })).setupCode).toBe(again.setupCode)
    const mode = statSync(path.join(folder.BENDWORTHY_DATA_FOLDER, 'secrets', 'setup-code')).mode & 0o777
    expect(mode).toBe(0o600)
  }, 60_000)

  it('says which port is taken and how to choose another', async () => {
    const server = createServer()
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    const address = server.address()
    const port = typeof address === 'object' && address !== null ? address.port : 0
    const answer = await prepare({ PORT: String(port), BENDWORTHY_DATA_FOLDER: inParent('taken') })
    await new Promise((resolve) => server.close(resolve))
    expect(answer).toMatchObject({ problem: expect.stringContaining(`Port ${port} on 127.0.0.1 is in use`) })
  }, 60_000)
})
