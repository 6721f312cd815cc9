import { describe, expect, it } from 'vitest'
import { removeBend, removeZone, withoutDrawnOfRemoved } from '@/app/_components/engineering/draft'
import { addDrawn, planOf } from '@/app/_components/engineering/plan/additions'
import { withoutFaces } from '@/app/_components/engineering/plan/faces'
import { listFindings, pinFindings } from '@/app/_components/engineering/plan/findings'
import { takeOver } from '@/app/_components/engineering/plan/take-over'
import { TOOLS } from '@/app/_components/engineering/plan/tools'
import { fitView, toPlan, zoomBy } from '@/app/_components/engineering/plan/view'
import { type Design, evaluateDraft, listStiffeners, parseDesign } from '@/lib/engine'
import { areasOf, EMPTY_PLAN } from '@/lib/plan'
import { startingShape } from '@/lib/plan/edit'
import type { ImportedPlan } from '@/lib/plan/exchange'
import { readDrawnDesign } from '../engine-assembly/demo-design-files'
import { readDemo } from '../remedies/demo'

const L = startingShape('L', { lengthMm: 60, widthMm: 40, armMm: 12, cornerRadiusMm: 2 })
const start = (): Design => ({ ...readDemo('skua-rev-b'), plan: { ...EMPTY_PLAN, outline: L?.outline ?? null } })
const tool = (key: string) => {
  const found = TOOLS.find((each) => each.key === key)
  if (found === undefined) throw new Error(key)
  return found
}
const nodes = (...points: [number, number][]) => points.map((atMm) => ({ atMm, viaMm: null }))

describe('what somebody draws', () => {
  it('brings the bend and the zone that it stands for, in one step', () => {
    const divided = addDrawn(start(), tool('dividingLines'), nodes([30, 0], [30, 12]), { kind: 'none' })
    const marked = addDrawn(divided, tool('areas'), nodes([45, 6]), { kind: 'id', id: 'hinge' })
    const bent = addDrawn(marked, tool('bendLines'), nodes([45, 0], [45, 12]), { kind: 'new' })
    expect(bent.bends).toHaveLength(start().bends.length + 1)
    // Of the area that it lies in, not the first flexible one of the list.
    expect(bent.bends.at(-1)?.zoneId).toBe('hinge')
    expect(bent.plan?.bendLines).toEqual([
      { id: 'bend-line-1', bendId: bent.bends.at(-1)?.id, fromMm: [45, 0], toMm: [45, 12] },
    ])
    const zoned = addDrawn(divided, tool('areas'), nodes([6, 30]), { kind: 'new' })
    expect(zoned.construction.zones.at(-1)?.id).toBe(zoned.plan?.areas[0]?.zoneId)
    expect(parseDesign(bent).ok).toBe(true)
  })

  it('gives each kind an entry that the design takes', () => {
    const owners = { stiffeners: 'stiffener', holes: 'hole' } as const
    for (const each of TOOLS) {
      const drawn = addDrawn(start(), each, nodes([5, 5], [9, 5], [9, 9]), {
        kind: 'id',
        id: owners[each.key as 'holes'] ?? 'x',
      })
      const parsed = parseDesign(drawn)
      const faults = parsed.ok ? [] : parsed.issues.filter(({ code }) => !code.startsWith('unknown-'))
      expect(faults, each.key).toEqual([])
      expect(JSON.stringify(drawn.plan), each.key).not.toBe(JSON.stringify(start().plan))
    }
  })
})

