import { CATALOGUE_SOURCES } from './catalogue-sources'
import { FATIGUE_SOURCES } from './fatigue-sources'
import { SOURCE_KINDS, type Source } from './kinds'
import { MATERIAL_SOURCES } from './material-sources'
import { PROCESS_SOURCES } from './process-sources'
import { TERM_SOURCES } from './term-sources'

const CURRENT_GOVERNS = 'the current edition governs'

/**
 * Every source that a calculation, a limit or a checklist item may cite. Guides of the trade are named by kind and
 * year only; keys are stable, since recorded results carry them.
 */
export const SOURCES = {
  ...CATALOGUE_SOURCES,
  ...FATIGUE_SOURCES,
  ...MATERIAL_SOURCES,
  ...PROCESS_SOURCES,
  ...TERM_SOURCES,
  ipc2221: {
    title: 'Generic Standard on Printed Board Design',
    number: 'IPC-2221',
    year: 2012,
    kind: 'quoted',
    quotedBy: 'a lesson on trace current',
    note: `current relation fitted to charts of the 1950s for rigid boards in still air; its internal chart is the external one at half the current, not test data; ${CURRENT_GOVERNS}`,
  },
  ipc2152: {
    title: 'Standard for Determining Current Carrying Capacity in Printed Board Design',
    number: 'IPC-2152',
    year: null,
    kind: 'quoted',
    quotedBy: 'a public digest of the Printed Circuits Handbook (2016), 22.3',
    note: 'at 1 A a board of 1.78 mm warms a conductor by 10 degC, one of 0.97 mm by 13.3 degC; internal conductors ran slightly cooler than external ones. A flex of 0.1 to 0.3 mm lies far outside these data',
  },
  ipc2223: {
    title: 'Sectional Design Standard for Flexible/Rigid-Flexible Printed Boards',
    number: 'IPC-2223',
    year: 1998,
    kind: 'quoted',
    quotedBy: 'fabricator guides',
    note: `single-sided formula and deformation values; ${CURRENT_GOVERNS}`,
  },
  ipc2223Recalled: {
    title: 'Sectional Design Standard for Flexible/Rigid-Flexible Printed Boards, double-sided and multilayer forms',
    number: 'IPC-2223',
    year: 1998,
    kind: 'memory',
    note: 'only the list of symbols was read; the form is recalled and agrees with the mid-plane geometry',
  },
  ipc6012: {
    title: 'Qualification and Performance Specification for Rigid Printed Boards',
    number: 'IPC-6012',
    year: 2020,
    kind: 'quoted',
    quotedBy: 'a fabricator guide and a trade article',
    note: `minimum finished copper, rows for 1/2, 1 and 2 oz; ${CURRENT_GOVERNS}`,
  },
  ipc6013: {
    title: 'Qualification and Performance Specification for Flexible/Rigid-Flexible Printed Boards',
    number: 'IPC-6013',
    year: 2017,
    kind: 'quoted',
    quotedBy: 'a trade article',
    note: `minimum hole plating 984 microinch, same copper tables as the rigid specification; ${CURRENT_GOVERNS}`,
  },
  ipc6013Transition: {
    title: 'Qualification and Performance Specification for Flexible/Rigid-Flexible Printed Boards: transition area',
    number: 'IPC-6013',
    year: 2017,
    kind: 'quoted',
    quotedBy: 'a trade article of 2025',
    note: `transition area of 3 mm, 1.5 mm on either side of the rigid edge; ${CURRENT_GOVERNS}`,
  },
  ipc4562: {
    title: 'Metal Foil for Printed Board Applications',
    number: 'IPC-4562',
    year: 2000,
    kind: 'quoted',
    quotedBy: 'a trade article',
    note: `nominal foil thickness 34.3 um per oz/ft2, minimum 10 % less; ${CURRENT_GOVERNS}`,
  },
  compositeBeam: {
    title: 'Mechanics of Materials (Gere), chapter 6: composite beams',
    number: null,
    year: 2004,
    kind: 'published',
    note: 'solutions of the chapter read: transformed section; problems 6.2-1 and 6.2-2 are among the checks',
  },
  fiveStripBeam: {
    title: 'Mechanics of Materials (Beer, Johnston), chapter 4: five-strip composite bar',
    number: null,
    year: 1981,
    kind: 'quoted',
    quotedBy: 'a public page of worked answers',
    note: 'worked answers for steel, brass and aluminium strips',
  },
  bimetal: {
    title: 'Analysis of Bi-metal Thermostats, J. Optical Society of America 11, 233',
    number: null,
    year: 1925,
    kind: 'memory',
    note: 'equation recalled and confirmed by force and moment equilibrium',
  },
  plateBending: {
    title: 'Theory of Plates and Shells (Timoshenko, Woinowsky-Krieger), cylindrical bending',
    number: null,
    year: 1959,
    kind: 'memory',
    note: "recalled, textbook form: wide strip, E' = E / (1 - nu^2)",
  },
  plasticBending: {
    title: 'Plasticity Theory (Lubliner), bending of an elastic-plastic beam',
    number: null,
    year: 1990,
    kind: 'memory',
    note: 'moment of a rectangular section M = 1.5 My (1 - (kappa_y / kappa)^2 / 3); confirmed by integration in the tests',
  },
  springback: {
    title: 'The Springback of Metals, Transactions of the ASME 79, 1',
    number: null,
    year: 1957,
    kind: 'memory',
    note: 'Ri/Rf = 4 (Ri Y / E t)^3 - 3 (Ri Y / E t) + 1; confirmed by integration in the tests',
  },
  reversedYield: {
    title: 'Self stretching and brass strengthening: unloading follows the loading curve at twice its scale',
    number: null,
    year: 1926,
    kind: 'memory',
    note: 'exact for kinematic hardening and for perfect plasticity once yielded',
  },
  finiteElementBending: {
    title:
      'own finite elements: slices in pure bending and unit cells of hatch, general-purpose open-source solver, large rotations',
    number: null,
    year: 2026,
    kind: 'own-computation',
    note: 'mesh-converged; 109 cases with inputs and tolerances stand in test/standards/fem-cases.json; nothing of it was printed',
  },
  lineFields: {
    title:
      'own boundary elements: quasi-static charge on conductors and faces between flat dielectrics, planes by images',
    number: null,
    year: 2026,
    kind: 'own-computation',
    note: 'within the tolerance of each of 77 exact and printed check values in test/standards/signals; lossless, smooth copper, no bends. Method after IEEE Trans. Microwave Theory and Techniques 32 (1984) 439, from memory',
  },
  parallelFaceFold: {
    title: 'Strength Measurement of Optical Fibers by Bending, J. American Ceramic Society 69, 815',
    number: null,
    year: 1986,
    kind: 'memory',
    note: 'elastica between parallel faces, factor 1.198, re-derived by quadrature in the tests',
  },
  iacs: {
    title: 'International standard of resistance for copper',
    number: 'IEC 60028',
    year: 1925,
    kind: 'quoted',
    quotedBy: 'an encyclopedia article',
    note: '1/58 ohm mm2/m at 20 degC, temperature coefficient 0.00393 per degC',
  },
  skinEffect: {
    title: 'Depth of penetration in a good conductor',
    number: null,
    year: null,
    kind: 'exact',
    note: 'solution of the diffusion equation for a half space',
  },
  dlmf: {
    title: 'Digital Library of Mathematical Functions (NIST), chapter 7: error functions',
    number: null,
    year: 2010,
    kind: 'memory',
    note: 'equations 7.6.2 and 7.9.1, recalled; they are tested against each other and against known values',
  },
  itp: {
    title:
      'An Enhancement of the Bisection Method Average Performance Preserving Minmax Optimality, ACM Trans. Mathematical Software 47(1)',
    number: null,
    year: 2020,
    kind: 'memory',
    note: 'root finder; convergence is tested over the whole domain',
  },
  sfc32: {
    title: 'Small fast chaotic generator sfc32, public domain',
    number: null,
    year: 2010,
    kind: 'memory',
    note: 'generator recalled; its output is tested for uniformity, not against published vectors',
  },
  marsagliaPolar: {
    title: 'A Convenient Method for Generating Normal Variables, SIAM Review 6(3) 260',
    number: null,
    year: 1964,
    kind: 'memory',
    note: 'polar method',
  },
  processCapability: {
    title: 'Statistical methods in process management: capability and performance',
    number: 'ISO 22514-2',
    year: 2017,
    kind: 'memory',
    note: 'definitions of Cp and Cpk',
  },
  inflatedRootSumSquare: {
    title: 'Benderizing Tolerances, Graphic Science',
    number: null,
    year: 1962,
    kind: 'memory',
    note: 'root sum square times 1.5; may exceed the worst case, so it is capped there',
  },
  ratioAttributedToIpc2223: {
    title: 'fabricator guide, table of radius-to-thickness ratios attributed to IPC-2223',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; the attribution was not verified',
  },
  ratioTradeArticle2019: {
    title: 'trade article on reducing bend radius, part I',
    number: null,
    year: 2019,
    kind: 'common-practice',
    note: 'minimum ratios "typically" asked for; flexible solder mask from a radius of 0.4 in on, none in moving bends',
  },
  ratioMailingList2002: {
    title: 'engineers on a public mailing list of the trade',
    number: null,
    year: 2002,
    kind: 'common-practice',
    note: 'for 35 um copper and 25 um films',
  },
  ratioGuideMechanical: {
    title: 'fabricator guide on mechanical rules',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; 10 is said to have been pushed to 5',
  },
  ratioGuideArticle: {
    title: 'fabricator guide on bend radius',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given',
  },
  ratioRolledFoil2017: {
    title: 'fabricator guide on rolled-annealed and electrodeposited copper',
    number: null,
    year: 2017,
    kind: 'common-practice',
    note: '10 by the book, 7 in the industry, 5 with good materials',
  },
  lengthRuleOfThumb: {
    title: 'design magazine of the trade: stepped lengths of unbonded leaves',
    number: null,
    year: 2014,
    kind: 'common-practice',
    note: '1.5 times the layer pitch; equals the exact value at 86 degrees only',
  },
  commonPractice: {
    title: 'common practice of the trade',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no published source',
  },
  ownChoice: {
    title: 'our choice',
    number: null,
    year: null,
    kind: 'own-choice',
    note: 'no source was found for this figure; set your own under limits',
  },
  exactArithmetic: {
    title: 'exact arithmetic or geometry',
    number: null,
    year: null,
    kind: 'exact',
    note: 'unit definitions, identities and conservation of volume',
  },
} as const satisfies Record<string, Source>

export type SourceKey = keyof typeof SOURCES

/** A source by the key that results recorded; a key that this engine does not know is shown as it stands. */
export function citeRecordedSource(key: string): string {
  return Object.hasOwn(SOURCES, key) ? citeSource(key as SourceKey) : key
}

/**
 * A source in one line, as it stands beside a number on screen and in print. It always says how far the source is
 * known: quoted, recalled, unpublished or our own.
 *
 * @example citeSource('iacs') gives 'IEC 60028, International standard of resistance for copper (1925), as quoted by an encyclopedia article'
 */
export function citeSource(key: SourceKey): string {
  const source: Source = SOURCES[key]
  const { title, number, year } = source
  const name = number === null ? title : `${number}, ${title}`
  const dated = year === null ? name : `${name} (${year})`
  switch (source.kind) {
    case 'quoted':
      return `${dated}, as quoted by ${source.quotedBy}`
    case 'abstract':
    case 'memory':
      return `${dated}; ${SOURCE_KINDS[source.kind]}`
    case 'common-practice':
      return key === 'commonPractice' ? 'common practice, no published source' : `${dated}; common practice`
    case 'own-choice':
      return 'our choice, no published source'
    case 'own-computation':
      return `${dated}; own computation`
    default:
      return dated
  }
}
