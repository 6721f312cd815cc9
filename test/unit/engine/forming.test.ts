import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  type BondedSection,
  computeFormedState,
  computeLeaves,
  computeParallelFaceFold,
  computeSection,
  computeSpringback,
  holdingForceN,
} from '@/lib/engine/bending'
import { bendToCurvature } from '@/test/factories/moment-curvature'
import { bendStack, between, insideRadiusMm } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

/** The same stacks, with copper that yields. */
const yieldingStack: fc.Arbitrary<BendLayer[]> = fc
  .tuple(bendStack, between(50, 300), between(0, 0.05))
  .map(([layers, yieldStrengthMpa, slope]) =>
    layers.map((layer) =>
      layer.conductor === undefined
        ? layer
        : { ...layer, yieldStrengthMpa, tangentModulusGpa: slope * layer.modulusGpa },
    ),
  )

/** M = D kappa, per mm of width. */
const elasticMomentNPerMm = ({ rigidityNmm2PerMm, neutralAxisUm }: BondedSection, insideRadiusMm: number): number =>
  rigidityNmm2PerMm / (insideRadiusMm + neutralAxisUm / 1000)

describe('a formed section', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('has the elastic axis and moment where nothing has a yield strength', () => {
    holds(
      fc.property(bendStack, insideRadiusMm, (layers, radiusMm) => {
        const section = computeSection(layers)
        const formed = computeFormedState(section, radiusMm)
        expect(Math.abs(formed.axisUm - section.neutralAxisUm)).toBeLessThan(1e-8 * section.totalThicknessUm)
        expect(Math.abs(formed.momentNPerMmWidth / elasticMomentNPerMm(section, radiusMm) - 1)).toBeLessThan(1e-7)
        expect(formed.firstYieldInsideRadiusMm).toBeNull()
        expect(computeSpringback(section, radiusMm, 90)).toMatchObject({ relaxedAngleDeg: 0, springbackFraction: 1 })
      }),
    )
  })

  it('agrees with brute-force integration of the stress through the thickness', () => {
    holds(
      fc.property(yieldingStack, insideRadiusMm, (layers, radiusMm) => {
        const formed = computeFormedState(computeSection(layers), radiusMm)
        const { forceN, momentN, stretchedN } = integrateStress(layers, formed.axisUm, formed.curvaturePerMm)
        // 4000 slices per layer resolve the knee of the stress to about 1e-6.
        expect(Math.abs(forceN)).toBeLessThan(1e-5 * stretchedN)
        expect(Math.abs(momentN / formed.momentNPerMmWidth - 1)).toBeLessThan(1e-4)
      }),
      { numRuns: 40 },
    )
  })

  it('holds no more moment than an elastic one, and more the tighter it is bent', () => {
    holds(
      fc.property(yieldingStack, between(0.01, 5), between(1.01, 3), (layers, curvaturePerMm, factor) => {
        const section = computeSection(layers)
        const gentleMoment = bendToCurvature(section, curvaturePerMm).momentNPerMmWidth
        const tight = bendToCurvature(section, curvaturePerMm * factor)
        expect(gentleMoment).toBeLessThanOrEqual(section.rigidityNmm2PerMm * curvaturePerMm * (1 + 1e-7))
        expect(tight.momentNPerMmWidth).toBeGreaterThan(gentleMoment * (1 - 1e-7))
      }),
    )
  })

  it('springs back by a share between none and all, and keeps more curvature the tighter it is bent', () => {
    holds(
      fc.property(yieldingStack, between(0.1, 10), (layers, radiusMm) => {
        const section = computeSection(layers)
        const tight = computeSpringback(section, radiusMm, 180)
        const wide = computeSpringback(section, radiusMm * 1.5, 180)
        expect(tight.springbackFraction).toBeGreaterThan(0)
        expect(tight.springbackFraction).toBeLessThanOrEqual(1)
        // Not the share: once letting go yields copper again, the kept curvature levels off while the formed one grows.
        const slackPerMm = 1e-5 * tight.formed.curvaturePerMm
        expect(tight.relaxedCurvaturePerMm).toBeGreaterThanOrEqual(wide.relaxedCurvaturePerMm - slackPerMm)
        expect(tight.relaxedInsideRadiusMm ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(radiusMm * (1 - 1e-5))
        expect(tight.relaxedAngleDeg).toBeCloseTo(180 * (1 - tight.springbackFraction), 9)
      }),
    )
  })
})

/** Second implementation: midpoint slices, stress by the definition of a bilinear material in plane strain. */
function integrateStress(
  layers: readonly BendLayer[],
  axisUm: number,
  curvaturePerMm: number,
): { forceN: number; momentN: number; stretchedN: number } {
  const slices = 4000
  let depthUm = 0
  let forceN = 0
  let momentN = 0
  let stretchedN = 0
  for (const layer of layers) {
    const heightMm = layer.thicknessUm / slices / 1000
    for (let index = 0; index < slices; index += 1) {
      const armMm = (depthUm + ((index + 0.5) * layer.thicknessUm) / slices - axisUm) / 1000
      const stress = stressMpa(layer, curvaturePerMm * armMm)
      forceN += stress * heightMm
      stretchedN += Math.abs(stress) * heightMm
      momentN += stress * armMm * heightMm
    }
    depthUm += layer.thicknessUm
  }
  return { forceN, momentN, stretchedN }
}

