import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Bend, type BendResult, type Design, evaluate, readBendLife } from '@/lib/engine'
import { makeExampleDesign } from '@/test/unit/catalogue/example-design'
import { addUnbondedLeaf, getZone } from '@/test/unit/catalogue/examples/changes'
import { listVerdicts } from '@/test/unit/verdicts/one-bend'

interface Given {
  readonly gapUm: number
  readonly lengthMm: number
  readonly bends?: readonly Partial<Bend>[]
}

/** The example's arm with a second leaf, and the bends that are given in place of its own. */
function makeLeaves({ gapUm, lengthMm, bends = [{}] }: Given): Design {
  const design = makeExampleDesign()
  addUnbondedLeaf(design, gapUm)
  const [first] = design.bends
  if (first === undefined) throw new Error('no bend')
  design.bends = bends.map((bend, at) => ({
    ...first,
    id: `bend-${at}`,
    use: 'fold-once',
    requiredCycles: null,
    leafLengths: 'equal',
    ...bend,
  }))
  getZone(design, first.zoneId).lengthMm = lengthMm
  return design
}

const pullOf = (given: Given, at = 0) => {
  const { bends } = evaluate(makeLeaves(given))
  const bend = bends[at]
  if (bend === undefined) throw new Error('no result')
  return { pull: bend.leafPull, neededMm: bend.leafLengthDifferenceMm }
}

describe('the pull of a leaf that is too short', () => {
  it('is that of what it lacks: the difference of the arcs, less the step', () => {
    const { pull, neededMm } = pullOf({ gapUm: 100, lengthMm: 200 })
    expect(pull?.shortMm).toBeCloseTo(neededMm, 10)
    expect(pull?.leafIndex).toBe(1)
    const stepped = pullOf({ gapUm: 100, lengthMm: 200, bends: [{ leafLengths: 'stepped', leafStepMm: 0.1 }] })
    expect(stepped.pull?.shortMm).toBeCloseTo(Math.abs(neededMm - 0.1), 10)
    const exact = pullOf({ gapUm: 100, lengthMm: 200, bends: [{ leafLengths: 'stepped', leafStepMm: neededMm }] })
    expect(exact.pull?.strainPct).toBeCloseTo(0, 6)
  })

  it('is of the innermost leaf where the outermost was made too long', () => {
    const { neededMm } = pullOf({ gapUm: 100, lengthMm: 200 })
    const { pull } = pullOf({
      gapUm: 100,
      lengthMm: 200,
      bends: [{ leafLengths: 'stepped', leafStepMm: neededMm + 0.1 }],
    })
    expect(pull).toMatchObject({ leafIndex: 0 })
    expect(pull?.shortMm).toBeCloseTo(0.1, 10)
  })

  it('comes to nothing over two bends to opposite sides, and doubles over two to one side', () => {
    const { pull: one } = pullOf({ gapUm: 100, lengthMm: 400 })
    const { pull: two } = pullOf({ gapUm: 100, lengthMm: 400, bends: [{}, {}] })
    const { pull: opposite } = pullOf({
      gapUm: 100,
      lengthMm: 400,
      bends: [{ insideFace: 'top' }, { insideFace: 'bottom' }],
    })
    expect(two?.shortMm).toBeCloseTo(2 * (one?.shortMm ?? 0), 8)
    expect(opposite?.shortMm).toBeCloseTo(0, 8)
  })

  it('is not told where lengths are not stated, of this bend or of another one on the way', () => {
    expect(pullOf({ gapUm: 100, lengthMm: 200, bends: [{ leafLengths: null }] }).pull).toBeNull()
    expect(pullOf({ gapUm: 100, lengthMm: 200, bends: [{}, { leafLengths: null }] }).pull).toBeNull()
    expect(pullOf({ gapUm: 100, lengthMm: 200, bends: [{ leafLengths: 'stepped' }] }).pull).toBeNull()
    expect(pullOf({ gapUm: 100, lengthMm: 200, bends: [{ leafLengths: 'equal-free-to-buckle' }] }).pull).toBeNull()
  })

  it('grows with the gap and shrinks with the length between the ends; its bound stays above it', () => {
    const level = (pct: number | null | undefined) => pct ?? Number.POSITIVE_INFINITY
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 500, noNaN: true }),
        fc.double({ min: 30, max: 800, noNaN: true }),
        fc.double({ min: 1.05, max: 3, noNaN: true }),
        (gapUm, lengthMm, more) => {
          const base = pullOf({ gapUm, lengthMm }).pull
          const wider = pullOf({ gapUm: gapUm * more, lengthMm }).pull
          const longer = pullOf({ gapUm, lengthMm: lengthMm * more }).pull
          // Null is more than can be told. A farther leaf bends at a larger radius: its bend yields a little less.
          expect(level(wider?.straightPct)).toBeGreaterThanOrEqual(level(base?.straightPct) * 0.999)
          expect(level(longer?.strainPct)).toBeLessThanOrEqual(level(base?.strainPct) * 1.000001)
          expect(level(base?.highPct)).toBeGreaterThanOrEqual(base?.strainPct ?? 0)
        },
      ),
      { numRuns: 25 },
    )
  })

  it('fits a draft that was changed: another bend of the zone counts at once', () => {
    const design = makeLeaves({ gapUm: 100, lengthMm: 400, bends: [{}, {}] })
    const before = evaluate(design).bends[0]?.leafPull?.shortMm
    const edited = { ...design, bends: design.bends.map((bend, at) => (at === 1 ? { ...bend, angleDeg: 20 } : bend)) }
    expect(evaluate(edited).bends[0]?.leafPull?.shortMm).not.toBeCloseTo(before ?? 0, 3)
  })
})