describe('a drawing that is taken over', () => {
  const imported: ImportedPlan = {
    outline: L?.outline ?? [],
    cutOuts: [nodes([2, 2], [4, 2], [4, 4])],
    dividingLines: [nodes([30, 0], [30, 12])],
    slits: [],
    bendLines: [
      [
        [45, 0],
        [45, 12],
      ],
    ],
    stiffeners: [nodes([1, 20], [9, 20], [9, 30])],
    coverlayOpenings: [],
    components: [nodes([2, 32], [6, 32], [6, 36])],
    holes: [
      { atMm: [5, 8], diameterMm: 0.5 },
      { atMm: [7, 8], diameterMm: 0.5 },
      { atMm: [9, 8], diameterMm: null },
    ],
    issues: [],
  }
  it('brings bends and rows of the features; holes of one diameter are one row, and an unknown one stays unknown', () => {
    const before = { ...start(), plan: null }
    const after = takeOver(before, imported, null)
    expect(after.bends).toHaveLength(before.bends.length + 1)
    expect(after.features.holes.slice(before.features.holes.length).map(({ drillMm }) => drillMm)).toEqual([0.5, null])
    expect(after.plan?.holes).toHaveLength(3)
    expect(after.features.components).toHaveLength(before.features.components.length + 1)
    expect(areasOf(planOf(after)).areas).toHaveLength(2)
    expect(parseDesign(after).ok).toBe(true)
  })

  it('gives stiffeners to the layer that somebody named, and leaves them out where there is none', () => {
    const [stiffener] = listStiffeners(start())
    if (stiffener === undefined) throw new Error('no stiffener')
    expect(takeOver(start(), imported, null).plan?.stiffeners).toEqual([])
    const after = takeOver(start(), imported, stiffener.id)
    expect(after.plan?.stiffeners.map(({ stiffenerId }) => stiffenerId)).toEqual([stiffener.id])
    expect(parseDesign(after).ok).toBe(true)
  })
})

describe('findings', () => {
  it('are pinned at what they speak of, and say what the plan lacks', () => {
    const design = addDrawn(
      addDrawn(start(), tool('dividingLines'), nodes([30, 0], [30, 12]), { kind: 'none' }),
      tool('areas'),
      nodes([45, 6]),
      { kind: 'id', id: 'hinge' },
    )
    const bent = addDrawn(design, tool('bendLines'), nodes([52, 0], [52, 12]), { kind: 'id', id: 'hinge' })
    const parsed = parseDesign(bent)
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    const { areas, problems } = areasOf(planOf(parsed.value))
    const found = listFindings(parsed.value, evaluateDraft(parsed.value), { areas, problems, measures: null })
    expect(found.find(({ summary }) => summary.includes('no mark'))?.atMm).not.toBe(null)
    const pins = pinFindings(found)
    expect(new Set(pins.map(({ atMm }) => atMm.join())).size).toBe(pins.length)
    expect(pins.flatMap(({ numbers }) => numbers)).toHaveLength(found.filter(({ atMm }) => atMm !== null).length)
    expect(
      found.filter(({ ref, verdict }) => verdict === 'fails' && ref?.list === 'bendLines').map(({ atMm }) => atMm),
    ).toContainEqual([52, 6])
  })
})

describe('the view', () => {
  const size = { width: 720, height: 440 }
  it('shows all of a plan, turns y up, and keeps the place under the pointer while it zooms', () => {
    const view = fitView(planOf(start()), size)
    expect(toPlan(view, size, [360, 220])).toEqual([30, 20])
    const [, y] = toPlan(view, size, [360, 0])
    expect(y).toBeGreaterThan(40)
    const about = toPlan(view, size, [100, 100])
    const after = toPlan(zoomBy(view, 3, about), size, [100, 100])
    expect(after[0]).toBeCloseTo(about[0], 9)
    expect(after[1]).toBeCloseTo(about[1], 9)
    expect(fitView(EMPTY_PLAN, size).mmPerPx).toBeGreaterThan(0)
  })
})

