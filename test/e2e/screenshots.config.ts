import { defineConfig } from '@playwright/test'
import config from './playwright.config'

/** Photographs of every screen, for looking at: npm run screenshots. Not a test, and never in the repository. */
export default defineConfig({
  ...config,
  projects: [{ name: 'screenshots', testMatch: 'screenshots.ts' }],
  timeout: 1_800_000,
})
