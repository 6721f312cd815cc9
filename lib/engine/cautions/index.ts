/**
 * What everybody is told wherever results leave the application: one wording, from here alone. Results carry it in
 * files, reports, drawings and on screen, because each of them may be read without the others.
 */

/** Stands beside every life figure. */
export const LIFE_CAUTION = 'Fatigue figures are estimates of order of magnitude: qualify by test.'

/** The same where there is room for a few words only: after a figure, on an axis. */
export const LIFE_CAUTION_SHORT = 'order of magnitude'

export const CAUTIONS: readonly string[] = [
  "Results support a licensed or qualified engineer's judgment and the fabricator's process knowledge, and replace neither.",
  LIFE_CAUTION,
  "Defer to the purchase contract, the governing standards' current editions, and local codes; uses with rules of their own, such as medical, aviation and automotive, follow those first.",
]

/** Stands beside every impedance and crosstalk that is worked out. */
export const LINE_CAUTION =
  'Impedances hold for the flat section, quasi-static, with smooth copper and dry, lossless dielectrics: connectors, holes, bends, rough copper, openings in planes and moisture (polyimide takes up 1 to 3 % of water) move them. Qualify by coupon.'

/** On what the fatigue relation rests, and what is assumed in using it here. */
export const FATIGUE_RELATION_CAUTION =
  'The fatigue relation is quoted from ANSI/VITA 51.1 (2013, R2018), appendix F, after IPC-TR-579, where it stands for plated holes; its use on bent foil is an assumption that rests on the scope of IPC-TM-650 2.4.3.2.'
