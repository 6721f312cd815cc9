import { expect, it } from 'vitest'
import { GOOD_DXF, GOOD_SVG, makeFuzzedFile, makeRandom, readFuzzed } from './fuzz'

/** A short run; the long one of 100,000 is in the bench script. The seed stands in the name of a failure. */
it('files made of anything neither throw nor hang', () => {
  const seed = 20261129
  const random = makeRandom(seed)
  let pieces = 0
  for (let run = 0; run < 1500; run += 1) {
    const bytes = makeFuzzedFile(random, run % 10 === 0 ? GOOD_SVG : GOOD_DXF)
    try {
      pieces += readFuzzed(bytes)
    } catch (error) {
      throw new Error(`seed ${seed}, run ${run}: ${String(error)}\n${new TextDecoder().decode(bytes)}`)
    }
  }
  expect(pieces).toBeGreaterThan(1000)
})
