import { REMEDY_FAMILIES, type RemedyFamily } from '../remedy'
import type { Family } from '../subject'
import { cutOuts, largerRadius } from './bend-shape'
import { adhesivelessClad } from './clad'
import { oneLayerInBend, oppositeCopperRemoved, planePattern } from './copper-in-bend'
import { coverlayAdhesive, coverlayFilm, coverlayLeftOff } from './cover'
import { lighterFoil, padsOnlyPlating, rolledAnnealedFoil } from './foil'
import { unbondedLeaves } from './leaves'

const FAMILIES: Readonly<Record<RemedyFamily, Family>> = {
  'one-layer-in-bend': oneLayerInBend,
  'opposite-copper-removed': oppositeCopperRemoved,
  'unbonded-leaves': unbondedLeaves,
  'plane-pattern': planePattern,
  'rolled-annealed-foil': rolledAnnealedFoil,
  'pads-only-plating': padsOnlyPlating,
  'lighter-foil': lighterFoil,
  'adhesiveless-clad': adhesivelessClad,
  'coverlay-film': coverlayFilm,
  'coverlay-adhesive': coverlayAdhesive,
  'coverlay-left-off': coverlayLeftOff,
  'cut-outs': cutOuts,
  'larger-radius': largerRadius,
}

/** Families in the order of application, each with its rank. */
export const RANKED_FAMILIES: readonly { readonly rank: number; readonly propose: Family }[] = REMEDY_FAMILIES.map(
  (family, rank) => ({ rank, propose: FAMILIES[family] }),
)
