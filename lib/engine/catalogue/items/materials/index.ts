import type { ItemDefinition } from '../../define-item'
import { bendCover } from './bend-cover'
import { bendStrain } from './bend-strain'
import { bendUse } from './bend-use'
import { cladAdhesive } from './clad-adhesive'
import { conductorCurrent } from './conductor-current'
import { conductorLayersInBend } from './conductor-layers-in-bend'
import { contactFinish } from './contact-finish'
import { copperEncapsulation } from './copper-encapsulation'
import { copperYield } from './copper-yield'
import { coverlayAdhesive } from './coverlay-adhesive'
import { damageSum } from './damage-sum'
import { fatigueLife } from './fatigue-life'
import { filmStrain } from './film-strain'
import { fingerThickness } from './finger-thickness'
import { finishedCopper } from './finished-copper'
import { flexibleAdhesiveClassThree, flexibleAdhesiveInRigid } from './flexible-adhesive-in-rigid'
import { floorLife } from './floor-life'
import { foilType } from './foil-type'
import { foilWeight } from './foil-weight'
import { handlingCount } from './handling-count'
import { holeLife } from './hole-life'
import { impedanceGiven } from './impedance-given'
import { impedanceValue } from './impedance-value'
import { leafPull } from './leaf-pull'
import { lineCrosstalk } from './line-crosstalk'
import { neutralAxis } from './neutral-axis'
import { operatingTemperature } from './operating-temperature'
import { outerCover } from './outer-cover'
import { platingInBend } from './plating-in-bend'
import { radiusRules } from './radius-rules'
import { returnPath } from './return-path'
import { rollingDirection, rollingDirectionMoving } from './rolling-direction'
import { sheetBonds } from './sheet-bonds'
import { shieldGround } from './shield-ground'
import { shieldStiffness } from './shield-stiffness'
import { solderHeat } from './solder-heat'
import { solderMaskInBend } from './solder-mask-in-bend'
import { stackSymmetry } from './stack-symmetry'
import { statedThickness } from './stated-thickness'
import { surfaceFinish } from './surface-finish'
import { thermalCurl } from './thermal-curl'
import { fittedThickness, thicknessTolerance } from './thickness-tolerance'
import { unbondedLeaves } from './unbonded-leaves'
import { voltageDrop } from './voltage-drop'
import { zoneJoints } from './zone-joints'

/** Materials: what the circuit is made of and what that does in a bend. */
export const MATERIALS_ITEMS: readonly ItemDefinition[] = [
  bendUse,
  foilType,
  foilWeight,
  conductorCurrent,
  voltageDrop,
  platingInBend,
  bendCover,
  outerCover,
  thicknessTolerance,
  fittedThickness,
  statedThickness,
  fingerThickness,
  finishedCopper,
  bendStrain,
  copperYield,
  filmStrain,
  leafPull,
  radiusRules,
  fatigueLife,
  damageSum,
  neutralAxis,
  conductorLayersInBend,
  cladAdhesive,
  sheetBonds,
  zoneJoints,
  copperEncapsulation,
  coverlayAdhesive,
  flexibleAdhesiveInRigid,
  flexibleAdhesiveClassThree,
  stackSymmetry,
  thermalCurl,
  solderMaskInBend,
  surfaceFinish,
  unbondedLeaves,
  operatingTemperature,
  shieldStiffness,
  rollingDirection,
  rollingDirectionMoving,
  holeLife,
  contactFinish,
  impedanceGiven,
  impedanceValue,
  lineCrosstalk,
  returnPath,
  solderHeat,
  handlingCount,
  floorLife,
  shieldGround,
]
