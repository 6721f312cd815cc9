import fc from 'fast-check'

/** Recorded, so that a failure on one machine is the same failure on the next. */
export const PROPERTY_SEED = 20260417

/** Each property takes well under a second alone; a machine busy with other tests must not fail it. */
export const PROPERTY_TIMEOUT_MS = 60_000

/** Runs a property with the recorded seed. */
export function holds<T extends [unknown, ...unknown[]]>(
  property: fc.IPropertyWithHooks<T>,
  { numRuns = 200 }: { numRuns?: number } = {},
): void {
  fc.assert(property, { seed: PROPERTY_SEED, numRuns })
}
