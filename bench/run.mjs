// npm run bench: the measurements; npm run bench -- fuzz: drawing files made of anything; -- artwork: files of circuit data; -- cold: remedies by a process that has
// run nothing yet; -- kill: writers that are killed; -- keys: what a key costs in a browser; -- lines: cross-sections of lines solved in a browser; -- large: pages
// of a large workspace. The others are bundled as a
// browser or a server gets the code. The loader that runs TypeScript directly wraps every function that is made, which doubles the time of what makes many.
import { spawnSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { build } from 'esbuild'

const root = new URL('..', import.meta.url)
// Databases and processes of their own, whose time nobody measures: run as the commands are.
const BESIDE = new Map([
  ['kill', 'kill.ts'],
  ['keys', 'keystrokes.ts'],
  ['lines', 'lines-in-browser.ts'],
  ['large', 'load.ts'],
])
const beside = BESIDE.get(process.argv[2] ?? '')
if (beside !== undefined) {
  const program = ['--conditions=react-server', '--import', 'tsx', new URL(beside, import.meta.url).pathname]
  const { status } = spawnSync(process.execPath, [...program, ...process.argv.slice(3)], { stdio: 'inherit' })
  process.exit(status ?? 1)
}
const folder = new URL('node_modules/.cache/bendworthy/', root)
mkdirSync(folder, { recursive: true })
const ENTRIES = new Map([
  ['fuzz', 'bench/fuzz.ts'],
  ['fold', 'bench/fold-brute-force.ts'],
  ['artwork', 'bench/artwork.ts'],
  ['cold', 'bench/cold-search.ts'],
])
const entry = ENTRIES.get(process.argv[2] ?? '') ?? 'bench/index.ts'
const outfile = new URL('bench.mjs', folder)
await build({
  entryPoints: [new URL(entry, root).pathname],
  outfile: outfile.pathname,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  external: ['esbuild', 'gerber-parser', 'gerber-plotter'],
  alias: { '@': root.pathname.replace(/\/$/, '') },
  define: { BENCH_ROOT: JSON.stringify(root.href) },
  logLevel: 'error',
})
await import(pathToFileURL(outfile.pathname).href)
