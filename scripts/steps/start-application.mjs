import { fork } from 'node:child_process'
import { rmSync, writeFileSync } from 'node:fs'
import { buildApplication } from './build-application.mjs'
import { generateClients } from './generate-clients.mjs'
import { installPackages } from './install-packages.mjs'
import { inRoot, rootFolder } from './places.mjs'
import { runQuietly, StepError, say } from './run-program.mjs'
import { serveApplication } from './serve-application.mjs'
import { parseStartOptions, START_HELP } from './start-options.mjs'

/**
 * From whatever state the checkout is in to a served application: install, generate, create secrets, migrate, build, fill an
 * empty database with the demo scenario, serve. Each step is left out where its result is at hand.
 * @param {string[]} args  of the command line
 */
export async function startApplication(args) {
  const { help, dev, environment } = parseStartOptions(args)
  if (help) {
    say(START_HELP)
    return
  }
  await installPackages({ withTestTools: false })
  await generateClients()

  // Settings, port, data folder and database are looked at before the long build: what is wrong is reported at once.
  let plan = await prepare(environment)
  for (const line of plan.news) say(line)
  if (!dev) await buildApplication()
  if (plan.seed !== null) {
    say('Filling the empty database with the demo scenario')
    writeFileSync(plan.seed.markerFile, plan.seed.markerText, { mode: 0o600 })
    const { seconds } = await runQuietly(
      'Filling the database',
      process.execPath,
      [...TYPESCRIPT, inRoot('seed', 'index.ts')],
      {
        env: environment,
      },
    )
    rmSync(plan.seed.markerFile, { force: true })
    say(`  filled in ${seconds} s`)
    plan = await prepare(environment)
  }
  await serveApplication({ dev, environment, plan })
}

/** Arguments that let Node run the project's TypeScript; the condition lets server-only modules load. */
const TYPESCRIPT = ['--conditions=react-server', '--import', 'tsx']

/**
 * @param {Record<string, string>} environment
 * @returns {Promise<import('./prepare').Preparation>}
 * @throws {StepError} with the message for the person, when something is in the way
 */
function prepare(environment) {
  return new Promise((resolve, reject) => {
    const child = fork(inRoot('scripts', 'steps', 'prepare.ts'), {
      cwd: rootFolder,
      env: { ...process.env, ...environment },
      execArgv: TYPESCRIPT,
    })
    /** @type {import('./prepare').PreparationAnswer | undefined} */
    let answer
    child.on('message', (message) => {
      answer = /** @type {import('./prepare').PreparationAnswer} */ (message)
    })
    child.on('error', reject)
    child.on('close', () => {
      if (answer === undefined)
        reject(new StepError('The settings and the database could not be looked at (see above).'))
      else if ('problem' in answer) reject(new StepError(answer.problem))
      else resolve(answer.preparation)
    })
  })
}
