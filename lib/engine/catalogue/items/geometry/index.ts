import type { ItemDefinition } from '../../define-item'
import { annularRing } from './annular-ring'
import { bead, beadBesideMovingBend } from './bead'
import { bendFit } from './bend-fit'
import { combinedMotion } from './combined-motion'
import { componentSupport } from './component-support'
import { componentToBend } from './component-to-bend'
import { conductorCorners } from './conductor-corners'
import { conductorSpace } from './conductor-space'
import { conductorSpacing } from './conductor-spacing'
import { conductorWidth } from './conductor-width'
import { connectorTargets } from './connector-targets'
import { contactGeometry } from './contact-geometry'
import { contactStrain } from './contact-strain'
import { copperToOutline } from './copper-to-outline'
import { cornerRadius } from './corner-radius'
import { coverlayEdgeInBend } from './coverlay-edge-in-bend'
import { coverlayOpening } from './coverlay-opening'
import { coverlayWeb } from './coverlay-web'
import { crossingAngle } from './crossing-angle'
import { directionChangeInBend } from './direction-change-in-bend'
import { enclosureFit } from './enclosure-fit'
import { endsInBend } from './ends-in-bend'
import { etchTraps } from './etch-traps'
import { fingerSupport } from './finger-support'
import { flexLength } from './flex-length'
import { foldModel, foldOrderModel } from './fold-model'
import { foldedClearance } from './folded-clearance'
import { foldedEnvelope } from './folded-envelope'
import { forming } from './forming'
import { freeLength } from './free-length'
import { holeAspect } from './hole-aspect'
import { holePlating } from './hole-plating'
import { holeToBend } from './hole-to-bend'
import { holeToStiffenerEdge } from './hole-to-stiffener-edge'
import { holesInFlex } from './holes-in-flex'
import { landHold } from './land-hold'
import { layerStagger } from './layer-stagger'
import { leafLength } from './leaf-length'
import { openLand } from './open-land'
import { openingToBend } from './opening-to-bend'
import { planAgreement } from './plan-agreement'
import { planeInBend, planeInFold } from './plane-in-bend'
import { radiusHolder } from './radius-holder'
import { slitEndRelief } from './slit-end-relief'
import { stiffenerHoles } from './stiffener-holes'
import { stiffenerOverlap } from './stiffener-overlap'
import { straightFilm } from './straight-film'
import { tearStop } from './tear-stop'
import { teardrop } from './teardrop'
import { transitionRelief } from './transition-relief'
import { transitionStrip, transitionStripClassThree } from './transition-strip'
import { hazardousVoltageSpace, voltageSpace } from './voltage-space'
import { wear } from './wear'
import { widthChangeInBend } from './width-change-in-bend'
import { widthStep } from './width-step'

/** Geometry: dimensions in the plane of the part, typed in or measured in the artwork. */
export const GEOMETRY_ITEMS: readonly ItemDefinition[] = [
  cornerRadius,
  tearStop,
  slitEndRelief,
  bendFit,
  crossingAngle,
  widthChangeInBend,
  directionChangeInBend,
  endsInBend,
  conductorCorners,
  conductorSpacing,
  widthStep,
  teardrop,
  layerStagger,
  planAgreement,
  planeInBend,
  planeInFold,
  conductorWidth,
  conductorSpace,
  etchTraps,
  voltageSpace,
  hazardousVoltageSpace,
  copperToOutline,
  landHold,
  annularRing,
  holePlating,
  holeAspect,
  coverlayOpening,
  coverlayWeb,
  openingToBend,
  coverlayEdgeInBend,
  holeToBend,
  transitionStrip,
  transitionStripClassThree,
  componentToBend,
  componentSupport,
  fingerSupport,
  stiffenerOverlap,
  straightFilm,
  flexLength,
  foldedClearance,
  foldedEnvelope,
  connectorTargets,
  transitionRelief,
  radiusHolder,
  foldModel,
  foldOrderModel,
  leafLength,
  contactGeometry,
  contactStrain,
  forming,
  freeLength,
  combinedMotion,
  enclosureFit,
  wear,
  holesInFlex,
  holeToStiffenerEdge,
  stiffenerHoles,
  openLand,
  bead,
  beadBesideMovingBend,
]
