import { applyPatch } from 'rfc6902'
import { describe, expect, test } from 'vitest'
import { type Bend, type BendResult, type Design, evaluate, makePresence, readBendLife } from '@/lib/engine'
import { readStates } from '@/lib/engine/assembly/bend-states'
import { computeLeafStates } from '@/lib/engine/assembly/leaf-states'
import { computeLeaves, computePullStrainPct, type TolerancedLayer } from '@/lib/engine/bending'
import { createRandomStream } from '@/lib/engine/numerics'
import { findRemedies } from '@/lib/engine/remedies'
import { listOutcomes, listVerdicts, makeOneBend } from './one-bend'

const BASE = { insideRadiusMm: 8, requiredCycles: 2000 }

function makeBend(bend: Partial<Bend> = {}, more: Parameters<typeof makeOneBend>[0] = {}): Design {
  return makeOneBend({ ...BASE, ...more, bends: [bend] })
}

function bendOf(design: Design): BendResult {
  const [bend] = evaluate(design).bends
  if (bend === undefined) throw new Error('no bend')
  return bend
}

const lifeOf = (bend: Partial<Bend>): number => bendOf(makeBend(bend)).survivalLifeCycles ?? Number.NaN

const VERDICT_ITEMS = ['bend-strain', 'fatigue-life', 'film-strain', 'copper-yield'] as const

describe('a bend from flat that nothing else loads', () => {
  const plain = evaluate(makeBend())

  test('is the same with loads of 0 and a flatter end of 0°', () => {
    const none: Partial<Bend> = { pullN: 0, twistDeg: 0, twistLengthMm: 20, flexesFromAngleDeg: 0 }
    const stated = evaluate(makeBend(none))
    expect(stated.bends).toEqual(plain.bends)
    expect(stated.items).toEqual(plain.items)
  })

  test('is what a flatter end comes to as it opens', () => {
    const far = bendOf(makeBend({ flexesFromRadiusMm: 10_000 }))
    const [flat] = plain.bends
    expect(far.peakStrainPct).toBeLessThan(flat?.peakStrainPct ?? 0)
    expect(far.peakStrainPct).toBeGreaterThan((flat?.peakStrainPct ?? 0) * (1 - 8.2e-4))
  })
})

