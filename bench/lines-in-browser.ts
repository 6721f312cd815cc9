import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { build } from 'esbuild'
import { findBrowser } from '@/scripts/steps/find-browser.mjs'
import { LINE_TARGET_MS, type LineCase } from './lines'
import type { Timing } from './timing'

const ROOT_PATH = fileURLToPath(new URL('..', import.meta.url)).replace(/[\\/]$/, '')

const PROGRAM = `
import { prepareLines } from './bench/lines'
import { measure } from './bench/timing'
globalThis.measureLines = () => prepareLines().map(({ what, run, remark }) => ({ what, remark, ...measure(run) }))
`

const { outputFiles } = await build({
  stdin: { contents: PROGRAM, resolveDir: ROOT_PATH, loader: 'ts' },
  bundle: true,
  minify: true,
  format: 'iife',
  platform: 'browser',
  target: 'es2022',
  alias: { '@': ROOT_PATH },
  write: false,
  logLevel: 'error',
})
const executablePath = await findBrowser()
if (executablePath === null) throw new Error('No Chromium browser was found; npm run test:e2e brings one.')
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
try {
  const page = await browser.newPage()
  await page.addScriptTag({ content: outputFiles[0]?.text ?? '' })
  const measured = (await page.evaluate('measureLines()')) as readonly (Timing & Pick<LineCase, 'what' | 'remark'>)[]
  process.stdout.write(`Milliseconds, warm, in ${browser.browserType().name()} ${browser.version()}\n\n`)
  process.stdout.write(`${''.padEnd(44)} ${'median'.padStart(9)} ${'undisturbed'.padStart(12)}\n`)
  for (const { what, remark, medianMs, undisturbedMs } of measured) {
    process.stdout.write(
      `${what.padEnd(44)} ${medianMs.toFixed(1).padStart(9)} ${undisturbedMs.toFixed(1).padStart(12)}   ${(medianMs / LINE_TARGET_MS).toFixed(2)} of the goal of ${LINE_TARGET_MS} ms; ${remark}\n`,
    )
  }
} finally {
  await browser.close()
}
