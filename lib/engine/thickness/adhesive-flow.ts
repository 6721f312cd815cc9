import { requireNumber } from '../numerics'

/** Foil and plating with their tolerances at the most that a design document lets through; more is a slip of the unit. */
const MAX_LAYER_UM = 40_000

export interface AdhesiveFlow {
  /** Adhesive spent in the gaps between conductors, as a thickness spread over the whole area. */
  gapFillUm: number
  /** Adhesive that remains above the conductors; 0 when the gaps take all of it. */
  overConductorUm: number
  /** Conductor layer and the adhesive above it together, measured over a conductor. */
  laminatedThicknessUm: number
  /** Share of the gap volume that the adhesive fills; below 1 there are voids. */
  gapFilledFraction: number
  /** overConductorUm less what is required there; negative when the copper is not encapsulated. */
  encapsulationMarginUm: number
  encapsulates: boolean
}

/**
 * Adhesive after lamination over a layer of conductors, from conservation of volume.
 *
 * Model    gaps take (1 - f) t_c per area; what is left, t_a (1 - s) - (1 - f) t_c, stands above the conductors
 * Holds    adhesive flows freely within the area that coverage f was taken over, and leaves it only by the squeeze-out
 *          s. A broad plane beside a broad gap levels less well: take f locally there.
 * @param adhesiveThicknessUm      > 0, before lamination
 * @param conductorThicknessUm     > 0, finished copper that faces the adhesive
 * @param coverageFraction         0 to 1, area share of copper
 * @param requiredOverConductorUm  >= 0, least adhesive wanted above the conductors
 * @param squeezeOutFraction       0 to below 1, adhesive lost at edges and openings; 0 when not known
 * @throws  RangeError if an argument breaks those ranges
 * Source   SOURCES.exactArithmetic; check values in test/standards/copper
 * @example 25 um over 35 um copper at half coverage leaves 7.5 um
 */
export function computeAdhesiveFlow({
  adhesiveThicknessUm,
  conductorThicknessUm,
  coverageFraction,
  requiredOverConductorUm,
  squeezeOutFraction = 0,
}: {
  adhesiveThicknessUm: number
  conductorThicknessUm: number
  coverageFraction: number
  requiredOverConductorUm: number
  squeezeOutFraction?: number
}): AdhesiveFlow {
  requireNumber('adhesiveThicknessUm', adhesiveThicknessUm, { above: 0, atMost: MAX_LAYER_UM, unit: 'um' })
  requireNumber('conductorThicknessUm', conductorThicknessUm, { above: 0, atMost: MAX_LAYER_UM, unit: 'um' })
  requireNumber('coverageFraction', coverageFraction, { atLeast: 0, atMost: 1 })
  requireNumber('requiredOverConductorUm', requiredOverConductorUm, { atLeast: 0, atMost: MAX_LAYER_UM, unit: 'um' })
  requireNumber('squeezeOutFraction', squeezeOutFraction, { atLeast: 0, below: 1 })

  const availableUm = adhesiveThicknessUm * (1 - squeezeOutFraction)
  const gapUm = (1 - coverageFraction) * conductorThicknessUm
  const gapFillUm = Math.min(availableUm, gapUm)
  const overConductorUm = availableUm - gapFillUm
  // With starved gaps the film sinks no lower than the conductors: the margin counts what is missing as negative.
  const encapsulationMarginUm = availableUm - gapUm - requiredOverConductorUm
  return {
    gapFillUm,
    overConductorUm,
    laminatedThicknessUm: conductorThicknessUm + overConductorUm,
    gapFilledFraction: gapUm === 0 ? 1 : gapFillUm / gapUm,
    encapsulationMarginUm,
    encapsulates: encapsulationMarginUm >= 0,
  }
}