describe('flexing between two ends', () => {
  test('a smaller range never shortens life, and strain falls with it', () => {
    const radii = [9, 10, 12, 16, 30, 100]
    const lives = radii.map((flexesFromRadiusMm) => lifeOf({ flexesFromRadiusMm }))
    expect(lives).toEqual(lives.toSorted((a, b) => b - a))
    expect(lives.at(-1)).toBeGreaterThan(lifeOf({}))
    const byAngle = [80, 60, 30, 10, 0].map((flexesFromAngleDeg) => lifeOf({ flexesFromAngleDeg }))
    expect(byAngle).toEqual(byAngle.toSorted((a, b) => b - a))
  })

  test('the first bend, the film and the copper at its yield are judged at the tighter end all the same', () => {
    const [plain, between] = [bendOf(makeBend()), bendOf(makeBend({ flexesFromRadiusMm: 9 }))]
    expect(between.firstBendStrainPct).toBe(plain.firstBendStrainPct)
    expect(between.leaves[0]?.faceFilms).toEqual(plain.leaves[0]?.faceFilms)
    expect(between.greatestStrainPct).toBeGreaterThanOrEqual(between.firstBendStrainPct ?? Number.NaN)
    expect(listVerdicts(makeBend({ flexesFromRadiusMm: 9 }), 'copper-yield')).toEqual(
      listVerdicts(makeBend(), 'copper-yield'),
    )
  })

  test('copper that stays below yield at nominal and passes it at the worst corner has no more than a thin margin', () => {
    const at = (insideRadiusMm: number) =>
      listVerdicts(makeBend({ insideRadiusMm, flexesFromRadiusMm: 1.1 * insideRadiusMm }), 'copper-yield')[0]
    const verdicts = [8, 12, 16, 20, 30, 60, 150, 400].map(at)
    const order = ['fails', 'thin-margin', 'meets']
    expect(verdicts).toEqual(verdicts.toSorted((a, b) => order.indexOf(a ?? '') - order.indexOf(b ?? '')))
    expect(new Set(verdicts).size).toBe(3)
  })

  test('the minimum radius is the one at which the strain range just holds', () => {
    for (const from of [{ flexesFromRadiusMm: 20 }, { flexesFromAngleDeg: 45 }]) {
      const { minRadiusByStrainMm, isMinRadiusFloor } = bendOf(makeBend({ ...from, insideRadiusMm: 2 }))
      expect(isMinRadiusFloor).toBe(false)
      const at = bendOf(makeBend({ ...from, insideRadiusMm: minRadiusByStrainMm ?? Number.NaN }))
      expect(at.peakStrainPct).toBeCloseTo(at.allowablePct ?? Number.NaN, 6)
    }
  })

  test('both ends may be off by the tolerance: the worst range lies between the closest and the farthest of them', () => {
    const result = bendOf(makeBend({ flexesFromRadiusMm: 10, radiusToleranceMm: 0.5 }))
    const far = bendOf(makeBend({ insideRadiusMm: 7.5, flexesFromRadiusMm: 10.5 }))
    const near = bendOf(makeBend({ insideRadiusMm: 8.5, flexesFromRadiusMm: 9.5 }))
    expect(result.peakRangePct?.high).toBeGreaterThanOrEqual(far.peakStrainPct ?? Number.NaN)
    expect(result.peakRangePct?.low).toBeLessThanOrEqual(near.peakStrainPct ?? Number.NaN)
    // Ends that may meet leave no range at the best.
    const meeting = bendOf(makeBend({ flexesFromRadiusMm: 8.5, radiusToleranceMm: 0.5 }))
    expect(meeting.peakRangePct?.low).toBeLessThan(1e-3)
  })

  test.each<[string, Partial<Bend>, RegExp]>([
    ['radius and angle at once', { flexesFromRadiusMm: 20, flexesFromAngleDeg: 45 }, /radius and by an angle/],
    ['a flatter end that is tighter', { flexesFromRadiusMm: 7 }, /7 mm, which is not flatter than its 8 mm/],
    ['ends that are alike', { flexesFromRadiusMm: 8 }, /not flatter/],
    ['an angle that is no smaller', { flexesFromAngleDeg: 90 }, /90°, which is not flatter/],
    ['both sides of flat', { flexesFromRadiusMm: 20, motion: 'reversed' }, /both sides of flat has no flatter end/],
    ['a twist without its length', { twistDeg: 20 }, /without the length that twists/],
    ['a length without a twist', { twistLengthMm: 20 }, /without a twist/],
  ])('%s: nobody can tell, and the reason is named', (_, bend, because) => {
    // Wide enough that bending alone would meet.
    const design = makeBend({ insideRadiusMm: 8, ...bend }, { requiredCycles: 10 })
    const result = bendOf(design)
    expect(result.modelLimits.map((limit) => limit.because)).toEqual([expect.stringMatching(because)])
    for (const item of ['fatigue-life', 'film-strain'] as const) {
      expect(listVerdicts(design, item)).not.toContain('meets')
      expect(listOutcomes(evaluate(design), item).some(({ summary }) => because.test(summary))).toBe(true)
    }
    expect(listVerdicts(design, 'radius-rules')).not.toContain('meets')
    expect(result.minRadiusByStrainMm).toBeNull()
    expect(readBendLife(result)).toBe('cannot tell')
  })

  test('a bend that is folded once has no motion', () => {
    const design = makeBend({ use: 'fold-once', requiredCycles: null, flexesFromRadiusMm: 20 })
    expect(listVerdicts(design, 'bend-strain')).toEqual(['cannot-tell'])
  })
})

