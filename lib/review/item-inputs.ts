import type { Brief } from '@/lib/engine'
import type { DesignChange } from './compare-designs'

/**
 * What each item of the catalogue rests on: the inputs whose change makes an earlier answer worth another look.
 *
 * A pattern names a part of the design document by keys; `*` stands for the id of any entry of a list, and a pattern
 * covers everything below it. Names and notes count only where a pattern ends in them: a bend that is renamed bends as
 * before. `artwork` is the set of artwork files.
 */
type InputPattern = string

const LAYERS = 'construction.layers'
const ZONES = 'construction.zones'
const LAYER_MATERIALS = `${LAYERS}.*.materialId`
/** Everything that a section through the part is made of. */
const SECTIONS = [LAYERS, ZONES, 'materials'] as const
/** Where bends lie and what they do. */
const BENDS = 'bends'
const BEND_PLACES = [`${BENDS}.*.zoneId`, `${BENDS}.*.insideRadiusMm`, `${BENDS}.*.angleDeg`] as const
const TEMPERATURES = ['brief.operatingMinDegC', 'brief.operatingMaxDegC'] as const
const CONDUCTORS = 'features.conductors'
const CROSSINGS = `${CONDUCTORS}.*.crossings`
const routing = (field: string) => `features.routing.${field}`

