import { REMEDY_FAMILIES, type RemedyFamily } from '../remedy'
import type { Family } from '../subject'
import { adhesiveKind } from './adhesive'
import { baseFilm } from './base-film'
import { cutOuts } from './bend-shape'
import { adhesivelessClad } from './clad'
import { oneLayerInBend, oppositeCopperRemoved, planePattern } from './copper-in-bend'
import { coverlayAdhesive, coverlayFilm, coverlayLeftOff } from './cover'
import { lighterFoil, padsOnlyPlating, rolledAnnealedFoil } from './foil'
import { largerRadius } from './larger-radius'
import { unbondedLeaves } from './leaves'
import { lessPull, lessTwist, longerTwist } from './loads'
import { longerZone } from './longer-zone'
import { splitBend } from './split-bend'
import { radiusTolerance, sheetTolerance } from './tolerances'
import { narrowerConductors, widerZone } from './width'

const FAMILIES: Readonly<Record<RemedyFamily, Family>> = {
  'wider-zone': widerZone,
  'one-layer-in-bend': oneLayerInBend,
  'opposite-copper-removed': oppositeCopperRemoved,
  'unbonded-leaves': unbondedLeaves,
  'plane-pattern': planePattern,
  'rolled-annealed-foil': rolledAnnealedFoil,
  'pads-only-plating': padsOnlyPlating,
  'lighter-foil': lighterFoil,
  'narrower-conductors': narrowerConductors,
  'adhesiveless-clad': adhesivelessClad,
  'base-film': baseFilm,
  'coverlay-film': coverlayFilm,
  'coverlay-adhesive': coverlayAdhesive,
  'coverlay-left-off': coverlayLeftOff,
  'adhesive-kind': adhesiveKind,
  'sheet-tolerance': sheetTolerance,
  'radius-tolerance': radiusTolerance,
  'less-pull': lessPull,
  'less-twist': lessTwist,
  'longer-twist': longerTwist,
  'cut-outs': cutOuts,
  'larger-radius': largerRadius,
  'longer-zone': longerZone,
  'split-bend': splitBend,
}

/** Families in the order of application, each with its rank. */
export const RANKED_FAMILIES: readonly {
  readonly family: RemedyFamily
  readonly rank: number
  readonly propose: Family
}[] = REMEDY_FAMILIES.map((family, rank) => ({ family, rank, propose: FAMILIES[family] }))
