import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { makeDesign, makeSnapshot } from '../snapshot-factory'
import { apply, evaluateModel } from './apply'
import { policy, step } from './draws'
import { checkInvariants } from './invariants'
import { FABRICATORS } from './steps'

describe('random sequences of legal and illegal acts', () => {
  test('never release with a blocker and never leave a live signature on other content', () => {
    let released = 0
    let voided = 0
    fc.assert(
      fc.property(
        fc.constantFrom('preparing' as const, 'fabricator-review' as const, 'awaiting-signature' as const),
        fc.array(step, { minLength: 40, maxLength: 110, size: 'max' }),
        policy,
        (stage, steps, rules) => {
          const signOffPolicy = { version: 1, rules }
          const sharedWith = Object.values(FABRICATORS)
          let snapshot = evaluateModel(makeSnapshot({ stage, design: makeDesign(), signOffPolicy, sharedWith }))
          let wasReleased = false
          for (const next of steps) {
            const after = apply(snapshot, next)
            wasReleased ||= after.stage === 'released'
            checkInvariants(snapshot, after)
            snapshot = after
          }
          if (snapshot.signatures.some((signature) => signature.voided !== null)) voided += 1
          if (wasReleased) released += 1
        },
      ),
      { seed: 20270301, numRuns: 350 },
    )
    // The draws must reach what they are about, or the test proves nothing.
    expect(released).toBeGreaterThan(10)
    expect(voided).toBeGreaterThan(10)
  }, 400_000)
})
