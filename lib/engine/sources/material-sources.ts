/** Sources of the material library's constants. */
export const MATERIAL_SOURCES = {
  materialConstantsRecalled: {
    title: 'material constants of engineering handbooks and data sheets',
    number: null,
    year: null,
    kind: 'memory',
    note: "recalled mid-range figures; each material's note gives the spread. Replace them by the supplier's data",
  },
  polyimideFilmTable: {
    title: "film maker's property table of polyimide film, as reproduced by a university laboratory",
    number: null,
    year: null,
    kind: 'handbook',
    note: 'PMDA-ODA type at 23 degC: 2.5 GPa (370 000 psi), Poisson ratio 0.34, 1.42 g/cm3, elongation 72 %',
  },
  platedCopperLinearised: {
    title: 'Reliability Prediction: Physics of Failure, appendix F, plated copper as two straight lines',
    number: 'ANSI/VITA 51.1',
    year: 2013,
    kind: 'standard',
    note: 'reaffirmed 2018, after IPC-TR-579; quoted after a public implementation: 82.7 GPa, yield 172 MPa, strength 276 MPa, ductility 0.30',
  },
  flexDielectricTable: {
    title: 'fabricator guide, table of dielectrics for flexible circuits',
    number: null,
    year: null,
    kind: 'handbook',
    note: 'adhesive clad 430 000 psi, adhesiveless 700 000 psi (printed ten times too small), permittivity 3.4 at 1 MHz; no date given',
  },
} as const
