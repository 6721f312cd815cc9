import type { ItemExample } from '../item-example'
import { annularRingExamples } from './annular-ring'
import { beadExamples } from './bead'
import { bendFitExamples } from './bend-fit'
import { bendToRigidExamples } from './bend-to-rigid'
import { combinedMotionExamples } from './combined-motion'
import { componentSupportExamples } from './component-support'
import { componentToBendExamples } from './component-to-bend'
import { componentToTransitionExamples } from './component-to-transition'
import { conductorCornersExamples } from './conductor-corners'
import { conductorSpaceExamples } from './conductor-space'
import { conductorSpacingExamples } from './conductor-spacing'
import { conductorWidthExamples } from './conductor-width'
import { contactGeometryExamples } from './contact-geometry'
import { contactStrainExamples } from './contact-strain'
import { copperToOutlineExamples } from './copper-to-outline'
import { cornerRadiusExamples } from './corner-radius'
import { coverlayCaptureExamples } from './coverlay-capture'
import { coverlayEdgeInBendExamples } from './coverlay-edge-in-bend'
import { coverlayOpeningExamples } from './coverlay-opening'
import { coverlayWebExamples } from './coverlay-web'
import { crossingAngleExamples } from './crossing-angle'
import { directionChangeInBendExamples } from './direction-change-in-bend'
import { enclosureFitExamples } from './enclosure-fit'
import { fingerSupportExamples } from './finger-support'
import { flexLengthExamples } from './flex-length'
import { foldModelExamples } from './fold-model'
import { formingExamples } from './forming'
import { freeLengthExamples } from './free-length'
import { holeAspectExamples } from './hole-aspect'
import { holePlatingExamples } from './hole-plating'
import { holeToBendExamples } from './hole-to-bend'
import { holeToStiffenerEdgeExamples } from './hole-to-stiffener-edge'
import { holeToTransitionExamples } from './hole-to-transition'
import { holesInFlexExamples } from './holes-in-flex'
import { layerStaggerExamples } from './layer-stagger'
import { leafLengthExamples } from './leaf-length'
import { openLandExamples } from './open-land'
import { openingToBendExamples } from './opening-to-bend'
import { padAnchorsExamples } from './pad-anchors'
import { planeInBendExamples } from './plane-in-bend'
import { radiusHolderExamples } from './radius-holder'
import { slitEndReliefExamples } from './slit-end-relief'
import { stiffenerHolesExamples } from './stiffener-holes'
import { stiffenerOverlapExamples } from './stiffener-overlap'
import { stiffenerToBendExamples } from './stiffener-to-bend'
import { tearStopExamples } from './tear-stop'
import { teardropExamples } from './teardrop'
import { tightBendCutOutsExamples } from './tight-bend-cut-outs'
import { transitionReliefExamples } from './transition-relief'
import { hazardousVoltageSpaceExamples, voltageSpaceExamples } from './voltage-space'
import { wearExamples } from './wear'
import { widthChangeInBendExamples } from './width-change-in-bend'
import { widthStepExamples } from './width-step'

/** By the item's id. */
export const GEOMETRY_EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  'annular-ring': annularRingExamples,
  'bend-fit': bendFitExamples,
  'bend-to-rigid': bendToRigidExamples,
  'component-support': componentSupportExamples,
  'component-to-bend': componentToBendExamples,
  'component-to-transition': componentToTransitionExamples,
  'conductor-corners': conductorCornersExamples,
  'conductor-space': conductorSpaceExamples,
  'conductor-spacing': conductorSpacingExamples,
  'conductor-width': conductorWidthExamples,
  'copper-to-outline': copperToOutlineExamples,
  'corner-radius': cornerRadiusExamples,
  'coverlay-capture': coverlayCaptureExamples,
  'coverlay-edge-in-bend': coverlayEdgeInBendExamples,
  'coverlay-opening': coverlayOpeningExamples,
  'coverlay-web': coverlayWebExamples,
  'crossing-angle': crossingAngleExamples,
  'direction-change-in-bend': directionChangeInBendExamples,
  'finger-support': fingerSupportExamples,
  'fold-model': foldModelExamples,
  'flex-length': flexLengthExamples,
  'hole-aspect': holeAspectExamples,
  'hole-plating': holePlatingExamples,
  'hole-to-bend': holeToBendExamples,
  'hole-to-transition': holeToTransitionExamples,
  'layer-stagger': layerStaggerExamples,
  'leaf-length': leafLengthExamples,
  'opening-to-bend': openingToBendExamples,
  'pad-anchors': padAnchorsExamples,
  'plane-in-bend': planeInBendExamples,
  'radius-holder': radiusHolderExamples,
  'slit-end-relief': slitEndReliefExamples,
  'stiffener-overlap': stiffenerOverlapExamples,
  'stiffener-to-bend': stiffenerToBendExamples,
  'tear-stop': tearStopExamples,
  teardrop: teardropExamples,
  'tight-bend-cut-outs': tightBendCutOutsExamples,
  'transition-relief': transitionReliefExamples,
  'width-change-in-bend': widthChangeInBendExamples,
  'width-step': widthStepExamples,
  'voltage-space': voltageSpaceExamples,
  'hazardous-voltage-space': hazardousVoltageSpaceExamples,
  'contact-geometry': contactGeometryExamples,
  'contact-strain': contactStrainExamples,
  forming: formingExamples,
  'free-length': freeLengthExamples,
  'combined-motion': combinedMotionExamples,
  'enclosure-fit': enclosureFitExamples,
  wear: wearExamples,
  'holes-in-flex': holesInFlexExamples,
  'hole-to-stiffener-edge': holeToStiffenerEdgeExamples,
  'stiffener-holes': stiffenerHolesExamples,
  'open-land': openLandExamples,
  bead: beadExamples,
}
