import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curlRisePct, type ExpandingLayer, thermalCurvaturePerMm } from '@/lib/engine/bending'

const layerArbitrary: fc.Arbitrary<ExpandingLayer> = fc.record({
  thicknessUm: fc.double({ min: 1, max: 500, noNaN: true }),
  modulusGpa: fc.double({ min: 0.1, max: 200, noNaN: true }),
  expansionPpmPerC: fc.double({ min: 0, max: 200, noNaN: true }),
})
const stackArbitrary = fc.array(layerArbitrary, { minLength: 1, maxLength: 8 })

describe('curl by temperature', () => {
  it('turns over with the stack, grows with the change, and is nothing where all layers expand alike', () => {
    fc.assert(
      fc.property(stackArbitrary, fc.double({ min: -200, max: 200, noNaN: true }), (layers, changeDegC) => {
        const curvature = thermalCurvaturePerMm(layers, changeDegC)
        // Sums of terms that cancel lose digits with the size of what cancels.
        const scale = 1e-9 * (1 + Math.abs(thermalCurvaturePerMm(layers, 200)))
        expect(Math.abs(thermalCurvaturePerMm(layers.toReversed(), changeDegC) + curvature)).toBeLessThan(scale)
        expect(Math.abs(thermalCurvaturePerMm(layers, 2 * changeDegC) - 2 * curvature)).toBeLessThan(scale)
        const alike = layers.map((layer) => ({ ...layer, expansionPpmPerC: 17 }))
        expect(Math.abs(thermalCurvaturePerMm(alike, changeDegC))).toBeLessThan(1e-9)
        const mirrored = [...layers, ...layers.toReversed()]
        expect(Math.abs(thermalCurvaturePerMm(mirrored, changeDegC))).toBeLessThan(1e-9)
      }),
    )
  })

  it('rises as an arc does: a circle through both ends, and never more than a half circle', () => {
    for (const [radiusMm, lengthMm] of [
      [1000, 40],
      [50, 40],
      [20, 40],
    ] as const) {
      const riseMm = radiusMm * (1 - Math.cos(lengthMm / (2 * radiusMm)))
      expect(curlRisePct(-1 / radiusMm, lengthMm)).toBeCloseTo((100 * riseMm) / lengthMm, 10)
    }
    expect(curlRisePct(0, 40)).toBe(0)
    expect(curlRisePct(5, 40)).toBeCloseTo(100 / Math.PI, 10)
    // A gentle curl: the parabola of the beam, kappa L / 8.
    expect(curlRisePct(1e-6, 40)).toBeCloseTo((100 * 1e-6 * 40) / 8, 12)
  })
})
