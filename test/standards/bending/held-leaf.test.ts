import { describe, expect, it } from 'vitest'
import { type BendLayer, computeHeldLeaf, computeLeaves } from '@/lib/engine/bending'

/** Polyimide alone, without a yield: E = 3 GPa, free to contract. */
const film = (id: string, thicknessUm: number, modulusGpa = 3): BendLayer => ({
  id,
  thicknessUm,
  modulusGpa,
  poisson: 0.34,
  lateral: 'held',
})
const FLAT_MM = 1e5

describe('a leaf that is too short for its way', () => {
  // Timoshenko, Strength of Materials I, statically indeterminate bars with a misfit in length (from memory): e = misfit / L, F = E A e.
  it.each([
    [100, 40, 0.04],
    [50, 25, 0.01],
    [200, 120, 0.6],
  ])(
    '%s um thick over %s mm, short by %s mm: stretches by misfit over length and pulls by E t of that',
    (thicknessUm, lengthMm, shortMm) => {
      const found = computeHeldLeaf([film('a', thicknessUm)], {
        insideRadiusMm: FLAT_MM,
        loading: 'once',
        arcMm: lengthMm / 2,
        lengthMm,
        shortMm,
      })
      expect(found?.strainPct).toBeCloseTo((100 * shortMm) / lengthMm, 8)
      expect(found?.forceNPerMm).toBeCloseTo((3 * thicknessUm * shortMm) / lengthMm, 6)
    },
  )

  it('lacks the pitch of the leaves times the angle: arcs round one centre [exact geometry]', () => {
    const { leaves } = computeLeaves({
      leaves: [[film('a', 50)], [film('b', 50)]],
      gapsUm: [100],
      insideRadiusMm: 3,
      angleDeg: 180,
    })
    const arcsMm = [3.025, 3.175].map((radiusMm) => Math.PI * radiusMm)
    const [inner, outer] = leaves.map(({ developedLengthMm }) => developedLengthMm)
    expect((outer ?? 0) - (inner ?? 0)).toBeCloseTo((arcsMm[1] ?? 0) - (arcsMm[0] ?? 0), 4)
  })

  it('with copper past yield in the bend stretches most there, and by its whole length over all', () => {
    const copper: BendLayer = {
      id: 'cu',
      thicknessUm: 18,
      modulusGpa: 110,
      poisson: 0.34,
      lateral: 'held',
      yieldStrainPct: 0.1,
      conductor: { coverageFraction: 1, fillModulusGpa: 0, fillPoisson: 0 },
    }
    const found = computeHeldLeaf([film('a', 25), copper, film('b', 25)], {
      insideRadiusMm: 2,
      loading: 'once',
      arcMm: 6,
      lengthMm: 40,
      shortMm: 0.03,
    })
    if (found === null) throw new Error('within reach')
    expect(found.strainPct).toBeGreaterThan(found.straightPct)
    expect((6 * found.strainPct + 34 * found.straightPct) / 100).toBeCloseTo(0.03, 8)
  })

  it('is given no figure past 1 %', () => {
    const held = { insideRadiusMm: FLAT_MM, loading: 'once', arcMm: 10, lengthMm: 40 } as const
    expect(computeHeldLeaf([film('a', 100)], { ...held, shortMm: 0.399 })).not.toBeNull()
    expect(computeHeldLeaf([film('a', 100)], { ...held, shortMm: 0.401 })).toBeNull()
  })

  it.each([
    ['arcMm', { arcMm: 0 }],
    ['lengthMm', { lengthMm: 5 }],
    ['shortMm', { shortMm: -1 }],
  ])('refuses %s that cannot be', (name, change) => {
    const held = { insideRadiusMm: 2, loading: 'once', arcMm: 10, lengthMm: 40, shortMm: 0.1, ...change } as const
    expect(() => computeHeldLeaf([film('a', 100)], held)).toThrow(new RegExp(name))
  })
})
