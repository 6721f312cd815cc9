import type { Source } from './kinds'

/** Sources of the material library's constants. */
export const MATERIAL_SOURCES = {
  materialConstantsRecalled: {
    title: 'Material constants as recalled from handbooks and data sheets',
    number: null,
    year: null,
    kind: 'memory',
    note: 'the note of each material record gives the spread that is believed; replace by measured or maker values',
  },
  polyimideFilmTable: {
    title: "Film maker's property table of polyimide film (tensile tests by ASTM D882)",
    number: null,
    year: null,
    kind: 'quoted',
    quotedBy: "a university laboratory's copy of it",
    note: 'PMDA-ODA type at 23 degC: 2.5 GPa (370 000 psi), Poisson ratio 0.34, 1.42 g/cm3, elongation 72 %, expansion 20 ppm/degC',
  },
  platedCopperLinearised: {
    title: 'Reliability Prediction: Physics of Failure, appendix F, plated copper as two straight lines',
    number: 'ANSI/VITA 51.1',
    year: 2013,
    kind: 'quoted',
    quotedBy: 'a public implementation of it',
    note: 'reaffirmed 2018, after IPC-TR-579: 82.7 GPa, yield 172 MPa, strength 276 MPa, ductility 0.30',
  },
  flexDielectricTable: {
    title: 'Table of dielectrics for flexible circuits in a fabricator guide',
    number: null,
    year: null,
    kind: 'published',
    note: 'no date given; adhesive clad 430 000 psi, adhesiveless 700 000 psi (printed ten times too small), permittivity 3.4 at 1 MHz',
  },
  filmExpansionGrades: {
    title: 'Printed Circuits Handbook, 7th edition, 65.5.2.1: polyimide films by grade',
    number: null,
    year: 2016,
    kind: 'quoted',
    quotedBy: 'a public digest of the book',
    note: 'general grades expand by more than 30 ppm/degC, stable grades by less: unfit for fine pitch. One maker states 20 ppm/degC: a question of grade, show both. No upper end is given: 40 ppm/degC is our choice',
  },
  boardExpansionSurvey: {
    title:
      'Printed Circuits Handbook, 7th edition, 60.4.3, 63.6.1 and 69.3: boards surveyed, and one reinforced laminate',
    number: null,
    year: 2016,
    kind: 'quoted',
    quotedBy: 'a public digest of the book',
    note: 'in plane 12 to 21 ppm/degC over the boards surveyed, 20 and 23 along and across one laminate: measure, there is no typical value',
  },
} as const satisfies Record<string, Source>
