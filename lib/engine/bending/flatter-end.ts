import { requireNumber } from '../numerics'

/** Where a motion begins that does not begin flat: by its inside radius, or by its share of the angle over the same length. */
export type FlatterEnd = { readonly insideRadiusMm: number } | { readonly angleShare: number }

/** As for the inside radius of a bend: past a kilometre it is flat for every purpose here. */
const MAX_RADIUS_MM = 1e6
const UM_PER_MM = 1000

/**
 * Inside radius to which a section would be bent from flat for the strain range of a bend between two states.
 *
 * Model    the curvature changes by 1/(R + y) - 1/(R_from + y), y the depth that keeps its length; a bend from flat changes it by
 *          1/(R_eq + y), so that R_eq + y is the inverse of the difference. By angles over one length the curvature at the flatter end is the
 *          share angle_from / angle of that at the tighter one: R_eq + y = (R + y) / (1 - share).
 * Holds    one length of the part in both states. Which depth keeps its length hangs on yield: over 0 to t it moves R_eq by 2 t / R_from.
 * @param insideRadiusMm  of the tighter end, >= 0
 * @param axisUm          y from the inside face, >= 0
 * @returns mm, at most a kilometre; null where the other end is as tight or tighter, so that it is no flatter end
 * @throws  RangeError naming the argument
 * Source   SOURCES.exactArithmetic (geometry)
 */
export function equivalentRadiusMm(insideRadiusMm: number, axisUm: number, from: FlatterEnd): number | null {
  requireNumber('insideRadiusMm', insideRadiusMm, { atLeast: 0, atMost: MAX_RADIUS_MM, unit: 'mm' })
  requireNumber('axisUm', axisUm, { atLeast: 0, atMost: 1e6, unit: 'um' })
  const axisMm = axisUm / UM_PER_MM
  const share = curvatureShare(insideRadiusMm + axisMm, axisMm, from)
  if (share >= 1) return null
  // Written so that a share of 0 gives the radius itself, to the last digit.
  return Math.min(MAX_RADIUS_MM, insideRadiusMm + ((insideRadiusMm + axisMm) * share) / (1 - share))
}

/**
 * The other way round: inside radius of the tighter end for an equivalent radius.
 *
 * @param equivalentMm  >= 0
 * @returns mm, not below 0
 */
export function tighterRadiusMm(equivalentMm: number, axisUm: number, from: FlatterEnd): number {
  const axisMm = requireNumber('axisUm', axisUm, { atLeast: 0, atMost: 1e6, unit: 'um' }) / UM_PER_MM
  const radiusMm =
    requireNumber('equivalentMm', equivalentMm, { atLeast: 0, atMost: MAX_RADIUS_MM, unit: 'mm' }) + axisMm
  const tighterMm =
    'angleShare' in from ? radiusMm * (1 - from.angleShare) : 1 / (1 / radiusMm + 1 / (from.insideRadiusMm + axisMm))
  return Math.max(0, tighterMm - axisMm)
}

/** Inside radius of the flatter end; null where it is flat. */
export function flatterRadiusMm(insideRadiusMm: number, axisUm: number, from: FlatterEnd): number | null {
  if ('insideRadiusMm' in from) return from.insideRadiusMm
  const axisMm = axisUm / UM_PER_MM
  return from.angleShare === 0 ? null : (insideRadiusMm + axisMm) / from.angleShare - axisMm
}

function curvatureShare(axisRadiusMm: number, axisMm: number, from: FlatterEnd): number {
  return 'angleShare' in from
    ? requireNumber('angleShare', from.angleShare, { atLeast: 0, atMost: 1e6 })
    : axisRadiusMm / (requireNumber('from.insideRadiusMm', from.insideRadiusMm, { atLeast: 0 }) + axisMm)
}
