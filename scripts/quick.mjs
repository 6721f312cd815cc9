// npm run quick: lint, types and the unit tests that a change touches, in under half a minute for a change of a few files.
// `npm run quick -- <commit or branch>` looks at everything since then.
import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { generateClients } from './steps/generate-clients.mjs'
import { inRoot, rootFolder } from './steps/places.mjs'
import { runAsCommand, runInTheOpen, StepError, say } from './steps/run-program.mjs'

/** Beyond this the whole of `npm run test:unit` is the honest answer. */
const MOST_TEST_FILES = 400

/** @param {string[]} args */
const git = (...args) =>
  execFileSync('git', args, { cwd: rootFolder, encoding: 'utf8' })
    .split('\n')
    .filter((line) => line !== '')

/** @param {string | undefined} since */
function listChangedFiles(since) {
  const tracked = git('diff', '--name-only', '--diff-filter=d', since ?? 'HEAD')
  const fresh = git('ls-files', '--others', '--exclude-standard')
  return [...new Set([...tracked, ...fresh])].filter((file) => existsSync(inRoot(file)))
}

/**
 * @param {string[]} program
 * @param {string[]} args
 */
async function check(program, args) {
  if ((await runInTheOpen(process.execPath, [inRoot('node_modules', ...program), ...args], {})) !== 0) {
    throw new StepError(`${program.at(-1)} found something.`)
  }
}

await runAsCommand(async () => {
  const files = listChangedFiles(process.argv[2])
  if (files.length === 0) {
    say('Nothing is changed.')
    return
  }
  say(`${files.length} changed ${files.length === 1 ? 'file' : 'files'}`)
  await generateClients({ quiet: true })
  // Circles of imports are looked for by npm run lint: that reads every file.
  const skipped = ['--skip=suspicious/noImportCycles']
  const linted = ['check', '--error-on-warnings', '--no-errors-on-unmatched', ...skipped, ...files]
  const code = files.filter((file) => /\.(tsx?|mjs)$/.test(file)).slice(0, MOST_TEST_FILES)
  const results = await Promise.allSettled([
    check(['@biomejs', 'biome', 'bin', 'biome'], linted),
    check(['typescript', 'bin', 'tsc'], ['--noEmit']),
  ])
  const failed = results.find((result) => result.status === 'rejected')
  if (failed !== undefined) throw failed.reason
  if (code.length === 0) return
  await check(
    ['vitest', 'vitest.mjs'],
    [
      'related',
      '--run',
      '--config',
      'test/vitest.config.ts',
      '--project',
      'unit',
      '--passWithNoTests',
      '--reporter=dot',
      ...code,
    ],
  )
})
