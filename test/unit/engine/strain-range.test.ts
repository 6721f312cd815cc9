import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  computeBendStrain,
  computeSection,
  computeStrainRanges,
  type TolerancedLayer,
} from '@/lib/engine/bending'
import { bendLayer, between } from './arbitrary-layers'
import { holds, PROPERTY_TIMEOUT_MS } from './seed'

const rangesOf = (...inputs: Parameters<typeof computeStrainRanges>) => computeStrainRanges(...inputs).conductors

type Fraction = fc.Arbitrary<number>

/** Up to six layers, so that all corners can be tried; every one counts as a conductor, so that every face is looked at. */
function stackOf(layer: fc.Arbitrary<BendLayer>, toleranceFraction: Fraction): fc.Arbitrary<TolerancedLayer[]> {
  return fc.array(fc.tuple(layer, toleranceFraction, toleranceFraction), { minLength: 1, maxLength: 6 }).map((layers) =>
    layers.map(([each, minus, plus], index) => ({
      ...each,
      id: `layer-${index}`,
      minusUm: minus * each.thicknessUm,
      plusUm: plus * each.thicknessUm,
      conductor: each.conductor ?? { coverageFraction: 1, fillModulusGpa: 1, fillPoisson: 0.3 },
    })),
  )
}

/** Adhesive, films and patterned copper as they are sold. */
const tradeLayer: fc.Arbitrary<BendLayer> = fc
  .oneof(
    fc.record({ thicknessUm: between(12, 50), modulusGpa: between(0.5, 2), poisson: fc.constant(0.4) }),
    fc.record({ thicknessUm: between(12, 75), modulusGpa: between(2.5, 5), poisson: fc.constant(0.34) }),
    fc.record({
      thicknessUm: between(9, 70),
      modulusGpa: between(80, 130),
      poisson: fc.constant(0.34),
      conductor: fc.record({
        coverageFraction: between(0.1, 1),
        fillModulusGpa: between(0.5, 2),
        fillPoisson: fc.constant(0.4),
      }),
    }),
  )
  .map((layer) => ({ id: 'layer', ...layer }))

const tradeStack = stackOf(tradeLayer, between(0, 0.15))
const arbitraryStack = stackOf(bendLayer, between(0, 0.3))

interface RadiusTolerance {
  insideRadiusMm: number
  radiusMinusMm: number
  radiusPlusMm: number
}

const radiusWithTolerance: fc.Arbitrary<RadiusTolerance> = fc
  .tuple(between(0.3, 20), between(0, 0.3), between(0, 0.3))
  .map(([insideRadiusMm, minus, plus]) => ({
    insideRadiusMm,
    radiusMinusMm: insideRadiusMm * minus,
    radiusPlusMm: insideRadiusMm * plus,
  }))

/** Every corner of the box of tolerances, the slow and certain way. */
function extremesOverCorners(
  layers: readonly TolerancedLayer[],
  radius: RadiusTolerance,
): { min: number; max: number }[] {
  const extremes = layers.flatMap(() => [
    { min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY },
    { min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY },
  ])
  for (let corner = 0; corner < 2 ** (layers.length + 1); corner += 1) {
    const isHigh = (bit: number): boolean => Math.floor(corner / 2 ** bit) % 2 === 1
    const section = computeSection(
      layers.map((layer, bit) => ({
        ...layer,
        thicknessUm: layer.thicknessUm + (isHigh(bit) ? layer.plusUm : -layer.minusUm),
      })),
    )
    const radiusMm = radius.insideRadiusMm + (isHigh(layers.length) ? radius.radiusPlusMm : -radius.radiusMinusMm)
    const faces = computeBendStrain(section, radiusMm).conductors.flatMap((each) => [
      each.innerFacePct,
      each.outerFacePct,
    ])
    for (const [index, strain] of faces.entries()) {
      const extreme = extremes[index]
      if (extreme === undefined) continue
      extreme.min = Math.min(extreme.min, strain)
      extreme.max = Math.max(extreme.max, strain)
    }
  }
  return extremes
}

