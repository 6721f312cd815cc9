import { describe, expect, it } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import { type Design, evaluateDraft } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'
import { drawStrip } from '../catalogue/examples/geometry/folded-clearance'

/** Three half turns one way: the third comes to lie round the first, about the same centre, where the leaves between them are equally long. */
function roll(stepMm: number): Design {
  const design = structuredClone(makeExampleDesign())
  design.bends = design.bends.map((bend, index) => ({
    ...bend,
    insideRadiusMm: 3 + index * stepMm,
    angleDeg: 180,
    insideFace: 'top' as const,
  }))
  drawStrip(design, 3, [
    ['hinge', 42],
    ['rocker', 56],
    ['fold', 70],
  ])
  const [first, , third] = evaluateDraft(design).bends.map(({ developedLengthMm }) => developedLengthMm)
  const axis = design.plan?.bendLines[2]
  const x = Math.round((70 + ((third ?? 0) - (first ?? 0)) / 2) * 1000) / 1000
  if (axis !== undefined) Object.assign(axis, { fromMm: [x, 0], toMm: [x, 12] })
  return design
}

const saidOf = (design: Design) =>
  evaluateDraft(design)
    .items.find(({ itemId }) => itemId === 'folded-clearance')
    ?.outcomes.flatMap((outcome) => (/lies over/.test(JSON.stringify(outcome)) ? [outcome] : [])) ?? []

describe('bends that lie over each other', () => {
  it('are named by the item on folded clearance, with both bends, and nobody can tell below the clearance', () => {
    const [near, ...others] = saidOf(roll(0.15))
    expect(others).toEqual([])
    expect(near?.places.map(({ id }) => id)).toEqual(['fold', 'hinge'])
    expect(near?.kind).toBe('cannot-tell')
    const [far] = saidOf(roll(0.6))
    expect(far?.kind === 'decided' && far.verdict).toBe('meets')
  })

  it('are named below the folded view of the drawing, and nowhere where there are none', () => {
    const bendsOver = (design: Design) =>
      makeSheetContents(design, evaluateDraft(design), FILE_UNITS).flatMap((block) =>
        block.kind === 'folded' ? block.notes : [],
      )
    expect(bendsOver(roll(0.15))).toHaveLength(1)
    const flat = structuredClone(makeExampleDesign())
    drawStrip(flat, 10, [
      ['hinge', 32],
      ['rocker', 54],
      ['fold', 70],
    ])
    expect(bendsOver(flat)).toEqual([])
  })
})
