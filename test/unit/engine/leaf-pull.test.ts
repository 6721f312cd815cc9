import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Bend, type Design, evaluate } from '@/lib/engine'
import { makeExampleDesign } from '@/test/unit/catalogue/example-design'
import { addUnbondedLeaf, getZone } from '@/test/unit/catalogue/examples/changes'

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