describe('folded first, then flexed', () => {
  test('is never better than flexing alone, and the worse the tighter the fold', () => {
    const lives = [8, 4, 2, 1].map((foldedToRadiusMm) => lifeOf({ foldedToRadiusMm }))
    expect(lives).toEqual(lives.toSorted((a, b) => b - a))
    expect(lives[0]).toBeLessThan(lifeOf({}))
    const [plain, folded] = [bendOf(makeBend()), bendOf(makeBend({ foldedToRadiusMm: 1 }))]
    expect(folded.allowablePct).toBeLessThan(plain.allowablePct ?? 0)
    expect(folded.peakStrainPct).toBe(plain.peakStrainPct)
  })

  test('the fold uses up 1 / N of the life, N being its life alone (Miner)', () => {
    const alone = lifeOf({ insideRadiusMm: 1 })
    const [conductor] = bendOf(makeBend({ foldedToRadiusMm: 1 })).conductors
    expect(conductor?.states?.fold?.damageFraction?.nominal).toBeGreaterThan(0)
    // One-way flexing counts its range and the fold its peak, which copper past yield sets a little apart.
    expect((conductor?.states?.fold?.damageFraction?.nominal ?? 0) * alone).toBeCloseTo(1, 0)
    const used = conductor?.states?.fold?.damageFraction?.nominal ?? Number.NaN
    expect(conductor?.survivalLifeCycles).toBeCloseTo(lifeOf({}) * (1 - used), 6)
  })

  test('a fold that uses up all of it leaves none: the bend fails', () => {
    const design = makeBend({ foldedToRadiusMm: 0.7 }, { foilId: 'copper-ed', survivalPct: 99.9999, requiredCycles: 1 })
    const [conductor] = bendOf(design).conductors
    expect(conductor?.states?.fold?.damageFraction?.nominal).toBeGreaterThan(1)
    expect(listVerdicts(design, 'fatigue-life')).toEqual(['fails'])
  })

  test('strain and life hold together: what just meets by strain just meets by life', () => {
    const { survivalLifeCycles } = bendOf(makeBend({ foldedToRadiusMm: 1 }))
    const at = bendOf(makeBend({ foldedToRadiusMm: 1, requiredCycles: survivalLifeCycles }))
    expect(at.allowablePct).toBeCloseTo(at.peakStrainPct ?? Number.NaN, 6)
  })

  test('is judged as a fold of its own, also where the bend stands still', () => {
    const design = makeBend({ use: 'fold-once', requiredCycles: null, insideRadiusMm: 20, foldedToRadiusMm: 0.6 })
    const summaries = listOutcomes(evaluate(design), 'bend-strain').map(({ summary }) => summary)
    expect(summaries).toHaveLength(2)
    expect(summaries[1]).toMatch(/fold before/)
    const [, fold] = listVerdicts(design, 'bend-strain')
    const [alone] = listVerdicts(
      makeBend({ use: 'fold-once', requiredCycles: null, insideRadiusMm: 0.6 }),
      'bend-strain',
    )
    expect(fold).toBe(alone)
  })

  test('a fold too tight to be told lets nothing meet', () => {
    const design = makeBend({ foldedToRadiusMm: 0.2 }, { requiredCycles: 2 })
    for (const item of VERDICT_ITEMS) expect(listVerdicts(design, item)).not.toContain('meets')
  })

  test('what takes a moment and springs back is not known any more', () => {
    expect(bendOf(makeBend({ foldedToRadiusMm: 3 }))).toMatchObject({ momentNmm: null, springback: null })
  })
})

