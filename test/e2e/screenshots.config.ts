import { defineConfig } from '@playwright/test'
import config from './playwright.config'

/** Pictures by their own programs, none of them a test: `screenshots` of every screen, `pictures` of the README. */
export default defineConfig({
  ...config,
  projects: [
    { name: 'screenshots', testMatch: 'screenshots.ts' },
    { name: 'pictures', testMatch: 'readme-pictures.ts' },
  ],
  timeout: 1_800_000,
})
