import type { Severity } from '../severity'
import type { Profile, ProfileItem, ProfileLimit, RequiredField } from './profile'

/*
 * Where a workspace may start. Which items matter for which kind of part is our sorting: common practice, no published source. Each limit
 * names its own.
 */

const item = (itemId: string, change: Partial<ProfileItem> & Pick<ProfileItem, 'reason'>): ProfileItem => ({
  itemId,
  asked: null,
  severity: null,
  decidedWhen: null,
  isForEveryDesign: false,
  ...change,
})
const rank = (itemId: string, severity: Severity, reason: string) => item(itemId, { severity, reason })
const on = (itemId: string, reason: string) => item(itemId, { asked: 'on', reason })
const off = (itemId: string, reason: string) => item(itemId, { asked: 'off', reason })
const limit = (key: ProfileLimit['key'], value: number, sourceKey: string, note: string): ProfileLimit => ({
  key,
  value,
  isRelaxed: false,
  sourceKey,
  note,
})
const relaxed = (...given: Parameters<typeof limit>): ProfileLimit => ({ ...limit(...given), isRelaxed: true })
const required = (field: string, reason: string, where: RequiredField['where'] = null): RequiredField => ({
  field,
  where,
  reason,
})

const DYNAMIC = { field: 'use', value: 'dynamic' }

const CONSUMER: Profile = {
  id: 'consumer-folded-once',
  name: 'Consumer, folded once',
  purpose: 'Parts in numbers that are folded at assembly and then stay.',
  items: [
    off('coupon-test', 'Class 1 parts in numbers are accepted on electrical test and on samples.'),
    off('hole-life', 'Kept indoors, the part sees few temperature cycles.'),
    on('antenna', 'Folded parts come near antennas.'),
    on('esd-entry', 'People touch and plug such products.'),
    on('pull-load', 'Parts are pulled out of connectors in assembly.'),
    rank('panel-form', 'major', 'Arrays and carriers decide how numbers are assembled.'),
    rank('construction-cost', 'major', 'Cost decides in numbers.'),
    rank('parts-per-panel', 'major', 'Sheet materials are a large share of the price.'),
  ],
  limits: [
    relaxed('conductorWidthMm', 0.075, 'ownChoice', 'Shops print 0.05 to 0.076 mm for thin foil.'),
    relaxed('conductorSpaceMm', 0.075, 'ownChoice', 'Shops print 0.05 to 0.076 mm for thin foil.'),
    relaxed('annularRingMm', 0.1, 'ownChoice', 'Shops print 0.075 to 0.12 mm.'),
    relaxed('transitionStripMm', 0.8, 'guideTransition2017', 'The guide allows 0.8 mm.'),
    relaxed('coverlayCaptureMm', 0.1, 'ownChoice', 'Drawn as 0.10 to 0.125 mm.'),
  ],
  requiredFields: [
    required('brief.quantityPerYear', 'Cost and panel rest on the quantity.'),
    required('brief.panelForm', 'The assembler needs to know the form of delivery.'),
  ],
}

const MOVING: Profile = {
  id: 'moving-industrial',
  name: 'Moving part, industrial',
  purpose: 'Parts that bend in service for years.',
  items: [
    on('cold-motion', 'Films stiffen in the cold, and the part moves all the same.'),
    rank('flex-test-terms', 'blocking', 'A life means something only with its test.'),
    rank('rolling-direction', 'major', 'The grain of the foil moves the life of a hinge.'),
    rank('flex-length', 'major', 'Free length decides how tight a moving loop becomes.'),
    rank('clad-adhesive', 'major', 'Adhesive beneath the foil creeps in a moving bend.'),
    rank('neutral-axis', 'major', 'Life follows the distance from the neutral axis.'),
    rank('damage-sum', 'blocking', 'Several bends use up one life.'),
    rank('construction-cost', 'advice', 'Life comes before cost.'),
  ],
  limits: [
    limit('damageSumFraction', 0.5, 'ownChoice', 'Failures were seen from sums of 0.7 on; half leaves room.'),
    limit('bendToRigidMm', 2.5, 'ownChoice', 'Printed from 1.0 to 5 mm.'),
  ],
  requiredFields: [
    required('bends.*.requiredCycles', 'Without cycles there is no life to reach.', DYNAMIC),
    required('bends.*.radiusHeldBy', 'A radius that nothing holds becomes tighter in service.', DYNAMIC),
    required('brief.lifeSurvivalPct', 'State the share that must survive; 99 % is our choice for such parts.'),
    required('brief.operatingMinDegC', 'Films stiffen in the cold.'),
  ],
  // Our choice, no published source.
  leastSurvivalPct: 99,
}

const WEARABLE: Profile = {
  id: 'wearable-on-skin',
  name: 'Wearable on skin',
  purpose: 'Parts that are worn against the body.',
  items: [
    on('skin-contact', 'The part touches skin.'),
    on('moisture-sweat', 'Sweat reaches edges and contacts.'),
    on('antenna', 'The body and the fold come near the antenna.'),
    on('esd-entry', 'A person who moves carries charge.'),
    rank('corner-radius', 'major', 'Corners press and tear where the body moves the part.'),
    rank('bend-fit', 'major', 'The part follows a body, not a drawing.'),
    rank('packing', 'major', 'What touches skin is kept clean.'),
    rank('parts-per-panel', 'advice', 'Shapes that follow the body nest badly.'),
  ],
  limits: [
    limit('copperToOutlineMm', 0.5, 'ownChoice', 'On edges that sweat reaches; we take all edges.'),
    limit('copperToFineOutlineMm', 0.5, 'ownChoice', 'Sweat asks not how an edge was cut.'),
  ],
  requiredFields: [
    required('brief.surfaceFinish', 'Nickel near skin has to be known.'),
    required('brief.operatingMaxDegC', 'Skin limits how warm a face may become.'),
  ],
}

