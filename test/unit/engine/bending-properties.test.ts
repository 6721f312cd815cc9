import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  type BondedSection,
  computeBendStrain,
  computeMinRadiusForStrain,
  computeSection,
} from '@/lib/engine/bending'
import { bendStack, between, insideRadiusMm } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

/** Rounding of a dozen layers, with room: results of one formula in two orders of summation. */
const ROUNDING = 1e-9

function expectSame(actual: number, expected: number, scale = Math.abs(expected)): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(ROUNDING * Math.max(scale, Number.MIN_VALUE))
}

function faceStrains(section: BondedSection, radiusMm: number): number[] {
  return computeBendStrain(section, radiusMm).conductors.flatMap((each) => [each.innerFacePct, each.outerFacePct])
}

describe('a bonded section', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it('has its axis strictly inside', () => {
    holds(
      fc.property(bendStack, (layers) => {
        const { neutralAxisUm, totalThicknessUm } = computeSection(layers)
        expect(neutralAxisUm).toBeGreaterThan(0)
        expect(neutralAxisUm).toBeLessThan(totalThicknessUm)
      }),
    )
  })

  it('bent the other way has its axis at the mirrored depth and the same rigidity', () => {
    holds(
      fc.property(bendStack, (layers) => {
        const inward = computeSection(layers)
        const outward = computeSection(layers.toReversed())
        expectSame(outward.neutralAxisUm, inward.totalThicknessUm - inward.neutralAxisUm, inward.totalThicknessUm)
        expectSame(outward.rigidityNmm2PerMm, inward.rigidityNmm2PerMm)
      }),
    )
  })

  it('keeps its strain when all moduli are scaled, and scales its rigidity', () => {
    holds(
      fc.property(bendStack, insideRadiusMm, between(0.1, 10), (layers, radiusMm, factor) => {
        const section = computeSection(layers)
        const scaled = computeSection(
          layers.map((layer) => ({
            ...layer,
            modulusGpa: layer.modulusGpa * factor,
            ...(layer.conductor !== undefined && {
              conductor: { ...layer.conductor, fillModulusGpa: layer.conductor.fillModulusGpa * factor },
            }),
          })),
        )
        expectSame(scaled.rigidityNmm2PerMm, section.rigidityNmm2PerMm * factor)
        const strains = faceStrains(section, radiusMm)
        const surfacePct = Math.abs(computeBendStrain(section, radiusMm).outerSurfacePct)
        for (const [index, strain] of faceStrains(scaled, radiusMm).entries()) {
          expectSame(strain, strains[index] ?? Number.NaN, surfacePct)
        }
      }),
    )
  })

  it('keeps its strain when thicknesses and radius are scaled together; rigidity goes with the cube', () => {
    holds(
      fc.property(bendStack, insideRadiusMm, between(0.2, 5), (layers, radiusMm, factor) => {
        const section = computeSection(layers)
        const scaled = computeSection(layers.map((layer) => ({ ...layer, thicknessUm: layer.thicknessUm * factor })))
        expectSame(scaled.rigidityNmm2PerMm, section.rigidityNmm2PerMm * factor ** 3)
        const strains = faceStrains(section, radiusMm)
        const surfacePct = Math.abs(computeBendStrain(section, radiusMm).outerSurfacePct)
        for (const [index, strain] of faceStrains(scaled, radiusMm * factor).entries()) {
          expectSame(strain, strains[index] ?? Number.NaN, surfacePct)
        }
      }),
    )
  })

  it('does not notice a layer that is split in two', () => {
    holds(
      fc.property(bendStack, fc.nat(), between(0.05, 0.95), (layers, pick, share) => {
        const whole = computeSection(layers)
        const target = pick % layers.length
        const split = computeSection(
          layers.flatMap((layer, index): BendLayer[] =>
            index === target
              ? [
                  { ...layer, thicknessUm: layer.thicknessUm * share },
                  { ...layer, thicknessUm: layer.thicknessUm * (1 - share) },
                ]
              : [layer],
          ),
        )
        expectSame(split.neutralAxisUm, whole.neutralAxisUm)
        expectSame(split.rigidityNmm2PerMm, whole.rigidityNmm2PerMm)
      }),
    )
  })

  it('has its axis in the middle when it is symmetric', () => {
    holds(
      fc.property(bendStack, (layers) => {
        const { neutralAxisUm, totalThicknessUm } = computeSection([...layers, ...[...layers].reverse()])
        expectSame(neutralAxisUm, totalThicknessUm / 2)
      }),
    )
  })

  it('agrees with brute-force integration through the thickness', () => {
    holds(
      fc.property(bendStack, (layers) => {
        const section = computeSection(layers)
        const { axisUm, rigidityNmm2PerMm } = integrate(section)
        expectSame(section.neutralAxisUm, axisUm)
        expectSame(section.rigidityNmm2PerMm, rigidityNmm2PerMm)
      }),
      { numRuns: 40 },
    )
  })

  it('strains no conductor past the allowable at the radius found for it, and some conductor to it', () => {
    holds(
      fc.property(bendStack, between(0.05, 12), (layers, allowablePct) => {
        const section = computeSection(layers)
        const found = computeMinRadiusForStrain(section, allowablePct)
        if (found === null) {
          expect(section.layers.some((layer) => layer.isConductor)).toBe(false)
          return
        }
        const peaks = computeBendStrain(section, found.minInsideRadiusMm).conductors.map((each) => each.peakPct)
        const worstPct = Math.max(...peaks)
        expect(worstPct).toBeLessThanOrEqual(allowablePct * (1 + ROUNDING))
        if (!found.anyRadius) expectSame(worstPct, allowablePct)
      }),
    )
  })

  it('strains linearly with depth between its surfaces', () => {
    holds(
      fc.property(bendStack, insideRadiusMm, (layers, radiusMm) => {
        const section = computeSection(layers)
        const { innerSurfacePct, outerSurfacePct, conductors } = computeBendStrain(section, radiusMm)
        const at = (depthUm: number) =>
          innerSurfacePct + (depthUm / section.totalThicknessUm) * (outerSurfacePct - innerSurfacePct)
        const copper = section.layers.filter(({ isConductor }) => isConductor)
        expect(conductors).toHaveLength(copper.length)
        for (const [index, { innerDepthUm, outerDepthUm }] of copper.entries()) {
          expectSame(conductors[index]?.innerFacePct ?? Number.NaN, at(innerDepthUm), outerSurfacePct)
          expectSame(conductors[index]?.outerFacePct ?? Number.NaN, at(outerDepthUm), outerSurfacePct)
        }
      }),
    )
  })
})

/**
 * Second implementation: slices, no parallel-axis term. Midpoint slices are exact for the axis; the second moment is
 * short by h^2/12 per slice, which falls below the tolerance only by Richardson's step from two slice counts.
 */
function integrate(section: BondedSection): { axisUm: number; rigidityNmm2PerMm: number } {
  const slice = (count: number, weight: (depthUm: number) => number): number => {
    let sum = 0
    for (const { innerDepthUm, outerDepthUm, effectiveModulusGpa } of section.layers) {
      const heightUm = (outerDepthUm - innerDepthUm) / count
      for (let index = 0; index < count; index += 1) {
        sum += effectiveModulusGpa * heightUm * weight(innerDepthUm + (index + 0.5) * heightUm)
      }
    }
    return sum
  }
  const axisUm = slice(500, (depth) => depth) / slice(500, () => 1)
  const coarse = slice(500, (depth) => (depth - axisUm) ** 2)
  const fine = slice(1000, (depth) => (depth - axisUm) ** 2)
  return { axisUm, rigidityNmm2PerMm: (fine + (fine - coarse) / 3) * 1e-6 }
}
