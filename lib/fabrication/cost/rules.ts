import { inSentence } from '@/lib/engine/units'
import {
  FINE_LINE_MM,
  FINEST_LINE_MM,
  HEAVIEST_FOIL_UM,
  HEAVY_FOIL_UM,
  SMALL_DRILL_MM,
  SMALLEST_DRILL_MM,
} from './demands'
import type { ConstructionTraits } from './traits'

/** A step that a construction goes through, how often, and the rule that selected it. */
export interface SelectedStep {
  readonly stepId: string
  /** In the step's own unit: layers, laminations, passes of a panel, openings, or 1 for each part. */
  readonly count: number
  readonly because: string
}

interface Rule {
  readonly stepId: string
  /** The rule in words, true of every construction. */
  readonly says: string
  readonly count: (traits: ConstructionTraits) => number
  /** What it found in this one, where that adds something to the rule. */
  readonly found?: (traits: ConstructionTraits) => string
}

const innerCoverlays = (traits: ConstructionTraits): number => traits.coverlayCount - traits.coverlayOverOuterFlexCount
const byMethod = (method: ConstructionTraits['coverlayMethod']) => (traits: ConstructionTraits) =>
  traits.coverlayMethod === method ? innerCoverlays(traits) : 0
const isDrilled = (traits: ConstructionTraits): boolean => traits.platings.length > 0

const isDrilledBelow = ({ smallestDrillMm }: ConstructionTraits, limitMm: number): boolean =>
  smallestDrillMm !== null && smallestDrillMm < limitMm
const sayFinest = ({ finestMm }: ConstructionTraits): string =>
  finestMm === null ? '' : `The finest of this design is ${inSentence(finestMm, 'mm')}.`
const sayDrill = ({ smallestDrillMm }: ConstructionTraits): string =>
  smallestDrillMm === null ? '' : `The smallest of this design is ${inSentence(smallestDrillMm, 'mm')}.`

