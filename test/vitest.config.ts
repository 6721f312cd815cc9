import { rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'
import { OWN_PROCESS } from './own-process.mjs'
import { makeShortLivedFolder } from './setup/short-lived-folder.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const compiled = makeShortLivedFolder('bendworthy-compiled-')
process.on('exit', () => rmSync(compiled, { recursive: true, force: true }))

const setupFiles = ['test/setup/quiet-console.ts']
/**
 * Tests of functions without a state of their own: the files share one process and its modules, because loading the engine again for each
 * took longer than the tests. What a test replaces it puts back.
 */
const pure = { setupFiles, isolate: false, testTimeout: 60_000 }

/** Their databases and data folders are their own; what they share is the process, because each would load the application again. */
const withDatabases = {
  setupFiles: [...setupFiles, 'test/setup/own-data-folder.ts'],
  globalSetup: ['test/setup/base-databases.ts', 'test/setup/bundled-commands.ts'],
  // Generous: a slow machine must not look like a defect.
  testTimeout: 240_000,
  hookTimeout: 240_000,
}

export default defineConfig({
  root,
  resolve: {
    alias: {
      '@': root.replace(/[\\/]$/, ''),
      // The package throws outside a server bundle; tests are neither bundle.
      'server-only': fileURLToPath(new URL('./setup/server-only.ts', import.meta.url)),
    },
  },
  oxc: { jsx: { runtime: 'automatic' } },
  test: {
    pool: 'forks',
    maxWorkers: 2,
    // The tests make and drop designs and results by the thousand: with more room for what is young, a sixth of the processor time goes.
    execArgv: ['--max-semi-space-size=64'],
    // Each project would compile the application anew. Kept for this run alone: what is kept longer does not notice a file that became a folder.
    experimental: { fsModuleCache: true, fsModuleCachePath: compiled },
    projects: [
      {
        extends: true,
        test: { ...pure, name: 'unit', include: ['test/unit/**/*.test.{ts,tsx}'] },
      },
      {
        extends: true,
        test: { ...pure, name: 'standards', include: ['test/standards/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          ...withDatabases,
          name: 'integration',
          isolate: false,
          include: ['test/integration/**/*.test.{ts,tsx}'],
          exclude: OWN_PROCESS,
        },
      },
      { extends: true, test: { ...withDatabases, name: 'integration-own-process', include: OWN_PROCESS } },
    ],
  },
})
