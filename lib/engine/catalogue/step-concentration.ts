/** Range of step height over fillet radius in which the polynomial was fitted. */
const LEAST_HEIGHT_TO_RADIUS = 0.1
const GREATEST_HEIGHT_TO_RADIUS = 20
/** Where the two fits meet. */
const FIT_CHANGE = 2

export interface StepConcentration {
  /** Peak stress over the mean stress of the narrow part; 1 where nothing steps. */
  readonly ratio: number
  /** True where the fillet lies outside the fit; the ratio is then that of the nearest fillet inside it. */
  readonly isOutOfRange: boolean
}

/**
 * Stress concentration of a flat bar in tension whose width steps down through fillets on both sides.
 *
 * Model    Kt = C1 + C2 s + C3 s^2 + C4 s^3, s = 2t/H, t = (H - d) / 2 the height of the step, C1 to C4 functions of t/r
 * Holds    0.1 <= t/r <= 20. Outside, the nearest end of the range is used and said: never extrapolated. Sharper
 *          fillets are then worse than the ratio says, gentler ones better.
 * @param wideMm          H, above 0
 * @param narrowMm        d, above 0 and not above wideMm
 * @param filletRadiusMm  r, 0 or more; 0 is a sharp corner
 * @throws  RangeError if a width breaks those ranges
 * Source   SOURCES.filletConcentration; check values in test/standards/geometry-rules
 * @example a bar of 6 mm narrowing to 4 mm through 1 mm fillets gives 1.745
 */
export function computeStepConcentration(wideMm: number, narrowMm: number, filletRadiusMm: number): StepConcentration {
  if (!(wideMm > 0 && Number.isFinite(wideMm))) throw new RangeError(`wideMm must be above 0 mm; ${wideMm} was given`)
  if (!(narrowMm > 0 && narrowMm <= wideMm)) {
    throw new RangeError(`narrowMm must lie between 0 and wideMm, ${wideMm} mm; ${narrowMm} was given`)
  }
  if (!(filletRadiusMm >= 0)) throw new RangeError(`filletRadiusMm must be 0 mm or more; ${filletRadiusMm} was given`)
  const heightMm = (wideMm - narrowMm) / 2
  if (heightMm === 0) return { ratio: 1, isOutOfRange: false }
  const asked = filletRadiusMm === 0 ? Number.POSITIVE_INFINITY : heightMm / filletRadiusMm
  const x = Math.min(Math.max(asked, LEAST_HEIGHT_TO_RADIUS), GREATEST_HEIGHT_TO_RADIUS)
  const q = Math.sqrt(x)
  const s = (2 * heightMm) / wideMm
  const [c1, c2, c3, c4] =
    x <= FIT_CHANGE
      ? [
          1.006 + 1.008 * q - 0.044 * x,
          -0.115 - 0.584 * q + 0.315 * x,
          0.245 - 1.006 * q - 0.257 * x,
          -0.135 + 0.582 * q - 0.017 * x,
        ]
      : [
          1.02 + 1.009 * q - 0.048 * x,
          -0.065 - 0.165 * q - 0.007 * x,
          -3.459 + 1.266 * q - 0.016 * x,
          3.505 - 2.109 * q + 0.069 * x,
        ]
  // At very deep steps the fit dips a little under 1, which no notch can do.
  return { ratio: Math.max(1, c1 + c2 * s + c3 * s ** 2 + c4 * s ** 3), isOutOfRange: x !== asked }
}

/**
 * Radius of the largest fillet that a taper leaves room for: an arc tangent to the narrow edge that rises by the step
 * height over the taper's length.
 *
 * Model    r = (L^2 + t^2) / (2 t) for L >= t; r = L for a taper shorter than the step is high
 * Source   SOURCES.exactArithmetic (chord and sagitta)
 */
export function filletRadiusOfTaperMm(stepHeightMm: number, taperLengthMm: number): number {
  if (stepHeightMm <= 0) return Number.POSITIVE_INFINITY
  if (taperLengthMm < stepHeightMm) return taperLengthMm
  return (taperLengthMm ** 2 + stepHeightMm ** 2) / (2 * stepHeightMm)
}
