import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readDrill, readGerber, readIpc2581, readJob, readNetlist, readSet, shapeOfLayer } from '@/lib/artwork'
import { readFixture } from './fixture'
import { mutate, seededRandom } from './mutate'

/** A short run of what `npm run bench` does 200 000 times a reader. */
const RUNS = 300
const SEED = 20261129

const READERS = {
  gerber: (bytes: Uint8Array) => shapeOfLayer(readGerber(bytes).objects, { toleranceNm: 20_000 }).areaMm2,
  drill: (bytes: Uint8Array) => readDrill(bytes).objects.count,
  job: (bytes: Uint8Array) => readJob(bytes).layers.length,
  netlist: (bytes: Uint8Array) => readNetlist(bytes).points.length,
  ipc2581: (bytes: Uint8Array) => readIpc2581(bytes).layers.length,
}

test.each(Object.entries(READERS))(
  '%s: whatever the bytes are, there is an answer with finite numbers',
  (kind, read) => {
    const random = seededRandom(SEED)
    const seeds = readdirSync(`test/fixtures/artwork/${kind}`).map((file) => readFixture(`${kind}/${file}`))
    for (let run = 0; run < RUNS; run += 1) {
      const bytes = mutate(seeds[run % seeds.length] ?? new Uint8Array(), random)
      expect(Number.isFinite(read(bytes)), `run ${run}`).toBe(true)
    }
  },
)

test('a set of anything is read', () => {
  const random = seededRandom(SEED)
  const bytes = readFixture('gerber/attributes.gbr')
  for (let run = 0; run < 50; run += 1)
    expect(readSet([{ name: 'a', bytes: mutate(bytes, random) }]).files).toHaveLength(1)
})
