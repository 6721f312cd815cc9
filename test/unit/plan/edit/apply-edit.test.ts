import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { EMPTY_PLAN, type Plan, planSchema } from '@/lib/plan'
import { applyEdit, type DrawnRef, type PlanEdit, STARTING_SHAPES, startingShape } from '@/lib/plan/edit'

const SIZES = { lengthMm: 60, widthMm: 40, armMm: 12, cornerRadiusMm: 2 }
const OUTLINE: DrawnRef = { list: 'outline' }

function apply(plan: Plan, edit: PlanEdit): { plan: Plan; undo: PlanEdit } {
  const result = applyEdit(plan, edit)
  if (!result.ok) throw new Error(result.reason)
  return result
}

const furnished = (kind: (typeof STARTING_SHAPES)[number]): Plan => ({
  ...EMPTY_PLAN,
  ...startingShape(kind, SIZES),
  areas: [{ id: 'arm', name: 'Arm', zoneId: null, markMm: [3, 3] }],
  bendLines: [{ id: 'fold', bendId: 'fold', fromMm: [30, 0], toMm: [30, 12] }],
  dividingLines: [
    {
      id: 'edge',
      name: 'Edge',
      nodes: [
        { atMm: [20, 0], viaMm: [21, 6] },
        { atMm: [20, 12], viaMm: null },
      ],
    },
  ],
  pads: [{ id: 'pad', padId: 'pad', atMm: [5, 5], sizeMm: null, isRound: null, anchorsMm: [[6, 5]] }],
})