describe('pull and twist', () => {
  test('more of them never lengthens life nor lowers strain', () => {
    for (const loads of [
      [0, 1, 3, 6].map((pullN) => ({ pullN })),
      [0, 5, 15, 40].map((twistDeg) => ({ twistDeg, twistLengthMm: 40 })),
      [80, 40, 20].map((twistLengthMm) => ({ twistDeg: 20, twistLengthMm })),
    ]) {
      const results = loads.map((load) => bendOf(makeBend(load)))
      const strains = results.map(({ peakStrainPct }) => peakStrainPct ?? Number.NaN)
      expect(strains).toEqual(strains.toSorted((a, b) => a - b))
      const worst = results.map(({ peakRangePct }) => peakRangePct?.high ?? Number.NaN)
      expect(worst).toEqual(worst.toSorted((a, b) => a - b))
      const lives = results.map(({ survivalLifeCycles }) => survivalLifeCycles ?? Number.NaN)
      expect(lives).toEqual(lives.toSorted((a, b) => b - a))
    }
  })

  test('the parts of the strain add up', () => {
    const [conductor] = bendOf(makeBend({ pullN: 2, twistDeg: 10, twistLengthMm: 40 })).conductors
    const { bendingPct = 0, pullPct = 0, twistEdgePct = 0, twistShearPct = 0 } = conductor?.states ?? {}
    expect(Math.min(bendingPct, pullPct, twistEdgePct, twistShearPct)).toBeGreaterThan(0)
    expect(conductor?.peakStrainPct).toBeCloseTo(
      Math.hypot(bendingPct + pullPct + twistEdgePct, twistShearPct / Math.sqrt(3)),
      12,
    )
  })

  test('no figure is given that does not count them', () => {
    const design = makeBend({ pullN: 2 })
    expect(bendOf(design)).toMatchObject({
      minRadiusByStrainMm: null,
      minRadiusByLifeMm: null,
      hangsOn: null,
      disagreement: [],
      strainProfile: [],
      momentNmm: null,
      springback: null,
    })
    expect(listVerdicts(makeBend({ pullN: 2, insideRadiusMm: 60 }), 'radius-rules')).toEqual([
      'cannot-tell',
      'cannot-tell',
    ])
  })

  test('beyond their models nothing meets, and what fails without them fails', () => {
    for (const load of [{ pullN: 500 }, { twistDeg: 170, twistLengthMm: 10 }, { twistDeg: 20 }]) {
      const easy = makeBend(load, { requiredCycles: 1 })
      for (const item of VERDICT_ITEMS) expect(listVerdicts(easy, item)).not.toContain('meets')
      const hard = makeBend({ ...load, insideRadiusMm: 1 }, { requiredCycles: 1e6 })
      expect(listVerdicts(hard, 'fatigue-life')).toEqual(['fails'])
    }
  })

  test('the films at the faces are stretched too', () => {
    const [plain, loaded] = [{}, { pullN: 2, twistDeg: 10, twistLengthMm: 40 }].map(
      (load) => bendOf(makeBend(load)).leaves[0]?.faceFilms ?? [],
    )
    expect(loaded).toHaveLength(2)
    for (const [at, film] of (loaded ?? []).entries()) {
      expect(film.strainPct).toBeGreaterThan(plain?.[at]?.strainPct ?? Number.NaN)
    }
  })

  test('one of several unbonded leaves may have to carry the whole pull', () => {
    const design = makeBend({ pullN: 2 })
    const { layers, zones } = design.construction
    const [zone] = zones
    const base = layers.find(({ id }) => id === 'base')
    if (zone === undefined || base === undefined) throw new Error('the design has a zone and a base film')
    const two: Design = {
      ...design,
      construction: {
        layers: [
          ...layers,
          { id: 'gap', name: 'gap', kind: 'unbonded-gap', thicknessUm: 20 },
          { ...base, id: 'second' },
        ],
        zones: [{ ...zone, presence: [...zone.presence, makePresence('gap'), makePresence('second')] }],
      },
    }
    const [one, both] = [bendOf(design), bendOf(two)]
    expect(both.leaves).toHaveLength(2)
    expect(both.conductors[0]?.states?.pullPct).toBe(one.conductors[0]?.states?.pullPct)
    expect(both.cautions.join(' ')).toMatch(/unbonded leaves is taken to carry all of it/)
    expect(one.cautions.join(' ')).not.toMatch(/unbonded leaves/)
  })

  test('the worst strain of a pull is not passed by any corner of tolerances and constants', () => {
    const stream = createRandomStream(20_261_129)
    const random = () => stream.nextUniform()
    const layers: TolerancedLayer[] = [
      { id: 'a', thicknessUm: 25, minusUm: 3, plusUm: 4, modulusGpa: 2.5, poisson: 0.34, yieldStrainPct: 3 },
      {
        id: 'cu',
        thicknessUm: 18,
        minusUm: 2,
        plusUm: 2,
        modulusGpa: 110,
        poisson: 0.34,
        yieldStrengthMpa: 100,
        conductor: { coverageFraction: 0.6, fillModulusGpa: 0.7, fillPoisson: 0.4, fillYieldStrainPct: 5 },
      },
      { id: 'b', thicknessUm: 50, minusUm: 8, plusUm: 5, modulusGpa: 4.8, poisson: 0.34, yieldStrainPct: 3 },
    ].map((layer) => ({
      ...layer,
      spreads: [
        { constant: 'modulusGpa' as const, low: 0.7 * layer.modulusGpa, high: 1.3 * layer.modulusGpa },
        ...('yieldStrengthMpa' in layer ? [{ constant: 'yieldStrengthMpa' as const, low: 60, high: 160 }] : []),
      ],
    }))
    const at = (low: number, high: number) => low + (high - low) * random()
    for (const insideRadiusMm of [1.2, 3, 10]) {
      for (const pullN of [1, 5]) {
        const [bend] = makeBend({ pullN, insideRadiusMm, radiusToleranceMm: 0.1 }).bends
        if (bend === undefined) throw new Error('no bend')
        const { leaves } = computeLeaves({ leaves: [layers], gapsUm: [], insideRadiusMm, angleDeg: 90 })
        const [leaf] = leaves
        if (leaf === undefined) throw new Error('no leaf')
        const { loads } = computeLeafStates(
          bend,
          leaf,
          { leafIndex: 0, layers, sources: [] },
          'one-way',
          readStates(bend),
        )
        const range = loads?.pull.range ?? { low: 0, high: 0 }
        for (let round = 0; round < 300; round += 1) {
          const moved = layers.map((layer) => {
            const [modulus, strength] = layer.spreads ?? []
            const isEnd = random() < 0.6
            const pick = (low: number, high: number) => (isEnd ? (random() < 0.5 ? low : high) : at(low, high))
            return {
              ...layer,
              thicknessUm: pick(layer.thicknessUm - layer.minusUm, layer.thicknessUm + layer.plusUm),
              modulusGpa: pick(modulus?.low ?? 0, modulus?.high ?? 0),
              ...(strength !== undefined && { yieldStrengthMpa: pick(strength.low, strength.high) }),
            }
          })
          const strainPct = computePullStrainPct(moved, {
            insideRadiusMm: at(insideRadiusMm - 0.1, insideRadiusMm + 0.1),
            loading: 'one-way',
            pullNPerMm: pullN / 10,
          })
          expect(strainPct).not.toBeNull()
          expect(strainPct).toBeLessThanOrEqual(range.high * (1 + 1e-9))
          expect(strainPct).toBeGreaterThanOrEqual(range.low * (1 - 1e-9))
        }
      }
    }
  })
})

