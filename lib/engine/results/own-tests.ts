import type { BendResult, OwnTestsUse } from './bend'
import { describeLimitOwner } from './outcome'

/** `set Hinge 18 of Quillmoor (workspace), n = 12, 9 failed`: the one way in which screens, reports and sentences name a set. */
export function nameOwnTests({
  set,
  owner,
  specimens,
  failures,
}: Pick<OwnTestsUse, 'set' | 'owner' | 'specimens' | 'failures'>): string {
  return `set ${set} of ${describeLimitOwner(owner)}, n = ${specimens}, ${failures} failed`
}

/** `from own tests (set ...)`, each set once; null where the bend's life rests on none. */
export function describeOwnTests({ ownTests }: Pick<BendResult, 'ownTests'>): string | null {
  const sets = [...new Set(ownTests.map(nameOwnTests))]
  return sets.length === 0 ? null : `from own tests (${sets.join('; ')})`
}
