import type { ItemExample } from '../item-example'
import { bendCoverExamples } from './bend-cover'
import { bendStrainExamples } from './bend-strain'
import { bendUseExamples } from './bend-use'
import { cladAdhesiveExamples } from './clad-adhesive'
import { conductorCurrentExamples } from './conductor-current'
import { conductorLayersInBendExamples } from './conductor-layers-in-bend'
import { contactFinishExamples } from './contact-finish'
import { copperEncapsulationExamples } from './copper-encapsulation'
import { copperYieldExamples } from './copper-yield'
import { coverlayAdhesiveExamples } from './coverlay-adhesive'
import { damageSumExamples } from './damage-sum'
import { fatigueLifeExamples } from './fatigue-life'
import { filmStrainExamples } from './film-strain'
import { fingerThicknessExamples } from './finger-thickness'
import { finishedCopperExamples } from './finished-copper'
import { flexibleAdhesiveClassThreeExamples, flexibleAdhesiveInRigidExamples } from './flexible-adhesive-in-rigid'
import { floorLifeExamples } from './floor-life'
import { foilTypeExamples } from './foil-type'
import { foilWeightExamples } from './foil-weight'
import { handlingCountExamples } from './handling-count'
import { holeLifeExamples } from './hole-life'
import { impedanceGivenExamples } from './impedance-given'
import { impedanceValueExamples } from './impedance-value'
import { leafPullExamples } from './leaf-pull'
import { lineCrosstalkExamples } from './line-crosstalk'
import { neutralAxisExamples } from './neutral-axis'
import { operatingTemperatureExamples } from './operating-temperature'
import { outerCoverExamples } from './outer-cover'
import { platingInBendExamples } from './plating-in-bend'
import { radiusRulesExamples } from './radius-rules'
import { returnPathExamples } from './return-path'
import { rollingDirectionExamples, rollingDirectionMovingExamples } from './rolling-direction'
import { sheetBondsExamples } from './sheet-bonds'
import { shieldGroundExamples } from './shield-ground'
import { shieldStiffnessExamples } from './shield-stiffness'
import { solderHeatExamples } from './solder-heat'
import { solderMaskInBendExamples } from './solder-mask-in-bend'
import { stackSymmetryExamples } from './stack-symmetry'
import { statedThicknessExamples } from './stated-thickness'
import { surfaceFinishExamples } from './surface-finish'
import { thermalCurlExamples } from './thermal-curl'
import { fittedThicknessExamples, thicknessToleranceExamples } from './thickness-tolerance'
import { unbondedLeavesExamples } from './unbonded-leaves'
import { voltageDropExamples } from './voltage-drop'
import { zoneJointsExamples } from './zone-joints'

/** By the item's id. */
export const MATERIALS_EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  'bend-cover': bendCoverExamples,
  'bend-strain': bendStrainExamples,
  'bend-use': bendUseExamples,
  'clad-adhesive': cladAdhesiveExamples,
  'conductor-current': conductorCurrentExamples,
  'conductor-layers-in-bend': conductorLayersInBendExamples,
  'copper-encapsulation': copperEncapsulationExamples,
  'copper-yield': copperYieldExamples,
  'film-strain': filmStrainExamples,
  'coverlay-adhesive': coverlayAdhesiveExamples,
  'damage-sum': damageSumExamples,
  'fatigue-life': fatigueLifeExamples,
  'finger-thickness': fingerThicknessExamples,
  'finished-copper': finishedCopperExamples,
  'flexible-adhesive-in-rigid': flexibleAdhesiveInRigidExamples,
  'flexible-adhesive-in-rigid-class-three': flexibleAdhesiveClassThreeExamples,
  'foil-type': foilTypeExamples,
  'foil-weight': foilWeightExamples,
  'leaf-pull': leafPullExamples,
  'neutral-axis': neutralAxisExamples,
  'operating-temperature': operatingTemperatureExamples,
  'plating-in-bend': platingInBendExamples,
  'radius-rules': radiusRulesExamples,
  'rolling-direction': rollingDirectionExamples,
  'rolling-direction-moving': rollingDirectionMovingExamples,
  'shield-stiffness': shieldStiffnessExamples,
  'solder-mask-in-bend': solderMaskInBendExamples,
  'stack-symmetry': stackSymmetryExamples,
  'thermal-curl': thermalCurlExamples,
  'stated-thickness': statedThicknessExamples,
  'surface-finish': surfaceFinishExamples,
  'thickness-tolerance': thicknessToleranceExamples,
  'fitted-thickness': fittedThicknessExamples,
  'unbonded-leaves': unbondedLeavesExamples,
  'voltage-drop': voltageDropExamples,
  'hole-life': holeLifeExamples,
  'contact-finish': contactFinishExamples,
  'impedance-given': impedanceGivenExamples,
  'impedance-value': impedanceValueExamples,
  'line-crosstalk': lineCrosstalkExamples,
  'return-path': returnPathExamples,
  'solder-heat': solderHeatExamples,
  'handling-count': handlingCountExamples,
  'floor-life': floorLifeExamples,
  'sheet-bonds': sheetBondsExamples,
  'zone-joints': zoneJointsExamples,
  'outer-cover': outerCoverExamples,
  'shield-ground': shieldGroundExamples,
}
