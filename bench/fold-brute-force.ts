import { createRandomStream } from '@/lib/engine/numerics'
import { compareWithBruteForce } from '@/test/unit/fold/brute-force'

/** The unit test holds the first few of them. */
const PARTS = 1000
const TOLD_EACH = 50

let wrong = 0
for (let seed = 0; seed < PARTS; seed += 1) {
  const stream = createRandomStream(seed)
  const problems = compareWithBruteForce(() => stream.nextUniform())
  wrong += problems.length > 0 ? 1 : 0
  for (const problem of problems) process.stdout.write(`part ${seed}: ${problem}\n`)
  if ((seed + 1) % TOLD_EACH === 0)
    process.stdout.write(`${seed + 1} parts, ${wrong} contradicted by the brute force\n`)
}
process.exitCode = wrong > 0 ? 1 : 0
