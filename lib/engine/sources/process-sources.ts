import type { Source } from './kinds'

/** Sources on plating, finishes and other steps of the process. */
export const PROCESS_SOURCES = {
  holePlating: {
    title: 'Printed Circuits Handbook, 7th edition, 66.2.5: copper in plated holes of flexible circuits',
    number: null,
    year: 2016,
    kind: 'quoted',
    quotedBy: 'a public digest of the book',
    note: 'about 15 um is enough on flex, 20 um nominal, more than 25 um for high reliability; plating of holes only near dynamic zones',
  },
  ipc4552: {
    title: 'Specification for Electroless Nickel/Immersion Gold (ENIG) Plating for Printed Circuit Boards',
    number: 'IPC-4552',
    year: 2002,
    kind: 'quoted',
    quotedBy:
      'a public digest of the Printed Circuits Handbook (2016), chapter 35, and engineers on a public mailing list',
    note: 'nickel 3 to 6 um, gold at least 0.05 um; the engineers report cracks at bends with it and none at 1 to 3 um. Read twice removed, and editions differ: check the one in force',
  },
  ipc4556: {
    title: 'Specification for Electroless Nickel/Electroless Palladium/Immersion Gold (ENEPIG) Plating',
    number: 'IPC-4556',
    year: null,
    kind: 'quoted',
    quotedBy: 'a public digest of the Printed Circuits Handbook (2016), chapter 35',
    note: 'nickel 3 to 6 um, palladium 0.05 to 0.15 um, gold at least 0.025 um. Read twice removed, and editions differ: check the one in force',
  },
  ipc4553: {
    title: 'Specification for Immersion Silver Plating for Printed Boards',
    number: 'IPC-4553A',
    year: null,
    kind: 'quoted',
    quotedBy: 'a public digest of the Printed Circuits Handbook (2016), chapter 35',
    note: '0.12 to 0.4 um. Read twice removed, and editions differ: check the one in force',
  },
  ipc4554: {
    title: 'Specification for Immersion Tin Plating for Printed Circuit Boards',
    number: 'IPC-4554',
    year: null,
    kind: 'quoted',
    quotedBy: 'a public digest of the Printed Circuits Handbook (2016), chapter 35',
    note: 'at least 1.0 um. Read twice removed, and editions differ: check the one in force',
  },
  minimumCopperRecalled: {
    title: 'Minimum finished copper, rows other than 1/2, 1 and 2 oz',
    number: 'IPC-6012 / IPC-6013',
    year: null,
    kind: 'memory',
    note: 'recalled table rows: foil minimum, plating minimum, processing reduction',
  },
} as const satisfies Record<string, Source>
