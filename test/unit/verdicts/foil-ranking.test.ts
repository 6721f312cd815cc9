import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Design, evaluate, listLibraryMaterials } from '@/lib/engine'
import { applyDesignPatch, findRemedies } from '@/lib/engine/remedies'
import { listOutcomes, makeOneBend, verdictOf } from './one-bend'

const NOT_ROLLED = ['copper-ed', 'copper-ed-hte', 'copper-plated']
const REQUIRED = [1, 300, 1600, 2000, 1e4, 5e4, 1e5, 1e6, 1e8]

const lifeOf = (design: Design) => evaluate(design).bends[0]

describe('foils in long life', () => {
  test('the relation puts electrodeposited foil first, which is why nothing may rest on it', () => {
    const rolled = lifeOf(makeOneBend({ foilId: 'copper-ra' }))
    const deposited = lifeOf(makeOneBend({ foilId: 'copper-ed' }))
    expect(deposited?.medianLifeCycles ?? 0).toBeGreaterThan(5 * (rolled?.medianLifeCycles ?? Number.POSITIVE_INFINITY))
  })

  test.each(NOT_ROLLED)('%s meets nothing by its tensile strength', (foilId) => {
    const verdicts = REQUIRED.map((requiredCycles) =>
      verdictOf(makeOneBend({ foilId, requiredCycles }), 'fatigue-life'),
    )
    // Short lives by ductility; then nobody can tell; then even the strength term is too little.
    expect(verdicts[0]).toBe('meets')
    expect(verdicts).toContain('cannot-tell')
    for (const [at, requiredCycles] of REQUIRED.entries()) {
      if (requiredCycles >= 1600) expect(['cannot-tell', 'fails']).toContain(verdicts[at])
      // One inequality, asked once.
      expect(verdictOf(makeOneBend({ foilId, requiredCycles }), 'bend-strain')).toBe('not-applicable')
    }
  })

  test('says what decides instead, at the figure', () => {
    const evaluation = evaluate(makeOneBend({ foilId: 'copper-ed', requiredCycles: 2e4 }))
    const [outcome] = listOutcomes(evaluation, 'fatigue-life')
    expect(outcome).toMatchObject({ kind: 'cannot-tell', decidedBy: 'qualify by test', limit: { value: 2e4 } })
    expect(evaluation.bends[0]).toMatchObject({ minRadiusByLifeMm: null, minRadiusByStrainMm: null })
    expect(evaluation.bends[0]?.cautions.join(' ')).toContain('tensile strength alone')
  })

  test('the caution goes by the life that was computed, not by the one that is asked for', () => {
    const caution = 'must not be used to rank foils'
    expect(lifeOf(makeOneBend({ requiredCycles: 10 }))?.cautions.join(' ')).toContain(caution)
    expect(lifeOf(makeOneBend({ requiredCycles: 1e8, insideRadiusMm: 0.5 }))?.cautions.join(' ')).not.toContain(caution)
  })

  test('a life at 125 degC says at the figure that the relation is one of room temperature', () => {
    const design = makeOneBend()
    expect(lifeOf(design)?.cautions.join(' ')).not.toContain('room temperature')
    design.brief.operatingMaxDegC = 125
    const [outcome] = listOutcomes(evaluate(design), 'fatigue-life')
    expect(outcome?.kind === 'decided' ? outcome.cautions.join(' ') : '').toContain('works at 125 °C')
  })

  test('the damage sum does not count on strength either', () => {
    const sum = (foilId: string, requiredCycles: number) =>
      verdictOf(makeOneBend({ foilId, requiredCycles, bends: [{}, { insideRadiusMm: 5 }] }), 'damage-sum')
    expect(sum('copper-ra', 2000)).toBe('thin-margin')
    expect(sum('copper-ra', 300)).toBe('meets')
    expect(sum('copper-ed', 2000)).toBe('cannot-tell')
    expect(sum('copper-ed', 10)).toBe('meets')
    expect(sum('copper-ed', 1e7)).toBe('fails')
  })

  test('tightening the radius or asking for more cycles never improves the verdict of any foil', () => {
    const rank = { fails: 4, 'cannot-tell': 3, 'not-computed': 2, 'thin-margin': 1, meets: 0 } as Record<string, number>
    const foils = listLibraryMaterials().flatMap(({ id, foil }) => (foil === null ? [] : [id]))
    fc.assert(
      fc.property(
        fc.constantFrom(...foils),
        fc.double({ min: 0.2, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (foilId, insideRadiusMm, logCycles, share) => {
          const base = { foilId, insideRadiusMm, requiredCycles: 10 ** logCycles }
          const before = rank[verdictOf(makeOneBend(base), 'fatigue-life')] ?? 0
          for (const worse of [
            { ...base, insideRadiusMm: insideRadiusMm * share },
            { ...base, requiredCycles: Math.min(1e12, base.requiredCycles / share) },
          ]) {
            expect(rank[verdictOf(makeOneBend(worse), 'fatigue-life')]).toBeGreaterThanOrEqual(before)
          }
        },
      ),
      { seed: 8, numRuns: 60 },
    )
  })
})

describe('remedies of a dynamic bend', () => {
  const countDeposited = (design: Design) =>
    design.construction.layers.filter((layer) => layer.kind === 'conductor' && NOT_ROLLED.includes(layer.materialId))
      .length

  test('offer rolled-annealed foil first, and never lead to electrodeposited foil', () => {
    let offered = 0
    fc.assert(
      fc.property(
        fc.constantFrom('copper-ra', 'copper-ra-lta', 'copper-ed', 'copper-ed-hte'),
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 2, max: 7, noNaN: true }),
        fc.double({ min: 5, max: 70, noNaN: true }),
        (foilId, insideRadiusMm, logCycles, thicknessUm) => {
          const design = makeOneBend({
            foilId,
            insideRadiusMm,
            requiredCycles: 10 ** logCycles,
            copper: { thicknessUm },
          })
          if (verdictOf(design, 'fatigue-life') === 'meets') return
          const { remedies } = findRemedies(design, 'bend-0')
          for (const { patch } of remedies) {
            expect(countDeposited(applyDesignPatch(design, patch))).toBeLessThanOrEqual(countDeposited(design))
          }
          if (countDeposited(design) === 0) return
          offered += 1
          expect(remedies[0]?.changes.map(({ family }) => family)).toContain('rolled-annealed-foil')
          expect(
            remedies.every(
              ({ after }) => after.unprovenFoilLayers === 0 || after.verdict !== 'meets' || 10 ** logCycles < 1300,
            ),
          ).toBe(true)
        },
      ),
      { seed: 8, numRuns: 40 },
    )
    expect(offered).toBeGreaterThan(10)
  })
})
