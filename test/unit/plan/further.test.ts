import { describe, expect, it } from 'vitest'
import { type Design, evaluateDraft } from '@/lib/engine'
import { EMPTY_PLAN, measurePlan, type Plan } from '@/lib/plan'
import { readDrawnDesign } from '../engine-assembly/demo-design-files'

const FACTS = {
  bandWidthsMm: new Map(),
  zoneOfBend: new Map(),
  flatZoneIds: new Set<string>(),
  drillsMm: new Map(),
  conductors: new Map(),
  conductorLayerIds: [],
}
const box = (x0: number, y0: number, x1: number, y1: number) =>
  (
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ] as [number, number][]
  ).map((atMm) => ({ atMm, viaMm: null }))
const measure = (plan: Partial<Plan>) => measurePlan({ ...EMPTY_PLAN, outline: box(0, 0, 20, 10), ...plan }, FACTS)

const END: Plan['connectorEnds'][number] = {
  id: 'end',
  connectorId: 'optics',
  fromMm: [0, 0],
  toMm: [3, 4],
  insertionDepthMm: null,
  contactCount: 7,
  firstContactMm: [0.6, 0.8],
  contactStepMm: [0.3, 0.4],
  contactLengthMm: null,
  platedLengthMm: null,
  target: null,
}

describe('a contact end, on a slope of 3 to 4', () => {
  it('is 5 mm wide with a pitch of 0.5 mm, its contacts 1 mm from both edges', () => {
    expect(measure({ connectorEnds: [END] }).ends).toEqual([
      { connectorId: 'optics', endWidthMm: 5, pitchMm: 0.5, edgeToContactMm: expect.closeTo(1, 12) },
    ])
  })
  it('has its last contact nearer with one more, and past the edge with three', () => {
    const room = (contactCount: number) =>
      measure({ connectorEnds: [{ ...END, contactCount }] }).ends[0]?.edgeToContactMm
    expect(room(8)).toBeCloseTo(0.5, 12)
    expect(room(11)).toBe(0)
  })
  it('says nothing of contacts that are not drawn', () => {
    expect(measure({ connectorEnds: [{ ...END, contactStepMm: null }] }).ends[0]).toMatchObject({
      pitchMm: null,
      edgeToContactMm: null,
    })
  })
})

describe('a bend line', () => {
  const AREA = { id: 'arm', name: 'Arm', zoneId: 'arm', markMm: [1, 1] as [number, number] }
  const facts = { ...FACTS, bandWidthsMm: new Map([['fold', 2]]), zoneOfBend: new Map([['fold', 'arm']]) }
  const bandsOf = (plan: Partial<Plan>) =>
    measurePlan({ ...EMPTY_PLAN, outline: box(0, 0, 20, 10), areas: [AREA], ...plan }, facts).bands
  const line = (toY: number) => [
    { id: 'fold', bendId: 'fold', fromMm: [10, 0] as [number, number], toMm: [10, toY] as [number, number] },
  ]
  const window = [{ id: 'window', name: 'Window', nodes: box(5, 3, 15, 7) }]
  const border = { id: 'along', name: 'along', nodes: box(0, 4, 20, 4).slice(0, 2) }

  it('makes a band on each side of a window, of which each has its own length', () => {
    expect(bandsOf({ cutOuts: window, bendLines: line(10) })).toMatchObject([
      { id: 'fold', lineId: 'fold', axisLengthMm: 3, reachesEdges: true, isOverBorder: false, area: 0, meets: [] },
      { id: 'fold 2', lineId: 'fold', axisLengthMm: 3, reachesEdges: true, isOverBorder: false, area: 0, meets: [] },
    ])
    const [lower, upper] = bandsOf({ cutOuts: window, bendLines: line(10) })
    expect([lower?.region?.areaNm2, upper?.region?.areaNm2]).toEqual([6e12, 6e12])
  })

  it('may end on the window, and then bends one side alone', () => {
    expect(bandsOf({ cutOuts: window, bendLines: line(3) })).toMatchObject([{ axisLengthMm: 3, reachesEdges: true }])
    expect(bandsOf({ cutOuts: window, bendLines: line(5) })).toMatchObject([{ axisLengthMm: 3, reachesEdges: false }])
  })

  it('does not reach an edge where it ends on a border of areas, and says where it runs over one', () => {
    const divided = {
      dividingLines: [border],
      areas: [AREA, { ...AREA, id: 'upper', markMm: [1, 8] as [number, number] }],
    }
    expect(bandsOf({ ...divided, bendLines: line(4) })).toMatchObject([{ axisLengthMm: 4, reachesEdges: false }])
    expect(bandsOf({ ...divided, bendLines: line(10) })).toMatchObject([
      { axisLengthMm: 6, reachesEdges: true, isOverBorder: true },
    ])
  })
})

