import type { LayerConstant } from '../bending'
import type { Bend } from '../design'
import { readEnds } from '../materials'
import type { SurvivalDemand } from './bend-allowables'
import type { BendSection, ConductorInBend } from './bend-section'
import { chooseSubject } from './swing-subject'

/** Constants that a verdict hangs on in practice: not Poisson's ratio, nor the share of copper. */
export type HangingConstant =
  | Exclude<LayerConstant, 'poisson' | 'coverageFraction'>
  | 'tensileStrengthMpa'
  | 'fatigueDuctility'

export interface DecidingConstant {
  readonly layerId: string
  readonly layerName: string
  readonly quantity: HangingConstant
  readonly low: number
  readonly high: number
  /** Strain over allowable as the bend has it, and with the constant alone at its worse end. */
  readonly nominalShare: number
  readonly worstShare: number
}

/**
 * The constant that takes a bend nearest to, or farthest past, its allowable when it alone goes to its worse end; null where no constant
 * has a spread or nothing is allowed. Asked of every bend that is evaluated, so that no life is worked out: allowable strain says the same.
 */
export function findDecidingConstant(
  bend: Bend,
  section: BendSection,
  conductor: ConductorInBend,
  demand: SurvivalDemand,
): DecidingConstant | null {
  const subject = chooseSubject(bend, section, conductor, demand)
  const { layers, names, radiusMm, foil, strainPctAt, allowedPct } = subject
  const nominalPct = strainPctAt(null, radiusMm)
  const nominalAllowedPct = allowedPct(foil)
  if (nominalAllowedPct === null) return null
  const nominalShare = nominalPct / nominalAllowedPct
  let deciding: DecidingConstant | null = null
  const consider = (
    layerId: string,
    quantity: HangingConstant,
    { low, high }: { readonly low: number; readonly high: number },
    shareAt: (value: number) => number,
  ): void => {
    if (!(low < high)) return
    const worstShare = Math.max(shareAt(low), shareAt(high))
    if (deciding !== null && worstShare <= deciding.worstShare) return
    deciding = { layerId, layerName: names.get(layerId) ?? layerId, quantity, low, high, nominalShare, worstShare }
  }
  for (const [layerIndex, layer] of layers.entries()) {
    for (const spread of layer.spreads ?? []) {
      const { constant: quantity } = spread
      if (quantity === 'poisson' || quantity === 'coverageFraction') continue
      // The modulus of the copper that decides is in its strength over modulus too.
      const isOwnModulus = quantity === 'modulusGpa' && layer.id === subject.conductor.bendLayerId
      consider(
        layer.id,
        quantity,
        spread,
        (value) =>
          strainPctAt({ layerIndex, quantity, value }, radiusMm) /
          (isOwnModulus ? (allowedPct({ ...foil, modulusGpa: value }) ?? 1) : nominalAllowedPct),
      )
    }
  }
  if (bend.use === 'dynamic') {
    for (const quantity of ['tensileStrengthMpa', 'fatigueDuctility'] as const) {
      consider(
        subject.conductor.bendLayerId,
        quantity,
        readEnds(quantity, subject.conductor.foil[quantity]),
        (value) => nominalPct / (allowedPct({ ...foil, [quantity]: value }) ?? 1),
      )
    }
  }
  return deciding
}
