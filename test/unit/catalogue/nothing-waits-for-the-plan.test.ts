import { describe, expect, it } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import { EMPTY_PLAN } from '@/lib/plan'
import { readDrawnDesign } from '../engine-assembly/demo-design-files'

/** Items that nobody can tell of, or that are not computed, for want of something that a plan would hold. */
const listWaiting = (design: Design) =>
  evaluate(design).items.flatMap(({ itemId, outcomes }) =>
    outcomes
      .filter((outcome) => outcome.kind === 'not-computed' || outcome.kind === 'cannot-tell')
      // The room of the folded part is stated, not drawn: revision A states none.
      .filter((outcome) => /"plan",(?!"housing")/.test(JSON.stringify(outcome)))
      .map(() => itemId),
  )

describe.each(['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const)('%s, whose plan is drawn', (name) => {
  const design = readDrawnDesign(name)

  it('has no item that waits for the plan; with an empty plan some do', () => {
    expect(listWaiting(design)).toEqual([])
    expect(listWaiting({ ...design, plan: EMPTY_PLAN }).length).toBeGreaterThan(0)
  })
})
