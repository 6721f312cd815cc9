import { describe, expect, it } from 'vitest'
import { type Design, evaluateDraft, parseDesign } from '@/lib/engine'
import { drawPlan } from '../catalogue/drawn-plan'
import { makeExampleDesign } from '../catalogue/example-design'

function read(change: (design: Design) => void): Design {
  const design = structuredClone(makeExampleDesign())
  change(design)
  const parsed = parseDesign(structuredClone(design))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

const itemOf = (design: Design, id: string) => {
  const found = evaluateDraft(design).items.find(({ itemId }) => itemId === id)
  if (found === undefined) throw new Error(id)
  return found
}

describe('a drawn plan decides', () => {
  it('a bend of 94 mm in a zone of 40 mm fails, whatever length was stated', () => {
    const design = read((d) => {
      drawPlan(d)
      for (const line of d.plan?.dividingLines ?? [])
        if (line.id === 'finger-edge')
          line.nodes = [
            { atMm: [80, 0], viaMm: null },
            { atMm: [80, 12], viaMm: null },
          ]
      if (d.plan !== null) d.plan.bendLines = [{ id: 'hinge', bendId: 'hinge', fromMm: [60, 0], toMm: [60, 12] }]
      d.bends = d.bends
        .filter(({ id }) => id === 'hinge')
        .map((bend) => ({ ...bend, insideRadiusMm: 30, angleDeg: 180 }))
      for (const conductor of d.features.conductors)
        conductor.crossings = conductor.crossings.filter(({ bendId }) => bendId === 'hinge')
      const arm = d.construction.zones.find(({ id }) => id === 'arm')
      if (arm !== undefined) arm.lengthMm = 200
    })
    expect(itemOf(design, 'bend-fit').verdict).toBe('fails')
    expect(itemOf(design, 'plan-agreement').verdict).toBe('fails')
    // Without the plan the stated 200 mm would do.
    expect(itemOf({ ...design, plan: null }, 'bend-fit').verdict).toBe('meets')
  })

  it('bands that overlap fail, and so does one that runs into the board', () => {
    const move = (x: number) =>
      read((d) => {
        drawPlan(d)
        const [line] = d.plan?.bendLines ?? []
        if (line !== undefined) Object.assign(line, { fromMm: [x, 0], toMm: [x, 12] })
      })
    expect(itemOf(move(55), 'bend-fit').verdict).toBe('meets')
    expect(itemOf(move(60), 'bend-fit').verdict).toBe('fails')
    expect(itemOf(move(45), 'bend-fit').verdict).toBe('fails')
    expect(itemOf(move(45), 'straight-film').verdict).toBe('fails')
  })

  it('distances follow from places, by hand: the hinge lies 55 - 40 mm less half its arc from the board', () => {
    const design = read(drawPlan)
    const hinge = evaluateDraft(design).bends.find(({ bendId }) => bendId === 'hinge')
    const arcMm = hinge?.developedLengthMm ?? Number.NaN
    const straight = itemOf(design, 'straight-film').outcomes.find(({ places }) =>
      places.some(({ id }) => id === 'hinge'),
    )
    expect(straight?.kind === 'decided' && straight.value.value).toBeCloseTo(15 - arcMm / 2, 5)
    expect(straight?.kind === 'decided' && straight.equation).toBe('drawn in plan')
    expect(straight?.kind === 'decided' && straight.isTyped).toBeUndefined()
  })

  it('a hole is measured from its edge, and a stated distance that differs is a finding', () => {
    const design = read((d) => {
      const plan = drawPlan(d)
      plan.holes = [
        { id: 'via', holeId: 'via', atMm: [36, 6], columns: 1, rows: 1, columnStepMm: null, rowStepMm: null },
      ]
    })
    const drillMm = design.features.holes.find(({ id }) => id === 'via')?.drillMm ?? Number.NaN
    const strip = itemOf(design, 'transition-strip').outcomes.find(({ places }) =>
      places.some(({ id }) => id === 'via'),
    )
    expect(strip?.kind === 'decided' && strip.value.value).toBeCloseTo(4 - drillMm / 2, 6)
    expect(itemOf(design, 'plan-agreement').verdict).toBe('fails')
  })

  it('inside corners are those of the outline: an L has one, sharp, beside flex', () => {
    const design = read((d) => {
      const plan = drawPlan(d)
      plan.outline = [
        [0, -20],
        [40, -20],
        [40, 0],
        [140, 0],
        [140, 12],
        [0, 12],
      ].map(([x = 0, y = 0]) => ({ atMm: [x, y], viaMm: null }))
    })
    const corner = itemOf(design, 'corner-radius').outcomes.find(({ places }) =>
      places.some(({ id }) => id.startsWith('plan-corner')),
    )
    expect(corner?.kind === 'decided' && [corner.value.value, corner.verdict]).toEqual([0, 'fails'])
  })

  it('a route at 45 degrees crosses at 45', () => {
    const design = read((d) => {
      const plan = drawPlan(d)
      plan.routes = [
        {
          id: 'supply',
          conductorId: 'supply',
          layerId: null,
          widthMm: null,
          nodes: [
            { atMm: [47, 1], viaMm: null },
            { atMm: [56, 10], viaMm: null },
          ],
        },
      ]
    })
    const angle = itemOf(design, 'crossing-angle').outcomes.find(({ places }) =>
      places.some(({ id }) => id === 'hinge'),
    )
    expect(angle?.kind === 'decided' && angle.value.value).toBeCloseTo(45, 6)
  })

  it('an area that loses its zone, or a slit end without its relief, never makes an answer better', () => {
    const whole = read((d) => {
      drawPlan(d)
      const [line] = d.plan?.bendLines ?? []
      if (line !== undefined) Object.assign(line, { fromMm: [50, 0], toMm: [50, 12] })
    })
    expect(itemOf(whole, 'straight-film').verdict).toBe('fails')
    const open = structuredClone(whole)
    for (const area of open.plan?.areas ?? []) if (area.id === 'board') area.zoneId = null
    expect(['fails', 'not-computed']).toContain(itemOf(open, 'straight-film').verdict)
    expect(itemOf(open, 'plan-agreement').verdict).toBe('fails')
    const slit = (endReliefDiameterMm: number | null) =>
      read((d) => {
        const plan = drawPlan(d)
        d.features.slits = [{ id: 'cut', name: 'Cut', endReliefDiameterMm: null, widthMm: 0.2, tearStop: true }]
        d.features.none = d.features.none.filter((list) => list !== 'slits')
        plan.slits = [
          {
            id: 'cut',
            name: 'Cut',
            slitId: 'cut',
            widthMm: 0.2,
            startReliefDiameterMm: 5,
            endReliefDiameterMm,
            nodes: [
              { atMm: [110, 6], viaMm: null },
              { atMm: [130, 6], viaMm: null },
            ],
          },
        ]
      })
    expect(itemOf(slit(5), 'slit-end-relief').verdict).toBe('meets')
    expect(itemOf(slit(0), 'slit-end-relief').verdict).toBe('fails')
    expect(itemOf(slit(null), 'slit-end-relief').verdict).toBe('not-computed')
  })

  it('a drawn distance is not held against stated ones as if somebody had stated it', () => {
    const design = read((d) => {
      drawPlan(d)
      for (const bend of d.bends) bend.distanceToRigidMm = 0.1
    })
    const plain = itemOf({ ...design, plan: null }, 'statements-agree').verdict
    expect(itemOf(design, 'statements-agree').verdict).toBe(plain)
    expect(
      itemOf(design, 'straight-film')
        .outcomes.map(({ summary }) => summary)
        .join(),
    ).not.toMatch(/states/)
    expect(itemOf(design, 'plan-agreement').verdict).toBe('fails')
  })

  it('what is drawn off the part is a finding', () => {
    const design = read((d) => {
      const plan = drawPlan(d)
      plan.holes = [
        { id: 'via', holeId: 'via', atMm: [20, 12], columns: 1, rows: 1, columnStepMm: null, rowStepMm: null },
      ]
    })
    const said = itemOf(design, 'plan-agreement').outcomes.map(({ summary }) => summary)
    expect(said.join()).toMatch(/drawn where the part is not/)
  })

  it('quarter turns and mirrors change no verdict and no figure beyond rounding', () => {
    const straight = read((d) => {
      const plan = drawPlan(d)
      plan.holes = [
        { id: 'via', holeId: 'via', atMm: [36, 5], columns: 2, rows: 1, columnStepMm: [0, 2], rowStepMm: null },
      ]
      plan.routes = [
        {
          id: 'supply',
          conductorId: 'supply',
          layerId: null,
          widthMm: null,
          nodes: [
            { atMm: [10, 3], viaMm: null },
            { atMm: [130, 6], viaMm: null },
          ],
        },
      ]
    })
    const summary = (design: Design) =>
      evaluateDraft(design).items.map(({ itemId, verdict, outcomes }) => [
        itemId,
        verdict,
        outcomes.map((found) =>
          found.kind === 'decided' && found.value.unit === 'mm' ? Math.round(found.value.value * 1e4) : 0,
        ),
      ])
    const before = summary(straight)
    for (const [a, b, c, d] of [
      [0, 1, -1, 0],
      [-1, 0, 0, -1],
      [1, 0, 0, -1],
      [0, 1, 1, 0],
    ] as const) {
      const turn = (value: unknown): unknown => {
        if (Array.isArray(value) && value.length === 2 && value.every((each) => typeof each === 'number')) {
          const [x, y] = value as [number, number]
          return [x * a + y * c + 0, x * b + y * d + 0]
        }
        if (Array.isArray(value)) return value.map(turn)
        if (typeof value !== 'object' || value === null) return value
        return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, turn(each)]))
      }
      expect(summary({ ...straight, plan: turn(straight.plan) as Design['plan'] })).toEqual(before)
    }
  })

  it('nothing of a design without a plan', () => {
    const design = read(() => undefined)
    const { items } = evaluateDraft(design)
    expect(
      items.filter(({ itemId }) => ['plan-agreement', 'bend-on-plan'].includes(itemId)).map(({ verdict }) => verdict),
    ).toEqual(['not-applicable', 'not-applicable'])
  })
})
