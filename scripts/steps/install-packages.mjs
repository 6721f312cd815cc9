import { existsSync, readFileSync } from 'node:fs'
import { inRoot } from './places.mjs'
import { runQuietly, StepError, say } from './run-program.mjs'

const LOCK = 'package-lock.json'
/** npm's own note of what it installed. */
const INSTALLED = 'node_modules/.package-lock.json'
/** Compiled on machines for which there is no ready-made one. */
const SQLITE_BINARY = 'node_modules/better-sqlite3/build/Release/better_sqlite3.node'

/** @typedef {Record<string, { version?: string, optional?: boolean, dev?: boolean, devOptional?: boolean }>} Packages */

/**
 * Whether what is installed lacks a package of the lock file, or holds another version of one.
 * Optional packages may be absent: they are for other systems.
 * @param {Packages} wanted  of the lock file, by place
 * @param {Packages} installed
 * @param {boolean} withTestTools  false where packages that only tests and checks use may be absent
 */
export function isPackageMissing(wanted, installed, withTestTools) {
  return Object.entries(wanted).some(([place, { version, optional, dev, devOptional }]) => {
    if (place === '') return false
    const found = installed[place]
    if (found !== undefined) return found.version !== version
    return optional !== true && (withTestTools || (dev !== true && devOptional !== true))
  })
}

/** @param {string} file @returns {Packages} */
const packagesOf = (file) => JSON.parse(readFileSync(inRoot(file), 'utf8')).packages

/**
 * Install exactly what the lock file names, where it is not installed already.
 * @param {{ withTestTools: boolean }} wanted  to start the application takes none of the browsers' drivers, checkers and readers that tests use; where they
 * are installed already they stay
 * @throws {StepError} with npm's words when it fails
 */
export async function installPackages({ withTestTools }) {
  const isInstalled = existsSync(inRoot(INSTALLED)) && existsSync(inRoot(SQLITE_BINARY))
  const installed = isInstalled ? packagesOf(INSTALLED) : {}
  if (isInstalled && !isPackageMissing(packagesOf(LOCK), installed, withTestTools)) return
  const isWhole = withTestTools || Object.values(installed).some(({ dev }) => dev === true)
  say('Installing packages (a few minutes the first time: SQLite may have to be compiled)')
  const { seconds } = await runNpm('Installing packages', [
    'ci',
    ...(isWhole ? [] : ['--omit=dev']),
    '--no-audit',
    '--no-fund',
    '--loglevel=error',
  ])
  if (!existsSync(inRoot(SQLITE_BINARY))) {
    throw new StepError(
      'The packages are installed, but npm left out the install script of better-sqlite3, which fetches or compiles SQLite. ' +
        'Allow install scripts (npm config get ignore-scripts should say false) and run: npm rebuild better-sqlite3',
    )
  }
  say(`  installed in ${seconds} s`)
}

/**
 * @param {string} what
 * @param {string[]} args
 */
function runNpm(what, args) {
  // npm names the program that started it; without it (node scripts/start.mjs) it is looked up, through a shell on Windows.
  const npm = process.env.npm_execpath
  if (npm?.endsWith('.js')) return runQuietly(what, process.execPath, [npm, ...args])
  return runQuietly(what, 'npm', args, { shell: process.platform === 'win32' })
}
