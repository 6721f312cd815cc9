import { GOOD_DXF, GOOD_SVG, makeFuzzedFile, makeRandom, readFuzzed } from '../test/unit/drawing-files/fuzz'

/** npm run bench -- fuzz: drawing files made of anything, with the seed, the slowest and what memory came to. */
const RUNS = 100_000
const SEED = Number(process.argv[3] ?? 1)

const random = makeRandom(SEED)
let pieces = 0
let slowestMs = 0
const start = performance.now()
for (let run = 0; run < RUNS; run += 1) {
  const bytes = makeFuzzedFile(random, run % 10 === 0 ? GOOD_SVG : GOOD_DXF)
  const before = performance.now()
  try {
    pieces += readFuzzed(bytes)
  } catch (error) {
    throw new Error(`seed ${SEED}, run ${run}: ${String(error)}\n${new TextDecoder().decode(bytes)}`)
  }
  slowestMs = Math.max(slowestMs, performance.now() - before)
}
const seconds = (performance.now() - start) / 1000
process.stdout.write(
  `${RUNS} drawing files, seed ${SEED}: none threw; ${pieces} pieces, ${seconds.toFixed(1)} s in all, the slowest ${slowestMs.toFixed(0)} ms, ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MiB\n`,
)
