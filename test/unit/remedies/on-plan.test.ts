import { describe, expect, it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { applyDesignPatch, findRemedies } from '@/lib/engine/remedies'
import { areasOf, stretchPlan, widenPlan } from '@/lib/plan'
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

  it('has the corners of its routes near the borders of the area, so that they run straight through the bend', () => {
    const pulled = stretchPlan(plan, axis, 82, 2.5)
    // It turned 18 mm from one border and 4 mm from the other.
    const corners = pulled?.routes.find(({ id }) => id === 'encoder-route')?.nodes.map(({ atMm }) => atMm[0])
    expect(corners).toEqual([6, 54.5, 169.5, 99 + 82, 99 + 82])
    expect(pulled?.routes.find(({ id }) => id === 'drive-return-route')?.nodes[0]?.atMm).toEqual([6, 11])
  })

  it('stays as it is where a slanted edge of the outline would change its direction', () => {
    const outline = plan.outline?.map((node) =>
      node.atMm[0] === 89.7 ? { ...node, atMm: [89.7, 7.9] as [number, number] } : node,
    )
    expect(stretchPlan({ ...plan, outline: outline ?? null }, axis, 82)).toBeNull()
  })
})

describe('a plan whose area is made wider', () => {
  const wider = widenPlan(plan, axis, 6.5)

  it('has its two edges moved apart with their fillets, a step where an edge goes on, and the bend from edge to edge', () => {
    const points = wider?.outline?.map(({ atMm }) => atMm.join(' ')) ?? []
    // By hand: the hinge lay from y 8 to 26, its upper edge goes on past x = 90 to the optics.
    for (const point of ['52 4.45', '52.3 4.75', '89.7 4.75', '90 4.45', '90 26', '90 29.25', '52.3 29.25', '52 29.55'])
      expect(points).toContain(point)
    const line = wider?.bendLines.find(({ id }) => id === axis.id)
    expect([line?.fromMm[1], line?.toMm[1]]).toEqual([4.75, 29.25])
    expect(wider?.dividingLines[0]?.nodes.map(({ atMm }) => atMm[1])).toEqual([4.45, 29.55])
  })

  it('has its areas as before, one of them wider, and can be taken for no other part', () => {
    if (wider === null) throw new Error('it can be widened')
    expect(areasOf(wider).problems).toEqual([])
    expect(
      areasOf(wider)
        .areas.map(({ zoneId }) => zoneId)
        .toSorted(),
    ).toEqual(
      areasOf(plan)
        .areas.map(({ zoneId }) => zoneId)
        .toSorted(),
    )
    const edited = evaluate({ ...design, plan: wider }).items.find(({ itemId }) => itemId === 'plan-agreement')
    expect(JSON.stringify(edited?.outcomes)).toMatch(/Width of zone Hinge: stated 18 mm, drawn 24.5 mm/)
  })

  it('stays as it is where what it ends on is no wider, or the line ends on nothing', () => {
    expect(widenPlan(plan, axis, 40)).toBeNull()
    expect(widenPlan(plan, { fromMm: [77, 10], toMm: [77, 20] }, 2)).toBeNull()
  })

  it('is what a remedy with a wider zone draws, so that plan and numbers agree', () => {
    const remedy = findRemedies(design, 'hinge', { mostChanges: 2 }).remedies.find(({ id }) =>
      id.startsWith('wider-zone'),
    )
    expect(remedy?.movedItems.map(({ itemId }) => itemId)).not.toContain('plan-agreement')
    const items = evaluate(applyDesignPatch(design, remedy?.patch ?? [])).items
    expect(items.find(({ itemId }) => itemId === 'plan-agreement')?.verdict).not.toBe('fails')
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

  it('lead with a set that makes no item of weight fail on the plan or folded, as the full evaluation says', () => {
    expect(first.judged).toBe('folded')
    const before = new Map(evaluate(design).items.map(({ itemId, verdict }) => [itemId, verdict]))
    const after = evaluate(applyDesignPatch(design, first.patch)).items
    expect(
      after.flatMap(({ itemId, verdict }) => (verdict === 'fails' && before.get(itemId) !== 'fails' ? [itemId] : [])),
    ).toEqual([])
    for (const { itemId, after: verdict } of first.movedItems) {
      expect(verdict, itemId).toBe(after.find((item) => item.itemId === itemId)?.verdict)
    }
    // Straight film on either side, and nothing beside the bend nearer than its limit.
    const beside = after.filter(({ itemId }) =>
      ['component-to-bend', 'hole-to-bend', 'direction-change-in-bend'].includes(itemId),
    )
    // An opening at the other bend is too near as it was before.
    const film = after.find(({ itemId }) => itemId === 'straight-film')?.outcomes ?? []
    const tooNear = film.filter((outcome) => outcome.kind === 'decided' && outcome.verdict === 'fails')
    expect(tooNear.map(({ places }) => places[0]?.kind)).toEqual(['coverlay-opening'])
    expect(beside.map(({ itemId, verdict }) => [itemId, verdict])).toEqual(
      expect.arrayContaining([['component-to-bend', 'meets']]),
    )
  })

  it('have the figures of the plan also where they were judged by its dimensions', () => {
    for (const remedy of report.remedies
      .filter(({ judged, forbiddenBy }) => judged !== 'folded' && forbiddenBy.length === 0)
      .slice(0, 12)) {
      const edited = applyDesignPatch(design, remedy.patch)
      const bend = evaluate(edited).bends.find(({ bendId }) => bendId === 'hinge')
      expect(bend?.peakStrainPct, remedy.id).toBeCloseTo(remedy.after.peakStrainPct ?? Number.NaN, 9)
    }
  })

  it('are taken back to the very same document', () => {
    const edited = applyDesignPatch(design, first.patch)
    expect(applyDesignPatch(edited, first.undoPatch)).toEqual(design)
  })
})
