import { fork } from 'node:child_process'
import { once } from 'node:events'
import { Agent, get, type IncomingMessage } from 'node:http'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const PROGRAM = fileURLToPath(new URL('./stopping-program.ts', import.meta.url))

it('a server that is told to stop ends open streams and kept connections, and goes by itself', async () => {
  const program = fork(PROGRAM, [], {
    execArgv: ['--conditions=react-server', '--import', 'tsx'],
    silent: true,
    env: { ...process.env, BENDWORTHY_LOG_LEVEL: 'info' },
  })
  let log = ''
  program.stderr?.on('data', (part) => {
    log += part
  })
  const exited = once(program, 'exit')
  const [port] = await once(program, 'message')
  const agent = new Agent({ keepAlive: true })
  const ask = async (path: string): Promise<IncomingMessage> => {
    const [response] = await once(get({ host: '127.0.0.1', port, path, agent }), 'response')
    return response
  }
  // One connection that is kept alive and idle, one with a stream.
  const plain = await ask('/plain')
  expect(plain.headers['x-request-id']).toMatch(/^[0-9a-f]{16}$/)
  plain.resume()
  await once(plain, 'end')
  const stream = await ask('/stream')
  stream.resume()
  const ended = once(stream, 'end')
  program.kill('SIGTERM')
  await ended
  // Where it had to be ended after its longest time, it says so; here nothing was left open.
  expect(await exited).toEqual([0, null])
  expect(log).toContain('"event":"stopping"')
  expect(log).not.toContain('still open')
  agent.destroy()
}, 60_000)
