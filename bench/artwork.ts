import { readdirSync, readFileSync } from 'node:fs'
import { Readable } from 'node:stream'
import gerberParser from 'gerber-parser'
import gerberPlotter from 'gerber-plotter'
import {
  type LayerObjects,
  readDrill,
  readGerber,
  readIpc2581,
  readJob,
  readNetlist,
  shapeOfLayer,
} from '@/lib/artwork'
import { mutate, seededRandom } from '@/test/unit/artwork/mutate'
import { ROOT } from './root'

/** npm run bench -- artwork [runs]: reading against a general-purpose parser, growth, memory, and mutated files. Ratios of one run on one machine. */
const SEED = 20261129
const FUZZ_RUNS = Number(process.argv[3] ?? 200_000)
const MB = 1024 * 1024

const printLine = (text: string) => process.stdout.write(`${text}\n`)

/** Strokes, arcs and pads in the proportion of a real layer, as a program would write them. */
function makeLayer(count: number): Uint8Array {
  const random = seededRandom(SEED)
  const bytes = new Uint8Array(200 + 60 * count)
  let length = 0
  const write = (text: string) => {
    for (let at = 0; at < text.length; at += 1) bytes[length + at] = text.charCodeAt(at)
    length += text.length
  }
  write('%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.1*%\n%ADD11C,0.3*%\n%ADD12R,0.5X0.3*%\n%LPD*%\nG75*\nG01*\nD10*\n')
  const side = Math.ceil(Math.sqrt(count))
  for (let index = 0; index < count; index += 1) {
    const x = (index % side) * 400_000 + Math.floor(random() * 50_000)
    const y = Math.floor(index / side) * 400_000 + Math.floor(random() * 50_000)
    if (index % 10 === 0) write(`D12*\nX${x}Y${y}D03*\nD10*\n`)
    else write(`X${x}Y${y}D02*\nX${x + 300_000}Y${y + 100_000}D01*\n`)
  }
  write('M02*\n')
  return bytes.subarray(0, length)
}

interface PlottedObject {
  readonly type: string
  readonly x?: number
  readonly y?: number
  readonly path?: readonly {
    readonly type: string
    readonly start: readonly number[]
    readonly end: readonly number[]
  }[]
}

/** The same file by the other parser and what plots its commands into objects. */
function readByOther(bytes: Uint8Array): Promise<PlottedObject[]> {
  return new Promise((resolve, reject) => {
    const found: PlottedObject[] = []
    Readable.from([Buffer.from(bytes)])
      .pipe(gerberParser({ filetype: 'gerber' }))
      .on('error', reject)
      .pipe(gerberPlotter())
      .on('error', reject)
      .on('data', (object: PlottedObject) => found.push(object))
      .on('end', () => resolve(found))
  })
}

/** Each object's place, in the order of the file, in micrometres: what both have to say alike. */
function placesOfOther(objects: readonly PlottedObject[]): number[] {
  return objects.flatMap(({ type, x = 0, y = 0, path = [] }) => {
    if (type === 'pad') return [Math.round(x * 1e3), Math.round(y * 1e3)]
    return type === 'stroke' ? path.flatMap(({ end }) => end.map((value) => Math.round(value * 1e3))) : []
  })
}

function placesOfOurs({ count, kinds, numbers }: LayerObjects): number[] {
  const places: number[] = []
  for (let index = 0; index < count; index += 1) {
    const at = 6 * index + (kinds[index] === 1 ? 0 : 2)
    places.push(Math.round((numbers[at] ?? 0) / 1e3), Math.round((numbers[at + 1] ?? 0) / 1e3))
  }
  return places
}

const median = (times: number[]): number => times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN

async function compareReading(): Promise<void> {
  const bytes = makeLayer(100_000)
  const ours = placesOfOurs(readGerber(bytes).objects)
  const theirs = placesOfOther(await readByOther(bytes))
  const different = ours.filter(
    (value, at) => Math.abs(value - (theirs[at] ?? Number.NaN)) > 1 || theirs[at] === undefined,
  ).length
  const [own, other]: [number[], number[]] = [[], []]
  for (let run = 0; run < 5; run += 1) {
    let start = performance.now()
    readGerber(bytes)
    own.push(performance.now() - start)
    start = performance.now()
    await readByOther(bytes)
    other.push(performance.now() - start)
  }
  printLine(
    `${(bytes.length / MB).toFixed(1)} MB, ${ours.length / 2} objects here, ${theirs.length / 2} there, ${different} places differ by more than 1 um`,
  )
  printLine(
    `reading ${median(own).toFixed(0)} ms; gerber-parser 4.2.7 with gerber-plotter 4.2.8 ${median(other).toFixed(0)} ms: ${(median(other) / median(own)).toFixed(1)} times as long (target 5)`,
  )
}

function measureGrowth(): void {
  let before: { read: number; shape: number } | null = null
  for (const count of [10_000, 100_000, 1_000_000]) {
    const bytes = makeLayer(count)
    const memoryBefore = process.resourceUsage().maxRSS
    const start = performance.now()
    const { objects } = readGerber(bytes)
    const read = performance.now() - start
    const more = (process.resourceUsage().maxRSS - memoryBefore) / 1024
    const shapeStart = performance.now()
    const shape = count > 100_000 ? 0 : shapeOfLayer(objects).areaMm2
    const shapeMs = performance.now() - shapeStart
    const growth =
      before === null
        ? ''
        : `; ${(read / before.read).toFixed(1)} times the reading${shape === 0 ? '' : `, ${(shapeMs / before.shape).toFixed(1)} times the area`} for ten times as many`
    const area = shape === 0 ? 'area not worked out' : `area ${shapeMs.toFixed(0)} ms`
    printLine(
      `${count} objects, ${(bytes.length / MB).toFixed(1)} MB: read ${read.toFixed(0)} ms, ${area}; peak memory grew by ${more.toFixed(0)} MB, allowed ${((10 * bytes.length) / MB + 150).toFixed(0)}${growth}`,
    )
    before = { read, shape: shapeMs }
  }
}

function fuzz(): void {
  const readers = { gerber: readGerber, drill: readDrill, job: readJob, netlist: readNetlist, ipc2581: readIpc2581 }
  for (const [kind, read] of Object.entries(readers)) {
    const folder = new URL(`test/fixtures/artwork/${kind}/`, ROOT)
    const seeds = readdirSync(folder).map((file) => new Uint8Array(readFileSync(new URL(file, folder))))
    const random = seededRandom(SEED)
    let slowest = 0
    let slowestRun = -1
    let thrown = 0
    for (let run = 0; run < FUZZ_RUNS; run += 1) {
      const bytes = mutate(seeds[run % seeds.length] ?? new Uint8Array(), random)
      const start = performance.now()
      try {
        read(bytes)
      } catch (error) {
        thrown += 1
        if (thrown < 4) printLine(`${kind}, run ${run}: ${error instanceof Error ? error.stack : String(error)}`)
      }
      const took = performance.now() - start
      if (took > slowest) {
        slowest = took
        slowestRun = run
      }
    }
    const memory = process.resourceUsage().maxRSS / 1024
    printLine(
      `${kind}: ${FUZZ_RUNS} mutated files, seed ${SEED}: ${thrown} thrown, slowest ${slowest.toFixed(0)} ms (run ${slowestRun}; allowed 2000 per MB begun), peak memory ${memory.toFixed(0)} MB`,
    )
  }
}

// Memory first: what is measured is how far the process's peak grows.
measureGrowth()
await compareReading()
fuzz()
