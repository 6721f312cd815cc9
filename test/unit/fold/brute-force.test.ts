import { expect, it, vi } from 'vitest'
import { createRandomStream } from '@/lib/engine/numerics'
import { compareWithBruteForce } from './brute-force'

vi.setConfig({ testTimeout: 240_000 })

/** A few of the thousand that `npm run bench -- fold` holds against the same brute force. */
const PARTS = 24
/** One whose two bounds of a gap were the same distance, and the lower one above in its last digit. */
const SAME_BOUNDS = 809

it('clashes and gaps of random parts, folded and on the way, hold against a dense sample of points', () => {
  for (const seed of [...Array(PARTS).keys(), SAME_BOUNDS]) {
    const stream = createRandomStream(seed)
    expect(
      compareWithBruteForce(() => stream.nextUniform()),
      `part ${seed}`,
    ).toEqual([])
  }
})