describe('a fold between two faces', () => {
  const held: Partial<Bend> = { radiusHeldBy: 'between-faces', angleDeg: 180, use: 'fold-once', requiredCycles: null }

  test('has its tip at less than half of the gap, and a force', () => {
    const { freeFold, modelLimits } = bendOf(makeBend({ ...held, faceGapMm: 10, insideRadiusMm: 3 }))
    expect(modelLimits).toEqual([])
    expect(freeFold?.tipInsideRadiusMm).toBeGreaterThan(3)
    expect(freeFold?.tipInsideRadiusMm).toBeLessThan(5)
    expect(freeFold?.forceN).toBeGreaterThan(0)
  })

  test.each<[string, Partial<Bend>, RegExp]>([
    ['a typed radius that is larger than the tip', { faceGapMm: 10, insideRadiusMm: 4.9 }, /tip of the fold has/],
    ['a gap that is not stated', { faceGapMm: null }, /gap between them is not stated/],
    ['a gap that does not hold both legs', { faceGapMm: 0.15 }, /does not hold two legs/],
    ['a gap in which the tip closes', { faceGapMm: 0.2 }, /closes on itself/],
    ['another angle', { faceGapMm: 10, insideRadiusMm: 3, angleDeg: 90 }, /turns by 180°/],
  ])('%s: cannot tell', (_, bend, because) => {
    const design = makeBend({ ...held, insideRadiusMm: 8, ...bend })
    expect(bendOf(design).modelLimits.map((limit) => limit.because)).toEqual([expect.stringMatching(because)])
    expect(listVerdicts(design, 'bend-strain')).toEqual(['cannot-tell'])
  })

  test.each<[string, Partial<Bend>, RegExp]>([
    [
      'something else holds the radius',
      { radiusHeldBy: 'former' },
      /1 mm between faces is stated, and the radius is stated to be held by/,
    ],
    [
      'nobody stated what holds the radius',
      { radiusHeldBy: null },
      /1 mm between faces is stated, and nobody has stated that faces/,
    ],
  ])('a gap where %s: nobody can tell, and the field is named', (_, bend, because) => {
    const design = makeBend({ ...held, ...bend, faceGapMm: 1, insideRadiusMm: 8 })
    const { freeFold, modelLimits } = bendOf(design)
    expect(freeFold).toBeNull()
    expect(modelLimits).toEqual([
      {
        kind: 'states',
        because: expect.stringMatching(because),
        decidedBy: expect.stringContaining('Gap between the faces'),
      },
    ])
    expect(listVerdicts(design, 'bend-strain')).toEqual(['cannot-tell'])
    expect(listVerdicts(makeBend({ ...held, ...bend, insideRadiusMm: 8 }), 'bend-strain')).toEqual(['meets'])
  })
})

