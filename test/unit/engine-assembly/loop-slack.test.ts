import { describe, expect, it } from 'vitest'
import { evaluateDraft } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'
import { aimEnd } from '../catalogue/examples/geometry/folded-fit'

/** The strip of the example: one half turn of 2 mm inside radius about 32 mm, its end 90 mm along it, aimed `byMm` off where it comes to lie along x. */
function slackOf(byMm: number, withinMm: number | null, profileMm: number | null = 0.1) {
  const design = structuredClone(makeExampleDesign())
  aimEnd(design, byMm, [-1, 0, 0], withinMm)
  design.brief.tolerances.outlineMm = profileMm
  const { bends, items } = evaluateDraft(design)
  const lengthMm = bends[0]?.developedLengthMm ?? 0
  const outcome = items
    .find(({ itemId }) => itemId === 'connector-targets')
    ?.outcomes.find((each) => each.kind === 'decided' && each.limit.key === 'loopSlackMm')
  if (outcome?.kind !== 'decided') throw new Error('no slack was told')
  return { outcome, lengthMm, fromMm: 32 - lengthMm / 2 }
}

describe('the slack of film to a contact end', () => {
  it('is its length from the first bend less the straight way to the target (exact geometry)', () => {
    const { outcome, fromMm } = slackOf(0, 12)
    // From the border of the bend to the end, 90 mm along the strip; the target lies at -26 mm, in the height of the top face.
    const lengthMm = 90 - fromMm
    const bridgedMm = fromMm + 26
    expect(outcome.value.value).toBeCloseTo(lengthMm - bridgedMm, 1)
    expect(outcome.verdict).toBe('meets')
    expect(outcome.summary).toMatch(/of slack, \d+(\.\d+)? to \d+(\.\d+)? mm over the profile tolerance/)
  })

  it('below zero fails, however the bends are made, but for what the end may be off', () => {
    const far = slackOf(500, 12)
    expect(far.outcome.verdict).toBe('fails')
    expect(far.outcome.summary).toMatch(/is lacking, however it is bent/)
    // Aimed along the strip's own line, beyond its end by 1 mm: within what the end may be off, or not.
    const straight = 90 + 26
    expect(slackOf(straight + 1, 2).outcome.verdict).toBe('meets')
    expect(slackOf(straight + 3, 2).outcome.verdict).toBe('fails')
  })

  it('goes over the profile tolerance: enough at nominal alone is a thin margin', () => {
    const straight = 90 + 26
    expect(slackOf(straight - 0.05, null, 0.2).outcome.verdict).toBe('thin-margin')
    expect(slackOf(straight - 0.05, null, 0).outcome.verdict).toBe('meets')
  })
})