/** Items by their ids. A test compares the keys with the catalogue. */
const INPUTS: Readonly<Record<string, readonly InputPattern[]>> = {
  'bend-use': [`${BENDS}.*.use`, `${BENDS}.*.motion`, 'brief.installationUse'],
  'foil-type': [LAYER_MATERIALS, ZONES, 'materials', `${BENDS}.*.use`, `${BENDS}.*.zoneId`],
  'foil-weight': [LAYERS, CONDUCTORS],
  'conductor-current': [...SECTIONS, CONDUCTORS, ...TEMPERATURES],
  'voltage-drop': [...SECTIONS, CONDUCTORS, ...TEMPERATURES],
  'plating-in-bend': [`${LAYERS}.*.plating`, ZONES, `${BENDS}.*.zoneId`],
  'thickness-tolerance': [...SECTIONS],
  'stated-thickness': [...SECTIONS, 'brief.surfaceFinish'],
  'finger-thickness': [...SECTIONS, 'brief.surfaceFinish'],
  'bend-strain': [...SECTIONS, BENDS],
  'copper-yield': [...SECTIONS, BENDS],
  'film-strain': [...SECTIONS, BENDS],
  'handbook-radius': [...SECTIONS, BENDS],
  'radius-ratio': [...SECTIONS, BENDS, 'brief.ratioTableKey'],
  'fatigue-life': [...SECTIONS, BENDS, 'brief.lifeSurvivalPct', 'brief.lifeWeibullSlope'],
  'damage-sum': [...SECTIONS, BENDS, 'brief.lifeSurvivalPct', 'brief.lifeWeibullSlope'],
  'neutral-axis': [...SECTIONS, BENDS],
  'conductor-layers-in-bend': [LAYERS, ZONES, `${BENDS}.*.zoneId`, `${BENDS}.*.use`],
  'clad-adhesive': [...SECTIONS, `${BENDS}.*.zoneId`, `${BENDS}.*.use`],
  'copper-encapsulation': [...SECTIONS],
  'coverlay-adhesive': [...SECTIONS],
  'solder-mask-in-bend': [LAYERS, ZONES, `${BENDS}.*.zoneId`],
  'surface-finish': ['brief.surfaceFinish', 'brief.solderedAssembly', BENDS, 'features.coverlayOpenings'],
  'unbonded-leaves': [LAYERS, ZONES, `${BENDS}.*.zoneId`],
  'operating-temperature': [...SECTIONS, CONDUCTORS, 'brief.solderedAssembly', ...TEMPERATURES],
  'bake-before-assembly': ['brief.bakeBeforeAssembly', 'brief.solderedAssembly', LAYER_MATERIALS],
  'shield-stiffness': [...SECTIONS, BENDS],
  'rolling-direction': [LAYER_MATERIALS, 'materials', CROSSINGS, ...BEND_PLACES],
  'corner-radius': ['features.outlineCorners'],
  'tear-stop': ['features.outlineCorners'],
  'slit-end-relief': ['features.slits'],
  'tight-bend-cut-outs': [...SECTIONS, BENDS, routing('cutOutsConsideredAtTightBends')],
  'bend-fit': [...SECTIONS, BENDS],
  'crossing-angle': [CROSSINGS],
  'width-change-in-bend': [CROSSINGS],
  'direction-change-in-bend': [CROSSINGS],
  'conductor-corners': [routing('cornersCurved')],
  'conductor-spacing': [routing('evenlySpacedInBends')],
  'width-step': ['features.widthSteps'],
  teardrop: ['features.pads'],
  'layer-stagger': [routing('staggeredOnAdjacentLayers'), LAYERS, ZONES, `${BENDS}.*.zoneId`],
  'plane-in-bend': [LAYERS, ZONES, `${BENDS}.*.zoneId`],
  'conductor-width': [CONDUCTORS, LAYERS],
  'conductor-space': [CONDUCTORS, LAYERS],
  'copper-to-outline': ['features.copperToOutlineMm'],
  'pad-anchors': ['features.pads'],
  'annular-ring': ['features.holes'],
  'hole-plating': ['features.holes', 'brief.performanceClass'],
  'coverlay-capture': ['features.pads'],
  'coverlay-opening': ['features.coverlayOpenings'],
  'coverlay-web': ['features.coverlayOpenings'],
  'opening-to-bend': ['features.coverlayOpenings', BENDS],
  'coverlay-edge-in-bend': [routing('coverlayEdgeInsideBend'), LAYERS, ZONES, `${BENDS}.*.zoneId`],
  'hole-to-bend': ['features.holes', BENDS],
  'hole-to-transition': ['features.holes', `${ZONES}.*.kind`],
  'component-to-bend': ['features.components', BENDS],
  'component-to-transition': ['features.components', `${ZONES}.*.kind`],
  'component-support': ['features.components', 'features.stiffeners'],
  'finger-support': [LAYERS, ZONES],
  'stiffener-to-bend': ['features.stiffeners', BENDS],
  'stiffener-overlap': ['features.stiffeners'],
  'bend-to-rigid': [BENDS],
  'transition-relief': [`${BENDS}.*.strainReliefAtTransition`, `${BENDS}.*.distanceToRigidMm`, `${BENDS}.*.use`],
  'radius-holder': [`${BENDS}.*.radiusHeldBy`, `${BENDS}.*.use`, ...BEND_PLACES],
  'fold-model': [`${BENDS}.*.triedOnModel`, ...BEND_PLACES],
  'leaf-length': [...SECTIONS, BENDS],
  'capability-match': [
    ...SECTIONS,
    BENDS,
    'features',
    'brief.surfaceFinish',
    'brief.performanceClass',
    'brief.circuitType',
    'brief.panelForm',
    'brief.operatingMaxDegC',
  ],
  'buildable-construction': [...SECTIONS, BENDS, 'features.holes'],
  'manufacturing-review': ['brief.manufacturingReviewDate', 'brief.layoutFreezeDate'],
  'stock-materials': [
    LAYER_MATERIALS,
    `${LAYERS}.*.thicknessUm`,
    'materials',
    'brief.needDate',
    'brief.quantityPerYear',
  ],
  'material-call-outs': [LAYERS, 'materials'],
  'layer-names': [LAYERS, `${LAYERS}.*.name`, routing('layersNamedOnDrawing')],
  'layer-table': [LAYERS, `${LAYERS}.*.name`, ZONES, routing('layersNamedOnDrawing')],
  'artwork-agreement': ['artwork', LAYERS, `${LAYERS}.*.name`, ZONES],
  'bend-call-out': [BENDS, routing('bendsCalledOutOnDrawing'), ...TEMPERATURES],
  'performance-class': ['brief.performanceClass', 'brief.circuitType', 'brief.installationUse', `${BENDS}.*.use`],
  'circuit-type': ['brief.circuitType', LAYERS, ZONES, 'features.holes'],
  'coverlay-detail': [routing('coverlayDetailOnDrawing'), LAYERS, ZONES],
  'stiffener-detail': ['features.stiffeners', LAYERS],
  'tolerance-scheme': ['brief.toleranceScheme', `${ZONES}.*.kind`],
  'electrical-test': ['brief.electricalTest'],
  'coupon-test': ['brief.couponTest', 'features.holes'],
  'flex-test-terms': [
    `${BENDS}.*.flexTest`,
    `${BENDS}.*.use`,
    `${BENDS}.*.requiredCycles`,
    `${BENDS}.*.insideRadiusMm`,
    `${BENDS}.*.radiusToleranceMm`,
  ],
  'fold-test': ['brief.foldTest', BENDS],
  'panel-form': ['brief.panelForm', 'brief.solderedAssembly'],
  'parts-per-panel': [
    'features.outline',
    `${ZONES}.*.lengthMm`,
    `${ZONES}.*.widthMm`,
    'brief.quantityPerYear',
    'brief.panelForm',
  ],
  'construction-cost': [
    ...SECTIONS,
    'features.holes',
    'features.outline',
    'features.coverlayOpenings',
    'features.stiffeners',
    'brief.quantityPerYear',
  ],
  'registration-features': ['brief.registrationCriticalFeatures', LAYERS, ZONES, 'features'],
  'fabricator-currency': ['brief', 'materials', 'construction', BENDS, 'features', 'artwork'],
  'engineering-queries': [],
  packing: ['brief.packingAndHandling', 'brief.panelForm'],
  'contact-person': ['brief.whoToAsk'],
}