describe('remedies of a bend with other states', () => {
  test('keep what is stated, but for loads that a remedy takes off the bend', () => {
    const stated = { flexesFromRadiusMm: 60, foldedToRadiusMm: 2, pullN: 1, twistDeg: 5, twistLengthMm: 40 }
    const design = makeBend({ insideRadiusMm: 3, ...stated }, { requiredCycles: 100_000 })
    const { remedies } = findRemedies(design, 'bend-0')
    expect(remedies.length).toBeGreaterThan(0)
    for (const { patch } of remedies) {
      const edited = structuredClone(design)
      applyPatch(edited, [...patch])
      for (const bend of edited.bends) {
        expect(bend).toMatchObject({ flexesFromRadiusMm: 60, foldedToRadiusMm: 2 })
        expect(bend.pullN).toBeLessThanOrEqual(stated.pullN)
        expect(bend.twistDeg).toBeLessThanOrEqual(stated.twistDeg)
        expect(bend.twistLengthMm).toBeGreaterThanOrEqual(stated.twistLengthMm)
      }
    }
  })

  test('a larger radius is found beside a pull, and meets with the pull', () => {
    const design = makeBend({ insideRadiusMm: 2, pullN: 3 }, { requiredCycles: 2000 })
    const larger = findRemedies(design, 'bend-0').remedies.find(
      ({ changes }) => changes.length === 1 && changes[0]?.id === 'larger-radius:meets',
    )
    if (larger === undefined) throw new Error('no larger radius is offered')
    const edited = structuredClone(design)
    applyPatch(edited, [...larger.patch])
    expect(edited.bends[0]?.pullN).toBe(3)
    expect(listVerdicts(edited, 'fatigue-life')).toEqual(['meets'])
  })
})