describe('strain over tolerances', { timeout: PROPERTY_TIMEOUT_MS }, () => {
  it.each([
    { of: 'films and copper of the trade', stack: tradeStack },
    { of: 'arbitrary stacks', stack: arbitraryStack },
  ])('is what trying all corners gives, for $of', ({ stack }) => {
    holds(
      fc.property(stack, radiusWithTolerance, (layers, radius) => {
        const results = rangesOf({ layers, ...radius })
        const corners = extremesOverCorners(layers, radius)
        const worstPct = Math.max(...corners.flatMap(({ min, max }) => [Math.abs(min), Math.abs(max)]))
        // The face that decides: exact but for rounding.
        const foundPct = Math.max(...results.map((each) => each.peakWorstPct))
        expect(Math.abs(foundPct - worstPct)).toBeLessThanOrEqual(1e-9 * worstPct)
        // A face near the axis may stop at a lesser corner: seen up to 0.3 % of the worst strain.
        for (const [index, range] of results.flatMap((each) => [each.inner, each.outer]).entries()) {
          const corner = corners[index]
          expect(Math.abs(range.minPct - (corner?.min ?? Number.NaN))).toBeLessThanOrEqual(5e-3 * worstPct)
          expect(Math.abs(range.maxPct - (corner?.max ?? Number.NaN))).toBeLessThanOrEqual(5e-3 * worstPct)
        }
      }),
      { numRuns: 120 },
    )
  })

  it('is not passed anywhere inside the tolerances', () => {
    const shares = fc.array(between(0, 1), { minLength: 7, maxLength: 7 })
    holds(
      fc.property(tradeStack, radiusWithTolerance, shares, (layers, radius, place) => {
        const at = (index: number, low: number, high: number): number => low + (place[index] ?? 0) * (high - low)
        const section = computeSection(
          layers.map((layer, index) => ({
            ...layer,
            thicknessUm: at(index, layer.thicknessUm - layer.minusUm, layer.thicknessUm + layer.plusUm),
          })),
        )
        const { insideRadiusMm, radiusMinusMm, radiusPlusMm } = radius
        const bend = computeBendStrain(section, at(6, insideRadiusMm - radiusMinusMm, insideRadiusMm + radiusPlusMm))
        for (const [index, { inner, outer }] of rangesOf({ layers, ...radius }).entries()) {
          const conductor = bend.conductors[index]
          for (const [range, strainPct] of [
            [inner, conductor?.innerFacePct ?? Number.NaN],
            [outer, conductor?.outerFacePct ?? Number.NaN],
          ] as const) {
            // Rounding of strains of the order of the surface's.
            const room = 1e-12 * Math.abs(bend.outerSurfacePct)
            expect(strainPct).toBeGreaterThanOrEqual(range.minPct - room)
            expect(strainPct).toBeLessThanOrEqual(range.maxPct + room)
          }
        }
      }),
      { numRuns: 120 },
    )
  })

  it('is not passed by the worst conductor of a stack of many layers either', () => {
    const manyLayers = fc.array(fc.tuple(tradeLayer, between(0, 0.15)), { minLength: 30, maxLength: 60 })
    holds(
      fc.property(manyLayers, fc.infiniteStream(fc.boolean()), (list, ends) => {
        const layers = list.map(([layer, share], index) => {
          const toleranceUm = share * layer.thicknessUm
          return { ...layer, id: `layer-${index}`, minusUm: toleranceUm, plusUm: toleranceUm }
        })
        const results = rangesOf({ layers, insideRadiusMm: 20, radiusMinusMm: 1, radiusPlusMm: 1 })
        const worstPct = Math.max(0, ...results.map((each) => each.peakWorstPct))
        const corner = layers.map((layer) => {
          const isThick = ends.next().value === true
          return { ...layer, thicknessUm: layer.thicknessUm + (isThick ? layer.plusUm : -layer.minusUm) }
        })
        const { conductors } = computeBendStrain(computeSection(corner), 19)
        for (const { peakPct } of conductors) expect(peakPct).toBeLessThanOrEqual(worstPct * (1 + 1e-12))
      }),
      { numRuns: 100 },
    )
  })

  it('holds the nominal strain, and is a point without tolerances', () => {
    holds(
      fc.property(tradeStack, radiusWithTolerance, (layers, radius) => {
        for (const { inner, outer } of rangesOf({ layers, ...radius })) {
          for (const { minPct, nominalPct, maxPct } of [inner, outer]) {
            expect(minPct).toBeLessThanOrEqual(nominalPct)
            expect(maxPct).toBeGreaterThanOrEqual(nominalPct)
          }
        }
        const exact = layers.map((layer) => ({ ...layer, minusUm: 0, plusUm: 0 }))
        const points = rangesOf({
          layers: exact,
          insideRadiusMm: radius.insideRadiusMm,
          radiusMinusMm: 0,
          radiusPlusMm: 0,
        })
        for (const { peakBestPct, peakNominalPct, peakWorstPct } of points) {
          expect(Math.abs(peakWorstPct / peakNominalPct - 1)).toBeLessThan(1e-9)
          expect(peakBestPct).toBeLessThanOrEqual(peakNominalPct)
        }
      }),
    )
  })
})
