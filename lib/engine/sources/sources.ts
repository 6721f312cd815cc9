import { CATALOGUE_SOURCES } from './catalogue-sources'

import { MATERIAL_SOURCES } from './material-sources'

/** What kind of ground a number stands on. `memory`: recalled, not read in the text it is attributed to. */
export type SourceKind = 'standard' | 'paper' | 'handbook' | 'common-practice' | 'memory' | 'exact'

/** Where a formula, limit or constant comes from. `number` and `year` are null where there is none or it is not known. */
export interface Source {
  title: string
  number: string | null
  year: number | null
  kind: SourceKind
  note: string
}

const NOT_READ = 'quoted after published fabricator guides and trade articles; the current edition governs'

/**
 * Every source that a calculation, a limit or a checklist item may cite. Guides of the trade are named by kind and
 * year only; keys are stable, since recorded results carry them.
 */
export const SOURCES = {
  ...CATALOGUE_SOURCES,
  ...MATERIAL_SOURCES,
  ipc2221: {
    title: 'Generic Standard on Printed Board Design',
    number: 'IPC-2221',
    year: 2012,
    kind: 'standard',
    note: `current relation fitted to charts of the 1950s for rigid boards in still air; ${NOT_READ}`,
  },
  ipc2223: {
    title: 'Sectional Design Standard for Flexible/Rigid-Flexible Printed Boards',
    number: 'IPC-2223',
    year: 1998,
    kind: 'standard',
    note: `single-sided formula and deformation values; ${NOT_READ}`,
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
    kind: 'standard',
    note: `minimum finished copper, rows for 1/2, 1 and 2 oz; ${NOT_READ}`,
  },
  ipc6013: {
    title: 'Qualification and Performance Specification for Flexible/Rigid-Flexible Printed Boards',
    number: 'IPC-6013',
    year: 2017,
    kind: 'standard',
    note: `minimum hole plating 984 microinch, same copper tables as the rigid specification; ${NOT_READ}`,
  },
  minimumCopperRecalled: {
    title: 'Minimum finished copper, rows other than 1/2, 1 and 2 oz',
    number: 'IPC-6012 / IPC-6013',
    year: null,
    kind: 'memory',
    note: 'recalled table rows: foil minimum, plating minimum, processing reduction',
  },
  ipc4562: {
    title: 'Metal Foil for Printed Board Applications',
    number: 'IPC-4562',
    year: 2000,
    kind: 'standard',
    note: `nominal foil thickness 34.3 um per oz/ft2, minimum 10 % less; ${NOT_READ}`,
  },
  fatigueDuctility: {
    title: 'Fatigue-ductility relation of the flexural fatigue test of foil',
    number: 'IPC-TM-650 2.4.3.2 and 2.4.2.1',
    year: 1991,
    kind: 'memory',
    note: 'exponents recalled, not read in the test method; an estimate of order of magnitude: qualify by test',
  },
  platedHoleFatigue: {
    title: 'Round Robin Reliability Evaluation of Small Diameter Plated Through Holes in Printed Wiring Boards',
    number: 'IPC-TR-579',
    year: 1988,
    kind: 'memory',
    note: 'second place from which the fatigue relation is remembered',
  },
  foilRoundRobin: {
    title: 'Results of the copper foil ductility round robin study',
    number: 'IPC-TR-484',
    year: 1986,
    kind: 'paper',
    note: 'abstract read: laboratories agree within 10 %; rolled-annealed foil best for severe flexing and long life',
  },
  thinMetalFatigue1991: {
    title: 'Fatigue of thin copper on polyimide in reversed bending, J. Electronic Packaging 113(1) 58',
    number: null,
    year: 1991,
    kind: 'paper',
    note: 'abstract read: exponents 0.39 (crack start) and 0.51 (failure) for amplitudes of 1 to 10 %',
  },
  weibull: {
    title: 'A Statistical Distribution Function of Wide Applicability, J. Applied Mechanics 18, 293',
    number: null,
    year: 1951,
    kind: 'paper',
    note: 'no published slope for flex copper was found: the slope is an input',
  },
  miner: {
    title: 'Cumulative Damage in Fatigue, J. Applied Mechanics 12, A159',
    number: null,
    year: 1945,
    kind: 'paper',
    note: 'linear damage sum; the order of loading is ignored',
  },
  compositeBeam: {
    title: 'Mechanics of Materials (Gere), chapter 6: composite beams',
    number: null,
    year: 2004,
    kind: 'handbook',
    note: 'transformed section; problems 6.2-1 and 6.2-2 with published solutions are among the checks',
  },
  fiveStripBeam: {
    title: 'Mechanics of Materials (Beer, Johnston), chapter 4: five-strip composite bar',
    number: null,
    year: 1981,
    kind: 'handbook',
    note: 'worked answers for steel, brass and aluminium strips',
  },
  bimetal: {
    title: 'Analysis of Bi-metal Thermostats, J. Optical Society of America 11, 233',
    number: null,
    year: 1925,
    kind: 'paper',
    note: 'equation recalled and confirmed by force and moment equilibrium',
  },
  plateBending: {
    title: 'Theory of Plates and Shells (Timoshenko, Woinowsky-Krieger), cylindrical bending',
    number: null,
    year: 1959,
    kind: 'handbook',
    note: "wide strip: E' = E / (1 - nu^2)",
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
    kind: 'standard',
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
    kind: 'handbook',
    note: 'equations 7.6.2 and 7.9.1',
  },
  itp: {
    title:
      'An Enhancement of the Bisection Method Average Performance Preserving Minmax Optimality, ACM Trans. Mathematical Software 47(1)',
    number: null,
    year: 2020,
    kind: 'memory',
    note: 'root finder; convergence is tested over the whole domain',
  },
  practRand: {
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
    note: 'minimum ratios "typically" asked for',
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
  materialConstantsRecalled: {
    title: 'Material constants as recalled from handbooks and data sheets',
    number: null,
    year: null,
    kind: 'memory',
    note: 'the note of each material record gives the spread that is believed; replace by measured or maker values',
  },
  polyimideFilmTable: {
    title: 'Property table of polyimide film (tensile tests by ASTM D882)',
    number: null,
    year: null,
    kind: 'handbook',
    note: "film maker's data as reproduced in a university laboratory's table; 23 degC",
  },
  flexDielectricTable: {
    title: 'Table of dielectrics for flexible circuits in a fabricator guide',
    number: null,
    year: null,
    kind: 'handbook',
    note: 'no date given; moduli printed in psi',
  },
  commonPractice: {
    title: 'common practice of the trade',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no published source',
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

/**
 * A source in one line, as it stands beside a number on screen and in print. Recalled sources and unpublished
 * practice always say so.
 *
 * @example citeSource('iacs') gives 'IEC 60028, International standard of resistance for copper (1925)'
 */
export function citeSource(key: SourceKey): string {
  const { title, number, year, kind }: Source = SOURCES[key]
  const name = number === null ? title : `${number}, ${title}`
  const dated = year === null ? name : `${name} (${year})`
  switch (kind) {
    case 'memory':
      return `${dated}; from memory`
    case 'common-practice':
      return key === 'commonPractice' ? 'common practice, no published source' : `${dated}; common practice`
    default:
      return dated
  }
}
