import 'server-only'
import { type Nester, type Nesting, NestingMemory } from '@/lib/fabrication'
import { type NestingOrder, runJob } from '@/lib/jobs'
import { ComputationNeededError } from '../store/computations'

/** As long as the server runs. What is forgotten by a restart is nested again, in some tenths of a second for each panel format. */
const memory = new NestingMemory()

/** Stands in until the panels are filled: whatever rests on it is thrown away. */
const NOT_NESTED: Nesting = {
  placements: [],
  count: 0,
  utilisationFraction: 0,
  method: 'grid',
  gridCount: 0,
  mixedGridCount: 0,
  turnsDeg: [],
  excessFraction: 0,
  notes: [],
}

/**
 * Does work that rests on parts on panels. Where some are not at hand they are all nested off the request path, outside of any
 * transaction, and the work is done once more.
 *
 * @throws ComputationNeededError  for `computing`, which every transaction runs in
 */
export function withNesting<T>(work: (nest: Nester) => T): T {
  const missing: NestingOrder[] = []
  const value = work((part, format, extra) => {
    const known = memory.find(part, format, extra)
    if (known === null) missing.push({ part, format, extra })
    return known ?? NOT_NESTED
  })
  if (missing.length === 0) return value
  throw new ComputationNeededError(async () => {
    const nestings = await runJob('nesting', missing)
    for (const [at, nesting] of nestings.entries()) {
      const order = missing[at]
      if (order !== undefined) memory.keep(nesting, order.part, order.format, order.extra)
    }
  })
}
