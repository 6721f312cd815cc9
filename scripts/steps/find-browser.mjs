import { existsSync } from 'node:fs'
import path from 'node:path'
import { inRoot } from './places.mjs'
import { runQuietly, StepError, say } from './run-program.mjs'

/** Where browsers of the Chromium family are usually installed. */
const USUAL_PLACES = {
  linux: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/snap/bin/chromium',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA].flatMap((folder) =>
    folder === undefined
      ? []
      : [
          path.join(folder, 'Chromium', 'Application', 'chrome.exe'),
          path.join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
          path.join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
        ],
  ),
}

/**
 * The browser that the browser tests drive: the one that CHROMIUM_PATH names, else one in a usual place, else one that the
 * test runner downloaded before.
 * @returns {Promise<string | null>} its path
 * @throws {StepError} when CHROMIUM_PATH names nothing
 */
export async function findBrowser() {
  const named = process.env.CHROMIUM_PATH
  if (named) {
    if (existsSync(named)) return named
    throw new StepError(`CHROMIUM_PATH is "${named}", where there is no file; expected the path of a Chromium browser.`)
  }
  const places = USUAL_PLACES[/** @type {keyof typeof USUAL_PLACES} */ (process.platform)] ?? []
  const usual = places.find((place) => existsSync(place))
  if (usual !== undefined) return usual
  const { chromium } = await import('@playwright/test')
  const downloaded = chromium.executablePath()
  return existsSync(downloaded) ? downloaded : null
}

/**
 * Find a browser or bring one: the test runner's own download, or Debian's package where the caller allows packages of the system.
 * @param {{ mayInstallSystemPackages?: boolean }} [options]
 * @throws {StepError} when neither is possible; the tests then fail rather than pass without it
 */
export async function provideBrowser({ mayInstallSystemPackages = false } = {}) {
  const present = await findBrowser()
  if (present !== null) return present

  /** @type {string[]} */
  const failures = []
  for (const attempt of mayInstallSystemPackages ? [installDebianPackage, downloadBrowser] : [downloadBrowser]) {
    try {
      await attempt()
      const brought = await findBrowser()
      if (brought !== null) return brought
    } catch (error) {
      failures.push(/** @type {Error} */ (error).message)
    }
  }
  throw new StepError(
    `The browser tests need a Chromium browser: none is in a usual place, and none could be brought. Install one, name one in CHROMIUM_PATH, or let npm test install Debian's package: npm test -- --install-system-packages.\n${failures.join('\n')}`,
  )
}

async function installDebianPackage() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    throw new StepError("Debian's package: this account may not install packages here.")
  }
  say("Installing Debian's chromium for the browser tests (a minute or two)")
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  await runQuietly("Reading Debian's package lists", 'apt-get', ['update', '-qq'], { env })
  await runQuietly('Installing chromium', 'apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
    env,
  })
}

async function downloadBrowser() {
  say('Downloading a browser for the browser tests')
  const cli = inRoot('node_modules', '@playwright', 'test', 'cli.js')
  await runQuietly('Downloading a browser', process.execPath, [cli, 'install', 'chromium'])
}
