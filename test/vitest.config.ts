import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('..', import.meta.url))
const setupFiles = ['test/setup/quiet-console.ts']

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
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['test/unit/**/*.test.{ts,tsx}'], setupFiles, testTimeout: 60_000 },
      },
      {
        extends: true,
        test: { name: 'standards', include: ['test/standards/**/*.test.ts'], setupFiles, testTimeout: 60_000 },
      },
      {
        extends: true,
        test: {
          name: 'integration',
          include: ['test/integration/**/*.test.{ts,tsx}'],
          setupFiles: [...setupFiles, 'test/setup/own-data-folder.ts'],
          globalSetup: ['test/setup/base-databases.ts'],
          // Generous: a slow machine must not look like a defect.
          testTimeout: 240_000,
          hookTimeout: 240_000,
          benchmark: { include: [] },
        },
      },
      {
        extends: true,
        test: { name: 'bench', include: [], benchmark: { include: ['test/bench/**/*.bench.ts'] } },
      },
    ],
  },
})
