import type { Source } from './kinds'

/**
 * Sources that only the catalogue of review items cites. Guides of the trade disagree with each other; each limit's
 * note gives the spread that was found.
 */
export const CATALOGUE_SOURCES = {
  voltageSpacing: {
    title: 'Design rules for printed circuit boards, table 13-3: spacing by voltage',
    number: 'ECSS-Q-ST-70-12C',
    year: 2014,
    kind: 'quoted',
    quotedBy: 'notes on the table, not the table itself',
    note: 'bare 0.30 mm at 20 V and 0.50 mm at 36 V; coated 0.12 mm at 20 V, 0.16 mm at 36 V, 0.80 mm at 400 V. A coverlay is taken as a coating: our choice. The standard itself was not read',
  },
  ipc1601: {
    title: 'Printed Board Handling and Storage Guidelines',
    number: 'IPC-1601',
    year: 2010,
    kind: 'quoted',
    quotedBy: 'trade articles',
    note: 'prefers dry handling to baking; profiles belong to the maker of film and finish',
  },
  ipc4203: {
    title: 'Cover and Bonding Material for Flexible Printed Circuitry',
    number: 'IPC-4203',
    year: 2002,
    kind: 'abstract',
    note: 'scope read, not the sheets; coated films and bonding films are called out by sheet number and thickness',
  },
  ipc4204: {
    title: 'Flexible Metal-Clad Dielectrics for Use in Fabrication of Flexible Printed Circuitry',
    number: 'IPC-4204',
    year: 2002,
    kind: 'abstract',
    note: 'scope read, not the sheets; clads are called out by sheet number and thickness',
  },
  guideMoisture: {
    title: 'fabricator guide on flexible dielectrics, and an article on baking',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; polyimide takes up 0.8 to 2.9 % of water in 24 h of immersion, about 2 % at 20 degC and 50 % humidity',
  },
  filletConcentration: {
    title: "Peterson's Stress Concentration Factors: stepped flat bar with shoulder fillets, tension",
    number: null,
    year: 1997,
    kind: 'quoted',
    quotedBy: 'a public calculation sheet',
    note: 'polynomial in fillet radius and step height; holds for t/r from 0.1 to 20',
  },
  guideCircuitConstruction: {
    title: 'fabricator guide on circuit construction',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; plated hole to bend 1.27 mm, coverlay opening to bend 2.54 mm',
  },
  guideTransitionZone: {
    title: 'fabricator guide on the rigid-to-flex transition',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; plated hole at least 1.27 mm from it; other guides say 0.76, 0.8 and 1.5 mm; 3.18 mm is remembered from IPC-2223, not read',
  },
  guideTransition2017: {
    title: 'fabricator guide on flexible circuits',
    number: null,
    year: 2017,
    kind: 'common-practice',
    note: 'plated hole to the rigid-to-flex transition 0.8 mm; land = pad + 0.15 to 0.26 mm; copper to outline 0.35 mm',
  },
  guideHighReliability: {
    title: 'fabricator guide for high-reliability rigid-flex',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; plated hole to the transition 0.075 in, copper to outline 0.050 in, land = hole + 0.50 mm',
  },
  workspaceRule: {
    title: 'a rule of the workspace',
    number: null,
    year: null,
    kind: 'own-choice',
    note: 'where it comes from stands with the item or the profile',
  },
  guideRigidFlex2012: {
    title: 'fabricator guide on rigid-flex design rules',
    number: null,
    year: 2012,
    kind: 'common-practice',
    note: 'length of the flex area between rigid parts 5 mm, least 2.5 mm; hole land 0.40 mm over the hole; inside corner of the outline 1.0 mm; copper to outline 0.30 mm, better 0.50 mm',
  },
  guideRigidFlex2023: {
    title: 'fabricator guide on rigid-flex design rules',
    number: null,
    year: 2023,
    kind: 'common-practice',
    note: 'bends at least 2 mm from a stiffened connector end',
  },
  guideDesignRules: {
    title: 'fabricator guide on flexible circuit design rules',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; copper to outline 0.5 mm here, elsewhere from 0.10 to 0.70 mm; the opening 0.2 mm smaller than the land',
  },
  guideCoverlayOpenings: {
    title: 'fabricator guide with tables of tolerances and least coverlay openings',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; least opening found as 0.8 mm, 0.5 mm and 0.2 mm',
  },
  guideCapabilityTable: {
    title: 'fabricator guide with a capability table',
    number: null,
    year: null,
    kind: 'common-practice',
    note: 'no date given; coverlay web 0.20 mm',
  },
} as const satisfies Record<string, Source>
