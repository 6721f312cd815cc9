import { requireNumber } from '../numerics'
import { requireInsideRadiusUm } from './strain'

const RAD_PER_DEG = Math.PI / 180
const MAX_ANGLE_DEG = 36000

/**
 * Flat length that a bend uses up, along the axis that neither stretches nor shortens.
 *
 * Model    L = angle (R_i + y_n)
 * @param insideRadiusMm >= 0, neutralAxisUm >= 0 from the inside face, angleDeg > 0
 * @returns mm
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic; check values in test/standards/bending
 */
export function developedLengthMm({
  insideRadiusMm,
  neutralAxisUm,
  angleDeg,
}: {
  insideRadiusMm: number
  neutralAxisUm: number
  angleDeg: number
}): number {
  const radiusUm = requireInsideRadiusUm(insideRadiusMm)
  requireNumber('neutralAxisUm', neutralAxisUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
  return (requireAngle(angleDeg) * RAD_PER_DEG * (radiusUm + neutralAxisUm)) / 1000
}

/**
 * Extra length that the outer of two unbonded leaves needs round a bend (stepped, "bookbinder" lengths).
 *
 * Model    exact for concentric arcs: extra = pitch x angle, whatever the radius. The rule of thumb of 1.5 x pitch
 *          equals it at 86 degrees only; at 180 degrees it is less than half of what is needed.
 * @param axisPitchUm  distance between the neutral axes of both leaves, >= 0
 * @param angleDeg     > 0
 * @returns mm, exact and by the rule of thumb
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic, rule SOURCES.lengthRuleOfThumb; check values in test/standards/bending
 */
export function computeLeafLengthDifference(
  axisPitchUm: number,
  angleDeg: number,
): { exactMm: number; ruleOfThumbMm: number } {
  requireNumber('axisPitchUm', axisPitchUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
  return {
    exactMm: (requireAngle(angleDeg) * RAD_PER_DEG * axisPitchUm) / 1000,
    ruleOfThumbMm: (1.5 * axisPitchUm) / 1000,
  }
}

function requireAngle(angleDeg: number): number {
  return requireNumber('angleDeg', angleDeg, { above: 0, atMost: MAX_ANGLE_DEG, unit: 'degrees' })
}