/** Fields of the brief that an item rests on. */
export function listBriefInputs(itemId: string): (keyof Brief)[] {
  return (INPUTS[itemId] ?? []).flatMap((pattern) => {
    const [part, field, ...deeper] = pattern.split('.')
    return part === 'brief' && field !== undefined && deeper.length === 0 ? [field as keyof Brief] : []
  })
}

/** Items whose inputs are declared. */
export const ITEMS_WITH_INPUTS: readonly string[] = Object.keys(INPUTS)

/** Texts that name or annotate a part without saying what it is like. */
const NAMING_FIELDS: readonly string[] = ['name', 'note', 'partNumber', 'revisionLabel', 'purpose']

/**
 * Does a change touch what an item rests on? An item that is not declared here, such as a workspace's own, rests on the
 * whole design: better asked once too often.
 *
 * @param path  as a `DesignChange` has it
 */
export function isInputOf(itemId: string, path: readonly string[]): boolean {
  // That a value was confirmed changes no input: who answered looked at the value.
  if (path[0] === 'assumed') return false
  const patterns = INPUTS[itemId]
  if (patterns === undefined) return true
  const isNaming = path.length > 1 && NAMING_FIELDS.includes(path.at(-1) ?? '')
  return patterns.some((pattern) => {
    const keys = pattern.split('.')
    if (isNaming && keys.at(-1) !== path.at(-1)) return false
    // A part that is added or removed as a whole brings or takes along whatever lies below it.
    return keys.slice(0, path.length).every((key, index) => key === '*' || key === path[index])
  })
}

const ARTWORK_PATH = ['artwork'] as const

/** What differs between two contents, as far as answers rest on it. */
export interface InputChanges {
  readonly design: readonly DesignChange[]
  readonly isArtworkChanged: boolean
}

/** Which inputs of an item changed, in the trade's words. Empty where the item's answer rests on what it rested on. */
export function listChangedInputs(itemId: string, changes: InputChanges): string[] {
  const sentences = changes.design.filter(({ path }) => isInputOf(itemId, path)).map(({ sentence }) => sentence)
  return changes.isArtworkChanged && isInputOf(itemId, ARTWORK_PATH)
    ? [...sentences, 'the artwork files changed']
    : sentences
}
