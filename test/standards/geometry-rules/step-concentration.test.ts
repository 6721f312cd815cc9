import { expect } from 'vitest'
import { computeStepConcentration } from '@/lib/engine/catalogue'
import { checkTopic, expectNear, expectValue, input } from '../check-values'

/**
 * Peterson's Stress Concentration Factors (1997), stepped flat bar in tension, as worked in a public
 * calculation sheet. Heywood's formula is recalled (from memory) and differs by up to 11 %: it guards against a slip in
 * a coefficient, not against the last digits.
 */
function heywood(wideMm: number, narrowMm: number, filletRadiusMm: number): number {
  const widths = wideMm / narrowMm
  return 1 + (((widths - 1) / (2 * (2.8 * widths - 2))) * (narrowMm / filletRadiusMm)) ** 0.65
}

checkTopic('9 geometry rules', [
  [
    /^kt-\d/,
    (check) => {
      const [wideMm, narrowMm, filletRadiusMm] = [
        input(check, 'wideWidthMm'),
        input(check, 'narrowWidthMm'),
        input(check, 'filletRadiusMm'),
      ]
      const { ratio, isOutOfRange } = computeStepConcentration(wideMm, narrowMm, filletRadiusMm)
      expect(isOutOfRange).toBe(false)
      expectValue(check, 'ktTension', ratio)
      const recalled = heywood(wideMm, narrowMm, filletRadiusMm)
      expectNear(recalled, Number(check.expected.heywoodKt), { rel: check.tolerance.relHeywood ?? 0 })
      expect(Math.abs(recalled / ratio - 1)).toBeLessThan(0.11)
    },
  ],
  [
    /^kt-out-of-range/,
    (check) => {
      const sharp = computeStepConcentration(
        input(check, 'wideWidthMm'),
        input(check, 'narrowWidthMm'),
        input(check, 'filletRadiusMm'),
      )
      expect(check.expected.status).toContain('out of range')
      expect(sharp.isOutOfRange).toBe(true)
      // Not extrapolated: the value of the sharpest fillet that the fit covers, t/r = 20.
      expect(sharp.ratio).toBe(computeStepConcentration(20, 10, 0.25).ratio)
    },
  ],
])
