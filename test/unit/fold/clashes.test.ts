import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CarriedBody } from '@/lib/fold/bodies/flat-bodies'
import { checkFolded } from '@/lib/fold/clash/check-folded'
import type { FlatPart } from '@/lib/fold/kinematics/flat-part'
import { foldPart } from '@/lib/fold/kinematics/fold-part'
import { carry, makeStripPart, rectangle } from './make-part'

const check = (part: FlatPart, clearanceMm: number, carried: readonly CarriedBody[] = []) =>
  checkFolded(part, carried, foldPart(part, 'p0'), clearanceMm)

describe('clashes of a folded part', () => {
  it('a plain fold of any angle up to 180 degrees is no clash with itself, however tight', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (angleDeg, insideMm, clearanceMm) => {
          const part = makeStripPart([{ angleDeg, insideMm, plateMm: 12 }])
          expect(check(part, clearanceMm).clashes).toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })

  it('leaves of a 180 degree fold lie twice the inside radius apart, and a third leaf as it is stacked (closed form)', () => {
    const part = makeStripPart([
      { angleDeg: 180, insideMm: 0.8, plateMm: 12 },
      { angleDeg: -180, insideMm: 0.5, plateMm: 12 },
    ])
    // First and third leaf: both gaps and the leaf between.
    const between = (clearanceMm: number) =>
      check(part, clearanceMm).clashes.find(({ bodyIds }) => bodyIds.join(' ') === 'p0 p2')
    expect(between(2.69)).toBeUndefined()
    const near = between(2.71)
    expect(near?.kind).toBe('near')
    expect(near?.lowerMm).toBeCloseTo(2 * 0.8 + 0.1 + 2 * 0.5, 6)
    // The second bend starts from the second leaf, as far from the first as that one.
    const { least } = check(part, 0.2)
    expect(least?.bodyIds).toEqual(['p0', 'b1'])
    expect(least?.lowerMm).toBeLessThanOrEqual(1.6)
    expect(least?.upperMm).toBeGreaterThanOrEqual(1.6)
    expect((least?.upperMm ?? 9) - (least?.lowerMm ?? 0)).toBeLessThan(0.02)
  })

  it('a stiffener that is thicker than the fold leaves room is found, on either face; a thinner one is not', () => {
    const part = makeStripPart([{ angleDeg: 180, insideMm: 0.5, plateMm: 12 }])
    const on = (bottomMm: number, topMm: number) => carry('s', 'p0', rectangle(2, 1, 6, 6), bottomMm, topMm)
    expect(check(part, 0, [on(0.05, 1.04)]).clashes).toEqual([])
    expect(check(part, 0.2, [on(0.05, 1.04)]).clashes.map(({ kind }) => kind)).toEqual(['near'])
    expect(check(part, 0.01, [on(0.05, 1.06)]).clashes.map(({ kind }) => kind)).toEqual(['touches'])
    expect(check(part, 0.2, [on(-3, -0.05)]).clashes).toEqual([])
  })

  it('a bend of 180 degrees that lays its leaf onto a component of the plate before is found', () => {
    const part = makeStripPart([
      { angleDeg: 90, insideMm: 1, plateMm: 20 },
      { angleDeg: 90, insideMm: 1, plateMm: 6 },
    ])
    const high = carry('tall part', 'p0', rectangle(10, 2, 5, 4), 0.05, 8.2)
    const found = check(part, 0.2, [high]).clashes
    expect(found.map(({ bodyIds, kind }) => [bodyIds.join(' / '), kind])).toEqual([['p2 / tall part', 'touches']])
  })

  it('a roll of more than a turn meets itself', () => {
    const part = makeStripPart(Array.from({ length: 4 }, () => ({ angleDeg: 100, insideMm: 1, plateMm: 5 })))
    expect(check(part, 0.1).clashes.map(({ bodyIds }) => bodyIds.join(' '))).toContain('p0 p4')
  })

  it('bounds hold the gap of a dense sample of both surfaces, on random strips', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            angleDeg: fc.integer({ min: -180, max: 180 }),
            insideMm: fc.double({ min: 0.2, max: 3, noNaN: true }),
            plateMm: fc.double({ min: 1, max: 12, noNaN: true }),
          }),
          { minLength: 2, maxLength: 4 },
        ),
        (bends) => {
          const part = makeStripPart(bends)
          const { least, clashes } = check(part, 0.3)
          const sampled = sampleLeast(part)
          for (const { bodyIds, lowerMm, upperMm } of clashes) {
            expect(lowerMm).toBeLessThanOrEqual((sampled.get(bodyIds.join(' ')) ?? Number.POSITIVE_INFINITY) + 1e-9)
            expect(lowerMm).toBeLessThanOrEqual(upperMm)
          }
          if (least !== null) {
            const known = sampled.get(least.bodyIds.join(' ')) ?? Number.POSITIVE_INFINITY
            expect(least.lowerMm).toBeLessThanOrEqual(known + 1e-9)
          }
        },
      ),
      { numRuns: 40 },
    )
  })
})

/** Least distances of plates by points on their mid-lines: a strip's cross-section is the same at each place along its width. */
function sampleLeast(part: FlatPart): ReadonlyMap<string, number> {
  const folded = foldPart(part, 'p0')
  const lines = part.plates.map(({ id, solids }) => {
    const [{ loops, bottomMm, topMm } = { loops: [], bottomMm: 0, topMm: 0 }] = solids
    const xs = (loops[0] ?? []).map(([x]) => x)
    const [from, to] = [Math.min(...xs), Math.max(...xs)]
    const pose = folded.plates.get(id)
    if (pose === undefined) throw new Error('no pose')
    const points = Array.from({ length: 41 }, (_, step) => from + ((to - from) * step) / 40).flatMap((x) =>
      [bottomMm, topMm].map(
        (z) =>
          [
            pose.axes[0][0] * x + pose.axes[2][0] * z + pose.origin[0],
            pose.axes[0][2] * x + pose.axes[2][2] * z + pose.origin[2],
          ] as const,
      ),
    )
    return { id, points }
  })
  const least = new Map<string, number>()
  for (const a of lines) {
    for (const b of lines) {
      least.set(
        `${a.id} ${b.id}`,
        Math.min(...a.points.flatMap(([x, z]) => b.points.map(([u, w]) => Math.hypot(x - u, z - w)))),
      )
    }
  }
  return least
}
