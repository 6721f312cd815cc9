import type { ItemExample } from '../item-example'
import { annularRingExamples } from './annular-ring'
import { beadBesideMovingBendExamples, beadExamples } from './bead'
import { bendFitExamples } from './bend-fit'
import { combinedMotionExamples } from './combined-motion'
import { componentSupportExamples } from './component-support'
import { componentToBendExamples } from './component-to-bend'
import { conductorCornersExamples } from './conductor-corners'
import { conductorSpaceExamples } from './conductor-space'
import { conductorSpacingExamples } from './conductor-spacing'
import { conductorWidthExamples } from './conductor-width'
import { contactGeometryExamples } from './contact-geometry'
import { contactStrainExamples } from './contact-strain'
import { copperToOutlineExamples } from './copper-to-outline'
import { cornerRadiusExamples } from './corner-radius'
import { coverlayEdgeInBendExamples } from './coverlay-edge-in-bend'
import { coverlayOpeningExamples } from './coverlay-opening'
import { coverlayWebExamples } from './coverlay-web'
import { crossingAngleExamples } from './crossing-angle'
import { directionChangeInBendExamples } from './direction-change-in-bend'
import { enclosureFitExamples } from './enclosure-fit'
import { endsInBendExamples } from './ends-in-bend'
import { etchTrapsExamples } from './etch-traps'
import { fingerSupportExamples } from './finger-support'
import { flexLengthExamples } from './flex-length'
import { foldModelExamples, foldOrderModelExamples } from './fold-model'
import { foldedClearanceExamples } from './folded-clearance'
import { connectorTargetsExamples, foldedEnvelopeExamples } from './folded-fit'
import { formingExamples } from './forming'
import { freeLengthExamples } from './free-length'
import { holeAspectExamples } from './hole-aspect'
import { holePlatingExamples } from './hole-plating'
import { holeToBendExamples } from './hole-to-bend'
import { holeToStiffenerEdgeExamples } from './hole-to-stiffener-edge'
import { holesInFlexExamples } from './holes-in-flex'
import { landHoldExamples } from './land-hold'
import { layerStaggerExamples } from './layer-stagger'
import { leafLengthExamples } from './leaf-length'
import { openLandExamples } from './open-land'
import { openingToBendExamples } from './opening-to-bend'
import { planAgreementExamples } from './plan-agreement'
import { planeInBendExamples, planeInFoldExamples } from './plane-in-bend'
import { radiusHolderExamples } from './radius-holder'
import { slitEndReliefExamples } from './slit-end-relief'
import { stiffenerHolesExamples } from './stiffener-holes'
import { stiffenerOverlapExamples } from './stiffener-overlap'
import { straightFilmExamples } from './straight-film'
import { tearStopExamples } from './tear-stop'
import { teardropExamples } from './teardrop'
import { transitionReliefExamples } from './transition-relief'
import { transitionStripClassThreeExamples, transitionStripExamples } from './transition-strip'
import { hazardousVoltageSpaceExamples, voltageSpaceExamples } from './voltage-space'
import { wearExamples } from './wear'
import { widthChangeInBendExamples } from './width-change-in-bend'
import { widthStepExamples } from './width-step'

/** By the item's id. */
export const GEOMETRY_EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  'annular-ring': annularRingExamples,
  'bend-fit': bendFitExamples,
  'component-support': componentSupportExamples,
  'component-to-bend': componentToBendExamples,
  'conductor-corners': conductorCornersExamples,
  'conductor-space': conductorSpaceExamples,
  'conductor-spacing': conductorSpacingExamples,
  'conductor-width': conductorWidthExamples,
  'copper-to-outline': copperToOutlineExamples,
  'corner-radius': cornerRadiusExamples,
  'coverlay-edge-in-bend': coverlayEdgeInBendExamples,
  'coverlay-opening': coverlayOpeningExamples,
  'coverlay-web': coverlayWebExamples,
  'crossing-angle': crossingAngleExamples,
  'direction-change-in-bend': directionChangeInBendExamples,
  'ends-in-bend': endsInBendExamples,
  'etch-traps': etchTrapsExamples,
  'finger-support': fingerSupportExamples,
  'fold-model': foldModelExamples,
  'fold-order-model': foldOrderModelExamples,
  'flex-length': flexLengthExamples,
  'folded-clearance': foldedClearanceExamples,
  'folded-envelope': foldedEnvelopeExamples,
  'connector-targets': connectorTargetsExamples,
  'hole-aspect': holeAspectExamples,
  'hole-plating': holePlatingExamples,
  'hole-to-bend': holeToBendExamples,
  'layer-stagger': layerStaggerExamples,
  'leaf-length': leafLengthExamples,
  'opening-to-bend': openingToBendExamples,
  'land-hold': landHoldExamples,
  'plan-agreement': planAgreementExamples,
  'plane-in-bend': planeInBendExamples,
  'plane-in-fold': planeInFoldExamples,
  'radius-holder': radiusHolderExamples,
  'slit-end-relief': slitEndReliefExamples,
  'stiffener-overlap': stiffenerOverlapExamples,
  'tear-stop': tearStopExamples,
  teardrop: teardropExamples,
  'transition-relief': transitionReliefExamples,
  'straight-film': straightFilmExamples,
  'transition-strip': transitionStripExamples,
  'transition-strip-class-three': transitionStripClassThreeExamples,
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
  'bead-beside-moving-bend': beadBesideMovingBendExamples,
}