describe('strain and life of leaves that are not bonded', () => {
  const resultOf = (given: Given): BendResult => {
    const [result] = evaluate(makeLeaves(given)).bends
    if (result === undefined) throw new Error('no result')
    return result
  }
  const wide: Partial<Bend> = { insideRadiusMm: 40, radiusToleranceMm: 0 }
  const moving: Partial<Bend> = { ...wide, use: 'dynamic', requiredCycles: 10 }
  const ITEMS = [
    ['bend-strain', wide],
    ['fatigue-life', moving],
  ] as const

  it.each(ITEMS)('%s: nobody can tell while a length is open, and the field is named', (item, bend) => {
    for (const [open, lengthMm, field] of [
      [{ leafLengths: null }, 200, 'Lengths of the leaves'],
      [{ leafLengths: 'stepped', leafStepMm: null }, 200, 'Step of the leaves'],
      [{ leafLengths: 'equal' }, null, 'Length'],
    ] as const) {
      const design = makeLeaves({ gapUm: 20, lengthMm: lengthMm ?? 1, bends: [{ ...bend, ...open }] })
      if (lengthMm === null) for (const zone of design.construction.zones) zone.lengthMm = null
      expect(listVerdicts(design, item), field).toEqual(['cannot-tell'])
      const [result] = evaluate(design).bends
      expect(result?.modelLimits.map(({ decidedBy }) => decidedBy)).toEqual([expect.stringContaining(`"${field}"`)])
      if (bend.use === 'dynamic' && result !== undefined) expect(readBendLife(result)).toBe('cannot tell')
    }
  })

  it.each(ITEMS)(
    '%s: meets where the leaves are stepped as they need, and never where the short leaf bears too much',
    (item, bend) => {
      const { leafLengthDifferenceMm } = resultOf({
        gapUm: 20,
        lengthMm: 200,
        bends: [{ ...bend, leafLengths: 'equal' }],
      })
      const stepped = { ...bend, leafLengths: 'stepped', leafStepMm: leafLengthDifferenceMm } as const
      expect(listVerdicts(makeLeaves({ gapUm: 20, lengthMm: 200, bends: [stepped] }), item)).toEqual(['meets'])
      const hard = {
        ...bend,
        ...(item === 'fatigue-life' ? { requiredCycles: 1e7 } : {}),
        leafLengths: 'equal',
      } as const
      expect(listVerdicts(makeLeaves({ gapUm: 2000, lengthMm: 60, bends: [hard] }), item)).not.toContain('meets')
    },
  )

  it('the pull is added to the copper of the short leaf, and to its films, and to no other at nominal', () => {
    const { conductors, leafPull, leaves } = resultOf({ gapUm: 100, lengthMm: 400, bends: [wide] })
    const [inner, outer] = [0, 1].map((leaf) => conductors.find(({ leafIndex }) => leafIndex === leaf)?.states)
    expect(leafPull?.strainPct).toBeGreaterThan(0)
    expect(outer?.pullPct).toBeCloseTo(leafPull?.strainPct ?? Number.NaN, 10)
    expect(inner?.pullPct ?? 0).toBe(0)
    const stepped = {
      ...wide,
      leafLengths: 'stepped',
      leafStepMm: resultOf({ gapUm: 100, lengthMm: 400, bends: [wide] }).leafLengthDifferenceMm,
    } as const
    const free = resultOf({ gapUm: 100, lengthMm: 400, bends: [stepped] })
    for (const [at, film] of (leaves[1]?.faceFilms ?? []).entries()) {
      expect(film.strainPct).toBeGreaterThan(free.leaves[1]?.faceFilms[at]?.strainPct ?? Number.NaN)
    }
  })

  it('a longer way between the ends never shortens life, and a step nearer to what is needed neither', () => {
    const lifeAt = (given: Given) => resultOf(given).survivalLifeCycles ?? Number.NaN
    const byLength = [30, 60, 200, 800].map((lengthMm) => lifeAt({ gapUm: 100, lengthMm, bends: [moving] }))
    expect(byLength).toEqual(byLength.toSorted((a, b) => a - b))
    const { leafLengthDifferenceMm: neededMm } = resultOf({ gapUm: 100, lengthMm: 60, bends: [moving] })
    const bySteps = [0, 0.5, 0.9, 1].map((share) =>
      lifeAt({
        gapUm: 100,
        lengthMm: 60,
        bends: [{ ...moving, leafLengths: 'stepped', leafStepMm: share * neededMm }],
      }),
    )
    expect(bySteps).toEqual(bySteps.toSorted((a, b) => a - b))
  })

  it('a leaf between two others may be as short as either: its worst strain grows, its nominal one does not', () => {
    const design = makeLeaves({ gapUm: 100, lengthMm: 400, bends: [moving] })
    const two = evaluate(design).bends[0]
    addThirdLeaf(design)
    const [three] = evaluate(design).bends
    expect(three?.leaves).toHaveLength(3)
    const middle = three?.conductors.find(({ leafIndex }) => leafIndex === 1)
    const alike = two?.conductors.find(({ leafIndex }) => leafIndex === 0)
    expect(middle?.states?.pullPct).toBe(0)
    const spread = (each: typeof middle) => (each?.peakRangePct.high ?? 0) - (each?.peakStrainPct ?? 0)
    expect(spread(middle)).toBeGreaterThan(spread(alike) + 0.01)
  })

  it('with a load along the part as well nobody can tell, and what fails without it fails', () => {
    expect(
      listVerdicts(makeLeaves({ gapUm: 100, lengthMm: 400, bends: [{ ...moving, pullN: 1 }] }), 'fatigue-life'),
    ).toEqual(['cannot-tell'])
    const hard = { ...moving, insideRadiusMm: 1.5, requiredCycles: 1e8, pullN: 1 }
    expect(listVerdicts(makeLeaves({ gapUm: 100, lengthMm: 400, bends: [hard] }), 'fatigue-life')).toEqual(['fails'])
  })
})

/** Below the second leaf, another one like it. */
function addThirdLeaf(design: Design): void {
  const { layers, zones } = design.construction
  const at = layers.findIndex(({ id }) => id === 'base-leaf-2')
  const ids = ['gap', 'cover-leaf-2', 'adhesive-leaf-2', 'l2-leaf-2', 'base-leaf-2']
  const copies = ids.flatMap((id) => {
    const layer = layers.find((each) => each.id === id)
    return layer === undefined ? [] : [{ ...structuredClone(layer), id: `${id}-3`, name: `${layer.name}, third` }]
  })
  layers.splice(at + 1, 0, ...copies)
  for (const zone of zones) {
    const presentAt = zone.presence.findIndex(({ layerId }) => layerId === 'base-leaf-2')
    if (presentAt < 0) continue
    const present = ids.flatMap((id) => {
      const own = zone.presence.find(({ layerId }) => layerId === id)
      return own === undefined ? [] : [{ ...structuredClone(own), layerId: `${id}-3` }]
    })
    zone.presence.splice(presentAt + 1, 0, ...present)
  }
}