/** Which steps a construction needs: common practice of the trade, no published source. */
const RULES: readonly Rule[] = [
  { stepId: 'flex-clad', says: 'One sheet of clad film for each base film.', count: (t) => t.baseFilmCount },
  { stepId: 'coverlay-film', says: 'One sheet for each coverlay.', count: (t) => t.coverlayCount },
  { stepId: 'bondply', says: 'One sheet for each bondply.', count: (t) => t.bondplyCount },
  { stepId: 'prepreg', says: 'One sheet for each no-flow prepreg.', count: (t) => t.prepregCount },
  { stepId: 'rigid-clad', says: 'One sheet for each rigid laminate.', count: (t) => t.rigidLaminateCount },
  { stepId: 'shield-film', says: 'One sheet for each shield film.', count: (t) => t.shieldCount },
  { stepId: 'imaging', says: 'Every conductor layer is imaged, etched and inspected.', count: (t) => t.conductorCount },
  {
    stepId: 'fine-lines',
    says: `Lines or spaces below ${inSentence(FINE_LINE_MM, 'mm')} are imaged directly and looked after.`,
    count: (t) => t.fineLayerCount,
    found: sayFinest,
  },
  {
    stepId: 'finest-lines',
    says: `Lines or spaces below ${inSentence(FINEST_LINE_MM, 'mm')} are lost more often in etching.`,
    count: (t) => t.finestLayerCount,
    found: sayFinest,
  },
  {
    stepId: 'heavy-copper',
    says: `Foil of more than ${inSentence(HEAVY_FOIL_UM, 'um')} is etched longer and filled with more adhesive.`,
    count: (t) => t.heavyLayerCount,
  },
  {
    stepId: 'heaviest-copper',
    says: `Foil of more than ${inSentence(HEAVIEST_FOIL_UM, 'um')} is etched in several passes.`,
    count: (t) => t.heaviestLayerCount,
  },
  {
    stepId: 'button-imaging',
    says: 'Pads-only plating is masked by an image of its own.',
    count: (t) => (t.platings.includes('button') ? 1 : 0),
  },
  { stepId: 'release-film', says: 'Leaves that stay unbonded are kept apart in the press.', count: (t) => t.gapCount },
  { stepId: 'coverlay-lay-up', says: 'Every coverlay is laid up and tacked.', count: (t) => t.coverlayCount },
  {
    stepId: 'coverlay-drill',
    says: 'Coverlay is opened by drill and rout before it is laid up, unless its openings say otherwise.',
    count: byMethod('drill'),
    found: (t) => (t.isCoverlayMethodStated ? '' : 'No opening of this design states its method.'),
  },
  { stepId: 'coverlay-punch', says: 'Coverlay is punched where its openings say so.', count: byMethod('punch') },
  {
    stepId: 'coverlay-laser',
    says: 'Coverlay is opened by laser where it sits over an outer flexible layer of a rigid-flex, or where its openings say so.',
    count: (t) => t.coverlayOverOuterFlexCount + byMethod('laser')(t),
    found: (t) =>
      t.coverlayOverOuterFlexCount > 0
        ? `${t.coverlayOverOuterFlexCount} of ${t.coverlayCount} coverlays lie over an outer flexible layer.`
        : '',
  },
  {
    stepId: 'coverlay-laser-opening',
    says: 'Each coverlay opening that the design lists takes laser time where coverlay is opened by laser.',
    count: (t) => (t.coverlayOverOuterFlexCount > 0 || t.coverlayMethod === 'laser' ? t.coverlayOpeningCount : 0),
  },
  {
    stepId: 'coverlay-press',
    says: 'Flexible cores are covered in a press cycle each; coverlay over the outside takes one more, after the final lamination.',
    count: (t) => t.coverlayPressCount,
  },
  {
    stepId: 'final-press',
    says: 'What is bonded by prepreg or bondply is pressed together once.',
    count: (t) => t.finalPressCount,
  },
  {
    stepId: 'further-press',
    says: 'A hole that is buried within another takes a lamination before it is buried.',
    count: (t) => t.furtherLaminationCount,
  },
  { stepId: 'stiffener-press', says: 'Stiffeners are bonded in a press cycle.', count: (t) => t.stiffenerPressCount },
  {
    stepId: 'prepreg-windows',
    says: 'No-flow prepreg of a rigid-flex gets windows.',
    count: (t) => (t.isRigidFlex ? t.prepregCount : 0),
  },
  {
    stepId: 'cap-windows',
    says: 'Rigid layers outside the flexible ones get their windows routed before the press.',
    count: (t) => t.capCount,
  },
  {
    stepId: 'cap-removal',
    says: 'Caps that covered the flexible zones in the press are removed afterwards.',
    count: (t) => (t.capCount > 0 ? 1 : 0),
  },
  { stepId: 'drilling', says: 'Where a layer is plated, holes are drilled.', count: (t) => (isDrilled(t) ? 1 : 0) },
  {
    stepId: 'hole-drilling',
    says: 'Every hole takes drilling time: those of drawn patterns, and one for each that is listed and not drawn.',
    count: (t) => t.holeCount,
  },
  {
    stepId: 'small-drills',
    says: `Drills below ${inSentence(SMALL_DRILL_MM, 'mm')} wear and break sooner.`,
    count: (t) => (isDrilledBelow(t, SMALL_DRILL_MM) ? 1 : 0),
    found: sayDrill,
  },
  {
    stepId: 'smallest-drills',
    says: `Holes below ${inSentence(SMALLEST_DRILL_MM, 'mm')} are made by laser.`,
    count: (t) => (isDrilledBelow(t, SMALLEST_DRILL_MM) ? 1 : 0),
    found: sayDrill,
  },
  {
    stepId: 'further-span',
    says: 'Plated holes that join other layers than the first ones do are drilled and plated by themselves.',
    count: (t) => t.furtherSpanCount,
  },
  {
    stepId: 'hole-cleaning',
    says: 'Plated holes through flexible film are cleaned by plasma.',
    count: (t) => (isDrilled(t) && t.baseFilmCount > 0 ? 1 : 0),
  },
  ...(['panel', 'pattern', 'button'] as const).map(
    (process): Rule => ({
      stepId: `${process}-plating`,
      says: `The design plates a layer by ${process === 'button' ? 'pads-only' : process} plating.`,
      count: (t) => (t.platings.includes(process) ? 1 : 0),
    }),
  ),
  { stepId: 'solder-mask', says: 'Every solder mask is coated, imaged and cured.', count: (t) => t.solderMaskCount },
  { stepId: 'shield-lay-up', says: 'Every shield film is laid up.', count: (t) => t.shieldCount },
  {
    stepId: 'finish-nickel',
    says: 'The brief names a finish with nickel.',
    count: (t) => (t.finish === 'nickel' ? 1 : 0),
  },
  {
    stepId: 'finish-palladium',
    says: 'The brief names a finish with palladium between nickel and gold.',
    count: (t) => (t.gold === 'palladium' ? 1 : 0),
  },
  {
    stepId: 'finish-electroplated',
    says: 'The brief names gold that is plated by current.',
    count: (t) => (t.gold === 'electroplated' ? 1 : 0),
  },
  {
    stepId: 'finish-other',
    says: 'The brief names a finish without nickel, or none yet.',
    count: (t) => (t.finish === 'other' || t.finish === 'not-stated' ? 1 : 0),
    found: (t) => (t.finish === 'not-stated' ? 'The brief states no finish: one without nickel is assumed.' : ''),
  },
  { stepId: 'stiffener', says: 'Each part gets its stiffeners.', count: (t) => t.stiffenerCount },
  { stepId: 'profile', says: 'Every part is cut out of the panel.', count: () => 1 },
  {
    stepId: 'test',
    says: 'Every part is tested, unless the brief says that none is.',
    count: (t) => (t.isTested ? 1 : 0),
  },
  {
    stepId: 'coupon-test',
    says: 'The brief asks for coupons, or a conductor states its impedance with one.',
    count: (t) => (t.hasCoupons ? 1 : 0),
    found: (t) =>
      t.couponLineCount === 0 ? '' : `Conductors whose impedance is stated with a coupon: ${t.couponLineCount}.`,
  },
  {
    stepId: 'class-3',
    says: 'Class 3 asks for sections and records of every panel, and accepts less.',
    count: (t) => (t.isClass3 ? 1 : 0),
  },
  { stepId: 'inspection', says: 'Every part is inspected at the end.', count: () => 1 },
]

/** Steps of a construction in the order in which they are worked, each with the rule that selected it. */
export function selectSteps(traits: ConstructionTraits): SelectedStep[] {
  return RULES.flatMap(({ stepId, says, count: countOf, found }) => {
    const count = countOf(traits)
    if (count === 0) return []
    const detail = found?.(traits) ?? ''
    return [{ stepId, count, because: detail === '' ? says : `${says} ${detail}` }]
  })
}

/** Every rule in words, for the page that lists them. */
export function listRules(): readonly { readonly stepId: string; readonly says: string }[] {
  return RULES.map(({ stepId, says }) => ({ stepId, says }))
}
