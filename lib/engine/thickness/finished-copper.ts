import { requireNumber } from '../numerics'

/** The most that a design document lets through for foil or plating; larger input is a slip of the unit. */
const MAX_COPPER_UM = 10_000

export interface FinishedCopper {
  foilThicknessUm: number
  platingThicknessUm: number
  processingLossUm: number
  finishedThicknessUm: number
}

/**
 * Copper that remains on a layer when the circuit is finished.
 *
 * Model    finished = foil + plating - processing loss
 * Holds    plating is that of the zone in question: panel and pattern plating add to every plated layer, pads-only
 *          plating adds nothing to conductors in a bend
 * @param foilThicknessUm     > 0, by weight (foilThicknessUm in units) or as called out
 * @param platingThicknessUm  >= 0
 * @param processingLossUm    >= 0 and less than foil and plating together
 * @returns all terms, so that a report can show where the thickness grew from
 * @throws  RangeError if an argument breaks those ranges
 * Source   SOURCES.exactArithmetic for the sum; SOURCES.commonPractice for which layers are plated
 */
export function computeFinishedCopper({
  foilThicknessUm,
  platingThicknessUm,
  processingLossUm,
}: Omit<FinishedCopper, 'finishedThicknessUm'>): FinishedCopper {
  requireNumber('foilThicknessUm', foilThicknessUm, { above: 0, atMost: MAX_COPPER_UM, unit: 'um' })
  requireNumber('platingThicknessUm', platingThicknessUm, { atLeast: 0, atMost: MAX_COPPER_UM, unit: 'um' })
  requireNumber('processingLossUm', processingLossUm, {
    atLeast: 0,
    below: foilThicknessUm + platingThicknessUm,
    unit: 'um',
  })
  return {
    foilThicknessUm,
    platingThicknessUm,
    processingLossUm,
    finishedThicknessUm: foilThicknessUm + platingThicknessUm - processingLossUm,
  }
}