const MEDICAL: Profile = {
  id: 'medical',
  name: 'Medical',
  purpose: 'Parts of medical devices. The standards and the regulation in force decide; this profile only asks more.',
  items: [
    on('skin-contact', 'What touches a patient is evaluated for it.'),
    on('cleanliness', 'Residue is a matter of safety here.'),
    on('fluids', 'Parts are cleaned and disinfected.'),
    rank('change-control', 'blocking', 'What was validated must not change in silence.'),
    rank('first-article', 'blocking', 'The first lot is part of the validation.'),
    rank('lessons', 'major', 'Complaints on the part before are gone through.'),
    rank('fabricator-currency', 'blocking', 'What was validated must be what is built.'),
    rank('coupon-test', 'major', 'Records of each lot are kept.'),
    rank('material-call-outs', 'major', 'Materials are controlled by specification.'),
    rank('packing', 'major', 'Cleanliness begins with packing.'),
    rank('contact-person', 'major', 'Deviations are asked about, never decided by the shop.'),
  ],
  limits: [limit('annularRingMm', 0.15, 'ownChoice', 'Copper left after registration.')],
  requiredFields: [
    required('brief.performanceClass', 'Class 3 is usual; the class has to be stated.'),
    required('brief.electricalTest', 'Every part is tested.'),
    required('brief.whoToAsk', 'Somebody answers for deviations.'),
  ],
  // Our choice: the rules of the device's own quality system go first.
  requiredSignatures: 2,
}

const SPACE: Profile = {
  id: 'aerospace-space',
  name: 'Aerospace and space',
  purpose:
    'Parts that fly and are not repaired. The standards called up by the contract decide; this profile only asks more.',
  items: [
    on('outgassing', 'What outgasses settles on optics and contacts.'),
    on('cleanliness', 'Nobody cleans the part again.'),
    on('cold-motion', 'Mechanisms move far below room temperature.'),
    rank('precedence', 'major', 'Contracts call up many documents.'),
    rank('flexible-adhesive-in-rigid', 'blocking', 'Acrylic in plated holes fails in temperature cycles.'),
    rank('hole-life', 'blocking', 'Plated holes see the cycles of each orbit.'),
    rank('transition-strip', 'blocking', 'Holes in the transition crack first.'),
    rank('coupon-test', 'major', 'Sections of coupons are the evidence.'),
    rank('hole-plating', 'blocking', 'Wall copper decides the life of a hole.'),
    rank('flex-length', 'major', 'Free length decides what installation does to the part.'),
    off('construction-cost', 'Cost does not decide.'),
    off('parts-per-panel', 'Few parts are built.'),
    off('panel-form', 'Parts are delivered singly.'),
  ],
  limits: [
    limit('transitionStripMm', 1.9, 'guideHighReliability', '0.075 in; 3.18 mm is remembered from IPC-2223, not read.'),
    limit('copperToOutlineMm', 1.27, 'guideHighReliability', '0.050 in.'),
    limit('copperToFineOutlineMm', 1.27, 'guideHighReliability', '0.050 in, however the edge is cut.'),
    limit('annularRingMm', 0.25, 'guideHighReliability', 'Land = hole + 0.50 mm.'),
    limit('bowAndTwistPct', 0.75, 'bowAndTwist', 'The figure for surface-mount parts, taken for all.'),
    limit('damageSumFraction', 0.25, 'ownChoice', 'A factor of four on life, for a part that nobody can replace.'),
  ],
  requiredFields: [
    required('brief.performanceClass', 'The class has to be stated.'),
    required('brief.cycleMinDegC', 'Hole life rests on the cycles.'),
    required('brief.cycleMaxDegC', 'Hole life rests on the cycles.'),
    required('brief.temperatureCycles', 'Hole life rests on the cycles.'),
    required('features.holes.*.wallPlatingUm', 'Hole life rests on the wall copper.', null),
  ],
  // Our choice: nobody can take the part back, so a second person reads what is signed.
  requiredSignatures: 2,
}

const AUTOMOTIVE: Profile = {
  id: 'automotive',
  name: 'Automotive',
  purpose: 'Parts in vehicles: heat, cold, vibration, long service.',
  items: [
    rank('hole-life', 'blocking', 'Temperature cycles run for the life of a vehicle.'),
    on('cold-motion', 'Vehicles start in the cold.'),
    on('fluids', 'Oil, coolant and fuel reach parts.'),
    rank('change-control', 'blocking', 'Changes of process are agreed before they are made.'),
    rank('operating-temperature', 'blocking', 'Heat under a bonnet is not chosen.'),
    rank('flex-length', 'major', 'Free length takes up tolerances of the body.'),
    rank('fabricator-currency', 'blocking', 'Changes of process are agreed before they are made.'),
  ],
  limits: [limit('temperatureMarginDegC', 15, 'ownChoice', 'No published figure was found.')],
  requiredFields: [
    required('brief.operatingMinDegC', 'Both ends of the range are needed.'),
    required('brief.operatingMaxDegC', 'Both ends of the range are needed.'),
    required('brief.cycleMinDegC', 'Hole life rests on the cycles.'),
    required('brief.cycleMaxDegC', 'Hole life rests on the cycles.'),
    required('brief.temperatureCycles', 'Hole life rests on the cycles.'),
  ],
}

/** Profiles that come with the program. A workspace copies one to change it. */
export const DELIVERED_PROFILES: readonly Profile[] = [CONSUMER, MOVING, WEARABLE, MEDICAL, SPACE, AUTOMOTIVE]