describe('a stiffener past the end of the coverlay', () => {
  const overlap = (stiffener: ReturnType<typeof box>, ...openings: ReturnType<typeof box>[]) =>
    measure({
      stiffeners: [{ id: 's', stiffenerId: 's', nodes: stiffener }],
      coverlayOpenings: openings.map((nodes, at) => ({ id: `o-${at}`, openingId: 'o', layerId: null, nodes })),
    }).overlapsMm.get('s')

  it('reaches as far as their edges are apart, the least of several', () => {
    expect(overlap(box(12, 0, 20, 10), box(15, 0, 20, 10))).toBe(3)
    expect(overlap(box(12, 0, 20, 10), box(15, 0, 20, 4), box(12.5, 6, 20, 10))).toBe(0.5)
  })
  it('does not reach where the opening goes on past it, or ends with it', () => {
    expect(overlap(box(12, 0, 20, 10), box(10, 0, 20, 10))).toBe(0)
    expect(overlap(box(12, 0, 20, 10), box(12, 0, 20, 10))).toBe(0)
  })
  it('has no such length at a window within the coverlay, nor where neither is near the other', () => {
    expect(overlap(box(12, 0, 20, 10), box(14, 4, 16, 6))).toBeUndefined()
    expect(overlap(box(0, 0, 5, 10), box(15, 0, 20, 10))).toBeUndefined()
  })
})

describe('what is drawn takes the place of what was stated', () => {
  const base = readDrawnDesign('skua-rev-b')
  const change = (edit: (design: Design) => void) => {
    const design = structuredClone(base)
    edit(design)
    return evaluateDraft(design).items
  }
  const planOf = (design: Design): Plan => {
    if (design.plan === null) throw new Error('no plan')
    return design.plan
  }
  const outcomes = (items: ReturnType<typeof change>, id: string) =>
    JSON.stringify(items.find(({ itemId }) => itemId === id)?.outcomes)

  it('a pitch of 0.6 mm on the plan misses the connector, and contradicts the 0.5 mm that were stated', () => {
    const items = change((design) => {
      for (const end of planOf(design).connectorEnds) {
        end.contactStepMm = [0.6, 0]
        end.contactCount = 22
      }
    })
    expect(items.find(({ itemId }) => itemId === 'contact-geometry')?.verdict).toBe('fails')
    expect(outcomes(items, 'contact-geometry')).toContain('drawn in plan')
    expect(outcomes(items, 'plan-agreement')).toContain('stated 0.5 mm, drawn 0.6 mm')
  })

  it('a stiffener that ends with the coverlay fails, whatever overlap was stated', () => {
    const items = change((design) => {
      for (const stiffener of planOf(design).stiffeners) stiffener.nodes = box(94.75, 56, 109.25, 63)
    })
    expect(items.find(({ itemId }) => itemId === 'stiffener-overlap')?.verdict).toBe('fails')
    expect(outcomes(items, 'plan-agreement')).toContain('stated 1 mm, drawn 0 mm')
  })

  it('an array of other parts, and letters of another height, are findings', () => {
    const items = change((design) => {
      const { array, markings } = planOf(design)
      if (array !== null) array.columns = 3
      for (const marking of markings) marking.heightMm = 0.5
    })
    expect(outcomes(items, 'plan-agreement')).toContain('stated 4, drawn 6')
    expect(items.find(({ itemId }) => itemId === 'marking')?.verdict).toBe('fails')
  })
})