function stressMpa(
  { modulusGpa, poisson, conductor, yieldStrengthMpa, tangentModulusGpa = 0 }: BendLayer,
  strain: number,
): number {
  // Copper with gaps contracts sideways; everything else is held.
  const isFree = conductor !== undefined && conductor.coverageFraction < 1
  const elasticMpa = (1000 * modulusGpa) / (isFree ? 1 : 1 - poisson ** 2)
  const flowMpa = (yieldStrengthMpa ?? Number.POSITIVE_INFINITY) * (isFree ? 1 : 2 / Math.sqrt(3))
  const trial = elasticMpa * Math.abs(strain)
  const slopeMpa = (isFree ? 1 : 4 / 3) * 1000 * tangentModulusGpa
  const solid = trial <= flowMpa ? trial : flowMpa + slopeMpa * (Math.abs(strain) - flowMpa / elasticMpa)
  const coverage = conductor?.coverageFraction ?? 1
  const fill = conductor === undefined ? 0 : (1000 * conductor.fillModulusGpa) / (1 - conductor.fillPoisson ** 2)
  return Math.sign(strain) * coverage * solid + (1 - coverage) * fill * strain
}

describe('unbonded leaves', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('of equal build have 1/n^2 of the rigidity of the same layers bonded', () => {
    const film: BendLayer = { id: 'film', thicknessUm: 50, modulusGpa: 3, poisson: 0.34 }
    for (const count of [2, 3, 6]) {
      const fold = computeLeaves({
        leaves: new Array<BendLayer[]>(count).fill([film]),
        gapsUm: new Array<number>(count - 1).fill(0),
        insideRadiusMm: 5,
        angleDeg: 180,
      })
      const bonded = computeSection(new Array<BendLayer>(count).fill(film))
      expect(fold.rigidityNmm2PerMm / bonded.rigidityNmm2PerMm).toBeCloseTo(1 / count ** 2, 12)
    }
  })

  it('lie each at its own radius, and differ in length by pitch times angle', () => {
    const leaf: BendLayer[] = [{ id: 'film', thicknessUm: 100, modulusGpa: 3, poisson: 0.34 }]
    const fold = computeLeaves({ leaves: [leaf, leaf, leaf], gapsUm: [20, 30], insideRadiusMm: 2, angleDeg: 180 })
    expect(fold.leaves.map((each) => each.insideRadiusMm)).toEqual([2, 2.12, 2.25])
    expect(fold.totalThicknessUm).toBe(350)
    const [first, , last] = fold.leaves
    expect((last?.developedLengthMm ?? 0) - (first?.developedLengthMm ?? 0)).toBeCloseTo(Math.PI * 0.25, 12)
    expect(fold.greatestExtraLengthMm).toBeCloseTo(Math.PI * 0.25, 12)
  })

  it('strain their own faces only: a leaf of one symmetric film sees t / (2 R + t)', () => {
    const leaf: BendLayer[] = [
      {
        id: 'copper',
        thicknessUm: 35,
        modulusGpa: 110,
        poisson: 0.34,
        conductor: { coverageFraction: 1, fillModulusGpa: 0, fillPoisson: 0 },
      },
    ]
    const fold = computeLeaves({ leaves: [leaf, leaf], gapsUm: [65], insideRadiusMm: 1, angleDeg: 90 })
    const peaks = fold.leaves.map((each) => each.strain.conductors[0]?.peakPct ?? Number.NaN)
    expect(peaks[0]).toBeCloseTo((100 * 35) / 2035, 12)
    expect(peaks[1]).toBeCloseTo((100 * 35) / 2235, 12)
  })

  it('refuse a list of gaps that does not fit', () => {
    const leaf: BendLayer[] = [{ id: 'film', thicknessUm: 100, modulusGpa: 3, poisson: 0.34 }]
    expect(() => computeLeaves({ leaves: [leaf, leaf], gapsUm: [], insideRadiusMm: 2, angleDeg: 90 })).toThrow(
      /gapsUm must hold 1 gaps for 2 leaves; found 0/,
    )
    expect(() => computeLeaves({ leaves: [], gapsUm: [], insideRadiusMm: 2, angleDeg: 90 })).toThrow(
      /at least one leaf/,
    )
  })
})

describe('holding a fold', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('a fold of 180 degrees between faces is tighter at its tip than half the gap', () => {
    const section = computeSection([{ id: 'film', thicknessUm: 100, modulusGpa: 3, poisson: 0.34 }])
    const fold = computeParallelFaceFold(section, 4, 10)
    expect(fold.tipAxisRadiusMm).toBeLessThan(2 - 0.05)
    expect(fold.forceN).toBeGreaterThan(0)
    expect(() => computeParallelFaceFold(section, 0.15, 10)).toThrow(/^faceGapMm must be a number above 0.2 mm/)
  })

  it('force is moment over lever', () => {
    expect(holdingForceN(30, 15)).toBe(2)
    expect(() => holdingForceN(30, 0)).toThrow(/^leverMm/)
  })
})
