import { spawn } from 'node:child_process'
import { setTimeout as sleep } from 'node:timers/promises'
import { stripVTControlCharacters } from 'node:util'
import { listGreetingLines } from './greeting.mjs'
import { inRoot, rootFolder } from './places.mjs'
import { StepError, say } from './run-program.mjs'

const POLL_MS = 50
const LONGEST_START_MS = 60_000
/** The framework's own greeting, which would give an address of its own. */
const GREETING = /^\s*$|^\s*(▲|✓|-\s+(Local|Network|Environments|Experiments))/

/**
 * Serve until the person stops it; the promise resolves then.
 * @param {{ dev: boolean, environment: Record<string, string>, plan: import('./prepare').Preparation }} options
 */
export async function serveApplication({ dev, environment, plan }) {
  const next = inRoot('node_modules', 'next', 'dist', 'bin', 'next')
  const server = spawn(
    process.execPath,
    [next, dev ? 'dev' : 'start', '--hostname', plan.host, '--port', String(plan.port)],
    {
      cwd: rootFolder,
      env: {
        ...process.env,
        ...environment,
        BENDWORTHY_WRAPPED: '1',
        NODE_ENV: dev ? 'development' : 'production',
        NEXT_TELEMETRY_DISABLED: '1',
        NEXTAUTH_URL: plan.publicUrl,
      },
      // The server ends when this program is gone, however it went: its end of the first pipe closes then.
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  )
  passOn(server.stdout)

  let isStopping = false
  for (const signal of /** @type {NodeJS.Signals[]} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => {
      if (!isStopping) server.kill('SIGTERM')
      isStopping = true
    })
  }
  /** @type {Promise<string>} */
  const ended = new Promise((resolve) => {
    server.on('error', (error) => resolve(error.message))
    server.on('close', (code, signal) => resolve(signal ?? `exit status ${code}`))
  })

  const isUp = await Promise.race([waitUntilItAnswers(plan), ended.then(() => false)])
  // In one piece: who waits for the first line has the others with it.
  if (isUp) say(listGreetingLines(plan).join('\n'))
  const reason = await ended
  if (isStopping) say('Stopped.')
  else throw new StepError(`The server ended by itself (${reason}).`)
}

/** @param {import('node:stream').Readable} stream */
function passOn(stream) {
  let rest = ''
  stream.on('data', (part) => {
    const lines = (rest + part).split('\n')
    rest = lines.pop() ?? ''
    for (const line of lines) if (!GREETING.test(stripVTControlCharacters(line))) say(line)
  })
}

/** @param {import('./prepare').Preparation} plan */
async function waitUntilItAnswers({ host, port }) {
  const reachable = host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '[::1]' : host.includes(':') ? `[${host}]` : host
  const deadline = performance.now() + LONGEST_START_MS
  while (performance.now() < deadline) {
    try {
      await fetch(`http://${reachable}:${port}/icon.svg`, { signal: AbortSignal.timeout(5_000) })
      return true
    } catch {
      await sleep(POLL_MS)
    }
  }
  throw new StepError(`The server did not answer at ${reachable}:${port} within ${LONGEST_START_MS / 1000} s.`)
}