describe('something of the design that is removed', () => {
  const design = readDrawnDesign('skua-rev-b')

  it('takes along what the plan drew of it, and nothing else', () => {
    const [hole] = design.features.holes
    if (hole === undefined || design.plan === null) throw new Error('no hole')
    const holes = design.features.holes.filter(({ id }) => id !== hole.id)
    const after = withoutDrawnOfRemoved(design, { ...design, features: { ...design.features, holes } })
    expect(after.plan?.holes).toEqual(design.plan.holes.filter(({ holeId }) => holeId !== hole.id))
    expect(after.plan?.holes.length).toBeLessThan(design.plan.holes.length)
    expect({ ...after.plan, holes: null }).toEqual({ ...design.plan, holes: null })
    expect(parseDesign(after).ok).toBe(true)
  })

  it('leaves areas without a zone, and takes the lines of a bend', () => {
    const [bend] = design.bends
    const bare = removeBend(design, bend?.id ?? '')
    expect(bare.plan?.bendLines.some(({ bendId }) => bendId === bend?.id)).toBe(false)
    const zoneId = design.plan?.areas[0]?.zoneId ?? ''
    const after = removeZone(design, zoneId)
    expect(after.plan?.areas).toHaveLength(design.plan?.areas.length ?? 0)
    expect(after.plan?.areas.filter((area) => area.zoneId === null).length).toBeGreaterThan(0)
  })

  it('leaves conductors of a net class that is gone without one, and those of another class with theirs', () => {
    const needs = {
      impedanceOhm: 90,
      tolerancePct: 10,
      kind: 'pair' as const,
      referenceLayerId: null,
      coupon: true,
      crosstalkLimitPct: null,
      riseTimePs: null,
    }
    const classes = ['gone', 'kept'].map((id) => ({ id, name: id, ...needs }))
    const conductors = design.features.conductors.map((each, index) => ({
      ...each,
      netClassId: (['gone', 'kept'] as const)[index] ?? null,
    }))
    const before = { ...design, features: { ...design.features, conductors, netClasses: classes } }
    const netClasses = classes.filter(({ id }) => id === 'kept')
    const after = withoutDrawnOfRemoved(before, { ...before, features: { ...before.features, netClasses } })
    expect(after.features.conductors.map(({ netClassId }) => netClassId)).toEqual(
      conductors.map(({ netClassId }) => (netClassId === 'gone' ? null : netClassId)),
    )
    expect(after.features.conductors[1]?.netClassId).toBe('kept')
    expect(after.plan).toBe(before.plan)
    expect(parseDesign(after).ok).toBe(true)
  })

  it('names that were unknown before stay, so that what is said of them stays', () => {
    const plan = {
      ...EMPTY_PLAN,
      areas: [{ id: 'a', name: 'A', zoneId: 'nobody', markMm: [1, 1] as [number, number] }],
    }
    const unknown = { ...design, plan }
    expect(withoutDrawnOfRemoved(unknown, { ...unknown, bends: [] }).plan?.areas).toEqual(plan.areas)
  })
})

describe('faces that are hidden', () => {
  const design = start()
  const marked = ['top', 'bottom'].map((face, index) => ({
    id: `m-${index}`,
    text: face,
    face: face as 'top' | 'bottom',
    atMm: [1, 1] as [number, number],
    heightMm: null,
  }))
  const plan = {
    ...planOf(design),
    markings: marked,
    components: [{ id: 'c', componentId: 'x', face: null, nodes: nodes([1, 1], [2, 1], [2, 2]), heightMm: null }],
  }

  it('hide what lies on them; what lies on no known face stays', () => {
    expect(withoutFaces(plan, design, new Set(['top'])).markings.map(({ text }) => text)).toEqual(['bottom'])
    expect(withoutFaces(plan, design, new Set(['top', 'bottom'])).components).toEqual(plan.components)
    expect(withoutFaces(plan, design, new Set())).toBe(plan)
  })

  it('a stiffener lies on the face that its layer is nearer to', () => {
    const drawn = readDrawnDesign('skua-rev-b')
    const whole = planOf(drawn)
    // Its layer is the lowest of the construction.
    expect(withoutFaces(whole, drawn, new Set(['bottom'])).stiffeners).toEqual([])
    expect(withoutFaces(whole, drawn, new Set(['top'])).stiffeners).toEqual(whole.stiffeners)
  })
})