const place = fc.tuple(fc.integer({ min: -90_000, max: 90_000 }), fc.integer({ min: -90_000, max: 90_000 }))
const pointMm = place.map(([x, y]): [number, number] => [x / 1000, y / 1000])
const ref: fc.Arbitrary<DrawnRef> = fc.constantFrom<DrawnRef[]>(
  OUTLINE,
  { list: 'dividingLines', id: 'edge' },
  { list: 'cutOuts', id: 'opening' },
  { list: 'bendLines', id: 'fold' },
  { list: 'areas', id: 'arm' },
  { list: 'pads', id: 'pad' },
  { list: 'holes', id: 'gone' },
)
const at = fc.integer({ min: -1, max: 14 })
const simple: fc.Arbitrary<PlanEdit> = fc.oneof(
  fc.record({ act: fc.constant('move' as const), of: ref, byMm: pointMm }),
  fc.record({
    act: fc.constant('move-point' as const),
    of: ref,
    point: fc.oneof(
      at.map((index) => ({ field: 'nodes' as const, at: index })),
      fc.constantFrom({ field: 'fromMm' as const }, { field: 'markMm' as const }),
    ),
    toMm: pointMm,
  }),
  fc.record({ act: fc.constant('remove-point' as const), of: ref, at }),
  fc.record({
    act: fc.constant('split-edge' as const),
    of: ref,
    at,
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  fc.record({ act: fc.constant('set-arc' as const), of: ref, at, viaMm: fc.option(pointMm) }),
  fc.record({
    act: fc.constant('add-point' as const),
    of: ref,
    at,
    node: pointMm.map((atMm) => ({ atMm, viaMm: null })),
  }),
  fc.constantFrom<PlanEdit[]>(
    { act: 'remove', list: 'areas', id: 'arm' },
    { act: 'remove', list: 'bendLines', id: 'fold' },
    { act: 'add', list: 'areas', at: 0, entry: { id: 'arm', name: 'Back', zoneId: 'zone', markMm: [9, 9] } },
    { act: 'change', list: 'areas', id: 'arm', fields: { id: 'leg', zoneId: 'other' } },
    { act: 'change', list: 'bendLines', id: 'fold', fields: { bendId: 'hinge' } },
    { act: 'set', field: 'rollingDirectionDeg', value: 45 },
    { act: 'set', field: 'outline', value: null },
  ),
)
const edits = fc.oneof(
  { weight: 5, arbitrary: simple },
  { weight: 1, arbitrary: fc.array(simple, { maxLength: 4 }).map((list): PlanEdit => ({ act: 'all', edits: list })) },
)

describe('edits of a plan', () => {
  it('come back one by one to the very same document, whatever the order', () => {
    fc.assert(
      fc.property(fc.constantFrom(...STARTING_SHAPES), fc.array(edits, { maxLength: 25 }), (kind, list) => {
        const start = furnished(kind)
        const steps: { before: string; undo: PlanEdit; after: string }[] = []
        let plan = start
        for (const edit of list) {
          const result = applyEdit(plan, edit)
          if (!result.ok) {
            expect(result.reason).not.toBe('')
            continue
          }
          steps.push({ before: JSON.stringify(plan), undo: result.undo, after: JSON.stringify(result.plan) })
          plan = result.plan
        }
        for (const { before, undo, after } of steps.reverse()) {
          const back = apply(plan, undo)
          expect(JSON.stringify(back.plan)).toBe(before)
          // And forward again: redo is the undo of the undo.
          expect(JSON.stringify(apply(back.plan, back.undo).plan)).toBe(after)
          plan = back.plan
        }
      }),
      { numRuns: 400 },
    )
  })

  it('leave every coordinate a whole number of nanometres, and every list readable', () => {
    fc.assert(
      fc.property(fc.constantFrom(...STARTING_SHAPES), fc.array(edits, { maxLength: 10 }), (kind, list) => {
        const plan = list.reduce((now, edit) => {
          const result = applyEdit(now, edit)
          return result.ok ? result.plan : now
        }, furnished(kind))
        expect(planSchema.safeParse(plan).error?.issues ?? []).toEqual([])
      }),
      { numRuns: 200 },
    )
  })

  it('move a corner with its arcs: the fillet keeps its share of a circle', () => {
    const { outline } = furnished('L')
    const at = (outline ?? []).findIndex(({ viaMm }) => viaMm !== null)
    const before = outline?.[at]
    if (before === undefined) throw new Error('no arc')
    const [x, y] = before.atMm
    const { plan } = apply(furnished('L'), {
      act: 'move-point',
      of: OUTLINE,
      point: { field: 'nodes', at },
      toMm: [x + 1, y - 1],
    })
    const [from, to] = [plan.outline?.[at], plan.outline?.[at + 1]]
    const sagitta = (a?: number[] | null, via?: number[] | null, b?: number[] | null) => {
      if (a == null || via == null || b == null) throw new Error('no arc left')
      const [px = 0, py = 0, qx = 0, qy = 0] = [...a, ...b]
      return (
        Math.abs((qx - px) * ((via[1] ?? 0) - py) - (qy - py) * ((via[0] ?? 0) - px)) /
        ((qx - px) ** 2 + (qy - py) ** 2)
      )
    }
    // Height over chord of a quarter circle: (1 - cos 45°) / (2 sin 45°) (closed form).
    expect(sagitta(from?.atMm, from?.viaMm, to?.atMm)).toBeCloseTo((Math.SQRT2 - 1) / 2, 5)
  })

  it('split an arc into two of the same circle', () => {
    const line: DrawnRef = { list: 'dividingLines', id: 'edge' }
    const { plan } = apply(furnished('strip'), { act: 'split-edge', of: line, at: 0, share: 0.5 })
    const nodes = plan.dividingLines[0]?.nodes ?? []
    expect(nodes).toHaveLength(3)
    // Circle through (20, 0), (21, 6), (20, 12): centre (2.5, 6), radius 18.5, by hand.
    for (const point of nodes.flatMap(({ atMm, viaMm }) => (viaMm === null ? [atMm] : [atMm, viaMm]))) {
      expect(Math.hypot(point[0] - 2.5, point[1] - 6)).toBeCloseTo(18.5, 5)
    }
  })

  it('refuse what cannot be, and say why', () => {
    const plan = furnished('strip')
    const reasons = (
      [
        { act: 'remove', list: 'holes', id: 'none' },
        { act: 'add', list: 'areas', at: 0, entry: { id: 'arm', name: 'x', zoneId: null, markMm: [0, 0] } },
        { act: 'set-arc', of: OUTLINE, at: 0, viaMm: [30, 0] },
        { act: 'move', of: OUTLINE, byMm: [6000, 0] },
        { act: 'remove-point', of: { list: 'dividingLines', id: 'edge' }, at: 0 },
        { act: 'split-edge', of: OUTLINE, at: 0, share: 1e-12 },
      ] satisfies PlanEdit[]
    ).map((edit) => {
      const result = applyEdit(plan, edit)
      return result.ok ? 'done' : result.reason
    })
    expect(reasons).toEqual([
      'this is not in the plan any more',
      '"arm" is in the plan already',
      'no arc of at most a half circle runs through this point',
      'a plan reaches from -5000 to 5000 mm',
      'two points are the least',
      'there is no room for another point',
    ])
  })

  it('do several acts as one, or none of them', () => {
    const plan = furnished('strip')
    const result = applyEdit(plan, {
      act: 'all',
      edits: [
        { act: 'remove', list: 'areas', id: 'arm' },
        { act: 'remove', list: 'areas', id: 'arm' },
      ],
    })
    expect(result.ok).toBe(false)
    expect(plan.areas).toHaveLength(1)
  })
})
