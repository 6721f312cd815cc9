import type { Brief } from '../brief'
import { ARRAY_FIELDS, ASSEMBLY_FIELDS, TOLERANCE_FIELDS } from './assembly-fields'
import type { FieldsOf } from './field'
import { TERM_FIELDS } from './term-fields'

export const BRIEF_FIELDS = {
  partNumber: { label: 'Part number', question: 'What is the part number?' },
  revisionLabel: { label: 'Revision label' },
  quantityPerYear: { label: 'Quantity per year', unit: 'parts-per-year' },
  purpose: { label: 'Purpose', hint: 'What the circuit does, and how it moves.' },
  performanceClass: {
    label: 'Performance class',
    question: 'To which performance class of IPC-6013 is the part built and inspected?',
    choices: {
      'class-1': 'Class 1, general',
      'class-2': 'Class 2, dedicated service',
      'class-3': 'Class 3, high reliability',
    },
  },
  circuitType: {
    label: 'Type',
    inText: 'circuit type',
    hint: 'Types and uses of IPC-6013.',
    question: 'Which type of IPC-6013 is it?',
    choices: {
      'type-1': 'Type 1, single-sided flexible',
      'type-2': 'Type 2, double-sided flexible',
      'type-3': 'Type 3, multilayer flexible',
      'type-4': 'Type 4, multilayer rigid-flex',
      'type-5': 'Type 5, without plated holes',
    },
  },
  installationUses: {
    label: 'Uses',
    inText: 'installation uses',
    hint: 'All that apply.',
    question: 'Which uses of IPC-6013 apply: flexed to install, flexed in service, hot, or flame-rated?',
    choices: {
      'use-a': 'Use A, flexed to install',
      'use-b': 'Use B, flexed continuously',
      'use-c': 'Use C, above 105 °C',
      'use-d': 'Use D, recognised flammability rating',
    },
  },
  operatingMinDegC: {
    label: 'Lowest operating temperature',
    unit: 'degC',
    question: 'What is the lowest temperature in service?',
  },
  operatingMaxDegC: {
    label: 'Highest operating temperature',
    unit: 'degC',
    question: 'What is the highest temperature in service?',
  },
  flatAtDegC: {
    label: 'Temperature at which the part lies flat',
    inText: 'temperature at which the part lies flat',
    unit: 'degC',
    hint: 'Measured on a part of this build, with nothing holding it. Layers that expand differently curl it elsewhere.',
  },
  cycleMinDegC: {
    label: 'Temperature cycles, cold end',
    inText: 'cold end of the temperature cycles',
    unit: 'degC',
  },
  cycleMaxDegC: { label: 'Temperature cycles, hot end', inText: 'hot end of the temperature cycles', unit: 'degC' },
  temperatureCycles: {
    label: 'Temperature cycles',
    hint: 'That plated holes must outlast, in service or in a test.',
    unit: 'cycles',
  },
  holePlatingQuality: {
    label: 'Plating of hole walls',
    inText: 'quality of the plating of hole walls',
    hint: 'As sections of this fabricator’s holes show it.',
    choices: {
      extraordinary: 'extraordinary',
      superior: 'superior',
      good: 'good',
      marginal: 'marginal',
      poor: 'poor',
    },
  },
  surfaceFinish: {
    label: 'Surface finish',
    question: 'Which surface finish do the bare lands get?',
    choices: {
      'immersion-gold-over-electroless-nickel': 'immersion gold over electroless nickel',
      'immersion-gold-over-palladium-nickel': 'immersion gold over palladium and nickel',
      'electroplated-nickel-gold': 'electroplated nickel and gold',
      'immersion-tin': 'immersion tin',
      'immersion-silver': 'immersion silver',
      'organic-solderability-preservative': 'organic solderability preservative',
      'hot-air-solder-levelled': 'hot-air solder levelled',
      none: 'none',
    },
  },
  solderedAssembly: {
    label: 'Parts are soldered on',
    inText: 'soldered assembly',
    question: 'Are the parts soldered?',
  },
  panelForm: {
    label: 'Form of panel',
    inText: 'panel form',
    question: 'In which form are parts delivered: single, in arrays, or as we decide?',
    choices: {
      'single-parts': 'single parts',
      'assembly-arrays': 'arrays for assembly',
      'fabricator-decides': 'the fabricator decides',
    },
  },
  bakeBeforeAssembly: {
    label: 'Bake before assembly',
    question: 'Are parts baked before they are soldered, and by whom?',
  },
  packingAndHandling: { label: 'Packing and handling', question: 'How are the parts packed?' },
  electricalTest: {
    label: 'Electrical test asked for',
    inText: 'electrical test',
    question: 'Is every part tested electrically?',
  },
  couponTest: { label: 'Test coupons asked for', inText: 'coupon test', question: 'Are test coupons wanted?' },
  foldTest: { label: 'Fold test asked for', inText: 'fold test', question: 'Is a fold test wanted?' },
  toleranceScheme: {
    label: 'Tolerance and datum scheme',
    inText: 'tolerance scheme',
    hint: 'How a part that does not keep its shape is measured.',
    question: 'Which general tolerances and datums hold for the outline?',
  },
  assembly: { label: 'Assembly', fields: ASSEMBLY_FIELDS },
  tolerances: { label: 'Tolerances', inText: 'tolerance of', fields: TOLERANCE_FIELDS },
  array: { label: 'Array', fields: ARRAY_FIELDS },
  registrationCriticalFeatures: {
    label: 'Features that need tight registration',
    inText: 'registration critical features',
    question: 'Which features need close registration?',
  },
  manufacturingReviewDate: {
    label: 'Manufacturing review',
    inText: 'manufacturing review date',
    hint: 'With the fabricator, before layout freezes.',
  },
  layoutFreezeDate: { label: 'Layout freezes', inText: 'layout freeze date', hint: 'After this, changes cost.' },
  needDate: {
    label: 'Parts needed',
    inText: 'need date',
    hint: 'Latest order dates of materials follow from it.',
  },
  whoToAsk: {
    label: 'Whom to ask when in doubt',
    inText: 'who is asked when in doubt',
    question: 'Whom do we ask when in doubt?',
  },
  lifeSurvivalPct: { label: 'Share of parts that must survive', inText: 'survival percentile', unit: 'pct' },
  lifeWeibullSlope: { label: 'Weibull slope of fatigue life', inText: 'Weibull slope' },
  ratioTableKey: {
    label: 'Table of radius to thickness',
    inText: 'radius-to-thickness table',
    hint: 'Published tables differ by a factor of two to five, so the one compared with is named.',
  },
  ...TERM_FIELDS,
} as const satisfies FieldsOf<Brief>
