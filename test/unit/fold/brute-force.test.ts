import { expect, it, vi } from 'vitest'
import { createRandomStream } from '@/lib/engine/numerics'
import { compareWithBruteForce } from './brute-force'

vi.setConfig({ testTimeout: 240_000 })

/** A few of the thousand that `npm run bench -- fold` holds against the same brute force. */
const PARTS = 24

it('clashes and gaps of random parts, folded and on the way, hold against a dense sample of points', () => {
  for (let seed = 0; seed < PARTS; seed += 1) {
    const stream = createRandomStream(seed)
    expect(
      compareWithBruteForce(() => stream.nextUniform()),
      `part ${seed}`,
    ).toEqual([])
  }
})
