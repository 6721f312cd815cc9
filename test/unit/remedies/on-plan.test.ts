import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { applyDesignPatch, findRemedies } from '@/lib/engine/remedies'
import { stretchPlan } from '@/lib/plan'
import { readDrawnDesign } from '../engine-assembly/demo-design-files'

const design = readDrawnDesign('skua-rev-a')
const axis = design.plan?.bendLines.find(({ bendId }) => bendId === 'hinge')
if (design.plan === null || axis === undefined) throw new Error('the demo part is drawn')
const plan = design.plan

describe('a plan that is pulled apart at a bend', () => {
  it('gets the length beyond the axis alone, and the axis comes to lie in the middle of its area', () => {
    const pulled = stretchPlan(plan, axis, 82)
    const xOf = (id: string) => pulled?.bendLines.find((line) => line.id === id)?.fromMm[0]
    // The hinge runs from 52 to 90 mm: it ends at 172 mm then, and its middle lies at 112 mm.
    expect(xOf(axis.id)).toBe(112)
    expect(xOf('fold-axis')).toBe(95 + 82)
    expect(pulled?.outline?.[0]).toEqual(plan.outline?.[0])
  })

  it('stays as it is where a slanted edge of the outline would change its direction', () => {
    const outline = plan.outline?.map((node) =>
      node.atMm[0] === 89.7 ? { ...node, atMm: [89.7, 7.9] as [number, number] } : node,
    )
    expect(stretchPlan({ ...plan, outline: outline ?? null }, axis, 82)).toBeNull()
  })
})

describe('remedies of a part that is drawn', () => {
  const report = findRemedies(design, 'hinge')
  const [first] = report.remedies
  if (first === undefined) throw new Error('there are remedies')

  it('lead with a set that meets on the plan, whose zone is as long in plan as in the numbers', () => {
    expect(report.arrival).toMatchObject({ kind: 'meets', remedyId: first.id, makesPartLarger: true })
    const edited = applyDesignPatch(design, first.patch)
    const hinge = evaluate(edited).items.filter(({ itemId }) =>
      ['bend-fit', 'plan-agreement', 'bend-strain'].includes(itemId),
    )
    expect(hinge).toHaveLength(3)
    expect(hinge.map(({ verdict }) => verdict)).not.toContain('fails')
    expect(edited.plan).not.toEqual(design.plan)
  })

  it('are taken back to the very same document', () => {
    const edited = applyDesignPatch(design, first.patch)
    expect(applyDesignPatch(edited, first.undoPatch)).toEqual(design)
  })
})
