import type { Severity } from '@/lib/engine/catalogue'

/**
 * What a senior reviewer asks of a flexible circuit beside strain and life, in our words and ranked by how often it hurts, with the least severity
 * that such a reviewer gives it and the items that ask it. Sorted from public guides, trade articles and standards of the field; the ranks are
 * common practice, no published source.
 */
export interface ExpectedQuestion {
  readonly asks: string
  readonly atLeast: Severity
  readonly itemIds: readonly string[]
  /** Asked of few kinds of product: by a profile. */
  readonly withProfile?: true
}

const ask = (asks: string, atLeast: Severity, ...itemIds: string[]): ExpectedQuestion => ({ asks, atLeast, itemIds })
const askWithProfile = (asks: string, atLeast: Severity, ...itemIds: string[]): ExpectedQuestion => ({
  ...ask(asks, atLeast, ...itemIds),
  withProfile: true,
})

export const EXPECTED_QUESTIONS: readonly ExpectedQuestion[] = [
  // Passes unseen where nobody asks, or comes back first as a query.
  ask('film over the copper of each bend, on its free face', 'blocking', 'bend-cover'),
  ask('room for the arc and the axis of each bend', 'major', 'bend-fit'),
  ask('each list filled, or said to be empty', 'major', 'feature-lists'),
  ask('what is written twice says the same', 'blocking', 'statements-agree'),
  ask('each file and table that a shop begins with', 'blocking', 'package-contents'),
  ask('nothing in the strip beside a rigid edge', 'major', 'transition-strip'),
  ask('the same in class 3', 'blocking', 'transition-strip-class-three'),
  ask('depth of a hole to its drill, and copper in it', 'major', 'hole-aspect', 'hole-plating'),
  ask('plated holes through flexible adhesive', 'major', 'flexible-adhesive-in-rigid'),
  ask('the same in class 3', 'blocking', 'flexible-adhesive-in-rigid-class-three'),
  ask('rigid zones alike above and below their middle', 'major', 'stack-symmetry'),
  ask('width and space by finished copper', 'major', 'conductor-width', 'conductor-space'),
  ask('finish of a contact for its matings', 'major', 'contact-finish'),
  ask('a contact end within the drawing of its connector', 'blocking', 'contact-geometry'),
  ask('uses that agree with motion, temperature and flame class', 'major', 'bend-use'),
  ask('a number for each tolerance', 'major', 'tolerances-given'),
  ask('what belongs to a stated impedance', 'major', 'impedance-given'),
  ask('whether the build has that impedance', 'major', 'impedance-value'),
  ask('each bend in plan', 'major', 'bend-on-plan'),
  ask('bonds and films that bear the solder profile', 'major', 'solder-heat'),
  // Breaks parts in assembly or in service.
  ask('how a bend is made', 'major', 'forming'),
  ask('a contact end free of load', 'major', 'contact-strain'),
  ask('no plated hole in what flexes', 'major', 'holes-in-flex'),
  ask('holes clear of the edge of a stiffener', 'major', 'hole-to-stiffener-edge'),
  ask('a fold that shaking moves', 'major', 'free-length'),
  ask('twist, or a second direction, at one place', 'major', 'combined-motion'),
  ask('times that a bend is worked in handling', 'major', 'handling-count'),
  ask('the formed part in the model of its enclosure', 'major', 'enclosure-fit'),
  ask('what the part rubs on', 'minor', 'wear'),
  ask('plated holes over temperature cycles', 'major', 'hole-life'),
  ask('a land left open after squeeze-out and shift', 'major', 'open-land'),
  ask('what carries the flat part in assembly', 'major', 'carrier'),
  ask('what an array must have', 'major', 'array-drawing'),
  ask('oven and hours to solder, as numbers', 'major', 'floor-life'),
  ask('the bead along a rigid edge', 'minor', 'bead'),
  ask('the same beside a bend that moves', 'major', 'bead-beside-moving-bend'),
  ask('where prepreg ends, and its resin', 'minor', 'prepreg-set-back'),
  ask('space by voltage', 'major', 'voltage-space'),
  ask('the same where the voltage is a hazard', 'blocking', 'hazardous-voltage-space'),
  ask('a reference plane that goes on', 'major', 'return-path'),
  ask('where a shield is tied to ground', 'major', 'shield-ground'),
  ask('length of a flex zone that can be made', 'minor', 'flex-length'),
  ask('holes in a stiffener wider than in the film', 'minor', 'stiffener-holes'),
  // Papers, tests, rules of the market, change.
  ask('terms of the flex or folding test', 'major', 'flex-test-terms'),
  ask('a netlist against the artwork', 'major', 'netlist'),
  ask('limits of the electrical test', 'minor', 'test-terms'),
  ask('probe points off the bends', 'minor', 'test-access'),
  ask('what is marked, where and how', 'minor', 'marking'),
  ask('flame class of this very construction', 'major', 'flame-class'),
  ask('what is measured on the first lot', 'major', 'first-article'),
  ask('which changes come back for approval', 'major', 'change-control'),
  ask('which paper wins', 'minor', 'precedence'),
  ask('flatness of rigid and stiffened areas', 'minor', 'bow-and-twist'),
  ask('solderings that a land must bear', 'minor', 'rework-grade'),
  ask('which layers each kind of hole joins', 'major', 'via-structure'),
  ask('specification and thickness of each finish', 'minor', 'finish-terms'),
  ask('restricted substances', 'minor', 'substances'),
  ask('materials that may be replaced unasked', 'minor', 'substitutes'),
  ask('limits that hold for the tools of the series', 'minor', 'tooling-change'),
  ask('findings on the part before', 'minor', 'lessons'),
  // Kinds of product.
  askWithProfile('what evaporates in vacuum', 'blocking', 'outgassing'),
  askWithProfile('faces that touch the body', 'major', 'skin-contact'),
  askWithProfile('sweat at contacts and cut edges', 'major', 'moisture-sweat'),
  askWithProfile('ionic residue and cleaning', 'minor', 'cleanliness'),
  askWithProfile('metal near an antenna', 'major', 'antenna'),
  askWithProfile('where a discharge goes', 'minor', 'esd-entry'),
  askWithProfile('who pulls, and how hard', 'minor', 'pull-load'),
  askWithProfile('motion at the lowest temperature', 'major', 'cold-motion'),
  askWithProfile('fluids and light on film and adhesive', 'minor', 'fluids'),
]
