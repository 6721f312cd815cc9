import type { Brief } from '../brief'
import type { FieldsOf } from './field'

const MEASURED_BY = {
  fabricator: 'the fabricator',
  'own-team': 'our own team',
  independent: 'an independent laboratory',
  nobody: 'nobody',
} as const
const MARK_PLACES = { 'on-part': 'on the part', 'on-packing': 'on the packing', none: 'not marked' } as const
const CHANGE_RULES = { approval: 'after approval', notice: 'after notice', free: 'at any time' } as const
const SUBSTITUTE_RULES = {
  'ask-first': 'ask first',
  'same-specification': 'any of the same specification sheet',
  equivalent: 'any that the fabricator takes as equivalent',
} as const
const OUTLINE_TOOLS = {
  laser: 'laser',
  'steel-rule-die': 'steel-rule die',
  'hard-die': 'hard die',
  router: 'router',
} as const
const EXPOSURES = { none: 'none', splash: 'now and then', constant: 'constant' } as const

type TermRecord = 'acceptance' | 'finishTerms' | 'marking' | 'agreements' | 'exposure' | 'outgassing'

/** Words of the terms that a brief states in records. */
export const TERM_FIELDS = {
  acceptance: {
    label: 'Test and acceptance',
    inText: '',
    fields: {
      testVoltageVolt: { label: 'Test voltage', unit: 'volt' },
      continuityOhm: { label: 'Continuity, at most', inText: 'continuity limit', unit: 'ohm' },
      isolationMegohm: { label: 'Isolation, at least', inText: 'isolation limit', unit: 'megohm' },
      hasSurfaceMountParts: { label: 'Surface-mount parts', inText: 'whether there are surface-mount parts' },
      bowAndTwistPct: {
        label: 'Bow and twist, at most',
        inText: 'bow and twist',
        hint: 'Of rigid and stiffened areas.',
        unit: 'pct',
      },
      solderingsOnCount: {
        label: 'Solderings a land must bear',
        inText: 'number of solderings',
        hint: 'The first one included.',
      },
      solderingsOffCount: { label: 'Removals a land must bear', inText: 'number of removals' },
      flameClass: {
        label: 'Flame class',
        hint: 'UL 94, of the finished construction.',
        choices: {
          'not-asked': 'none asked for',
          'v-0': 'V-0',
          'v-1': 'V-1',
          'v-2': 'V-2',
          'vtm-0': 'VTM-0',
          'vtm-1': 'VTM-1',
          'vtm-2': 'VTM-2',
          hb: 'HB',
        },
      },
      flameClassHeld: {
        label: 'Class held by the fabricator',
        inText: 'whether the fabricator holds the flame class',
        hint: 'For this very construction: recognition goes by construction.',
      },
      firstArticleCount: { label: 'First article, pieces', inText: 'pieces measured of the first lot' },
      measuredFlatBy: { label: 'Measured flat by', inText: 'who measures the first lot flat', choices: MEASURED_BY },
      measuredFoldedBy: {
        label: 'Measured folded by',
        inText: 'who measures the first lot folded',
        choices: MEASURED_BY,
      },
      sectionsBy: { label: 'Sections cut by', inText: 'who cuts sections of the first lot', choices: MEASURED_BY },
    },
  },
  finishTerms: {
    label: 'Surface finish, terms',
    inText: '',
    fields: {
      standard: {
        label: 'Finish ordered to',
        inText: 'specification of the finish',
        choices: {
          'ipc-4552': 'IPC-4552',
          'ipc-4553': 'IPC-4553',
          'ipc-4554': 'IPC-4554',
          'ipc-4555': 'IPC-4555',
          'ipc-4556': 'IPC-4556',
          'astm-b488': 'ASTM B488',
          'named-on-order': 'another, named on the order',
        },
      },
      topMetalUm: {
        label: 'Finish, top metal',
        inText: 'thickness of the top metal of the finish',
        hint: 'Least thickness of gold, silver, tin or solder.',
        unit: 'um',
      },
      nickelUm: { label: 'Finish, nickel', inText: 'thickness of the nickel of the finish', unit: 'um' },
      palladiumUm: { label: 'Finish, palladium', inText: 'thickness of the palladium of the finish', unit: 'um' },
    },
  },
  marking: {
    label: 'Marking',
    inText: 'marking:',
    fields: {
      partNumber: { label: 'Part number and revision', choices: MARK_PLACES },
      lotOrDate: { label: 'Lot or date code', choices: MARK_PLACES },
      flameMark: { label: 'Flame class mark', choices: MARK_PLACES },
      method: {
        label: 'Marked in',
        inText: 'method',
        choices: { ink: 'ink', copper: 'copper', laser: 'laser', label: 'a label' },
      },
      area: {
        label: 'Marked on',
        inText: 'area',
        choices: {
          rigid: 'a rigid zone',
          stiffened: 'a stiffened zone',
          'flex-beside-bends': 'film, outside the bends',
          'flex-in-bend': 'film, within a bend',
        },
      },
      letterHeightMm: { label: 'Letter height', unit: 'mm' },
      lineWidthMm: { label: 'Line width of letters', unit: 'mm' },
      toPadMm: { label: 'Marking to pads', inText: 'distance to pads', unit: 'mm' },
    },
  },
  agreements: {
    label: 'Agreed with the fabricator',
    inText: '',
    fields: {
      orderOrDrawing: {
        label: 'Order or drawing, which wins',
        inText: 'which of order and drawing wins',
        choices: { order: 'the order', drawing: 'the drawing' },
      },
      drawingOrArtwork: {
        label: 'Drawing or artwork, which wins',
        inText: 'which of drawing and artwork wins',
        choices: { drawing: 'the drawing', artwork: 'the artwork' },
      },
      drawingOrStandard: {
        label: 'Drawing or standard, which wins',
        inText: 'which of drawing and standard wins',
        choices: { drawing: 'the drawing', standard: 'the standard' },
      },
      materialChange: { label: 'Change of material', choices: CHANGE_RULES },
      processChange: { label: 'Change of process', choices: CHANGE_RULES },
      siteChange: { label: 'Change of site', choices: CHANGE_RULES },
      panelChange: { label: 'Change of panel', choices: CHANGE_RULES },
      copperSubstitute: { label: 'Other copper foil', inText: 'rule for other copper foil', choices: SUBSTITUTE_RULES },
      filmSubstitute: { label: 'Other film', inText: 'rule for other film', choices: SUBSTITUTE_RULES },
      adhesiveSubstitute: { label: 'Other adhesive', inText: 'rule for other adhesive', choices: SUBSTITUTE_RULES },
      boardSubstitute: {
        label: 'Other board material',
        inText: 'rule for other board material',
        choices: SUBSTITUTE_RULES,
      },
      prototypeTool: {
        label: 'Outline of prototypes cut by',
        inText: 'tool for the outline of prototypes',
        choices: OUTLINE_TOOLS,
      },
      seriesTool: {
        label: 'Outline in series cut by',
        inText: 'tool for the outline in series',
        choices: OUTLINE_TOOLS,
      },
      limitsHoldForSeries: {
        label: 'Limits hold for the series tool',
        inText: 'whether limits hold for the series tool',
        hint: 'Where the two tools differ.',
      },
      hasPredecessor: { label: 'There was a part before this one', inText: 'whether there was a part before this one' },
      lessonsReviewed: {
        label: 'Its findings were gone through',
        inText: 'whether findings on the part before were gone through',
      },
      isRestricted: {
        label: 'Restricted substances kept out',
        inText: 'whether restricted substances are kept out',
        hint: 'Directive 2011/65/EU.',
      },
      isDeclared: {
        label: 'Substances of concern declared',
        inText: 'whether substances of concern are declared',
        hint: 'Regulation (EC) 1907/2006.',
      },
      isHalogenFree: {
        label: 'Halogen-free',
        inText: 'whether the part is halogen-free',
        hint: 'IEC 61249-2-21 for the materials.',
      },
    },
  },
  exposure: {
    label: 'Exposure in service',
    inText: '',
    fields: {
      skinContact: {
        label: 'Contact with skin, in all',
        inText: 'time of contact with skin',
        hint: 'Times of ISO 10993-1.',
        choices: {
          none: 'no contact',
          'up-to-24-hours': 'up to 24 h',
          'up-to-30-days': 'over 24 h, up to 30 days',
          longer: 'over 30 days',
        },
      },
      touchedFace: {
        label: 'Face that touches skin',
        choices: { top: 'top', bottom: 'bottom', both: 'both' },
      },
      openFinishCovered: {
        label: 'Finish covered where worn',
        inText: 'whether open finish is covered where worn',
      },
      skinMaterialsEvaluated: {
        label: 'Materials evaluated for contact',
        inText: 'whether materials were evaluated for contact',
      },
      hasWetEdges: {
        label: 'Edges get wet',
        inText: 'whether edges get wet',
        hint: 'By sweat, condensation or cleaning.',
      },
      sealedBy: {
        label: 'Wet edges sealed by',
        inText: 'seal of wet edges',
        choices: { housing: 'the housing', potting: 'potting', coating: 'a coating', nothing: 'nothing' },
      },
      ionicLimitUgPerCm2: {
        label: 'Ionic residue, at most',
        inText: 'limit of ionic residue',
        hint: 'Sodium chloride equivalent.',
        unit: 'ug-per-cm2',
      },
      cleaning: {
        label: 'Cleaning',
        choices: { none: 'none', water: 'water', 'saponified-water': 'water with saponifier', solvent: 'solvent' },
      },
      dryingDegC: { label: 'Drying temperature', unit: 'degC' },
      dryingHours: { label: 'Drying time', unit: 'hours' },
      hasAntenna: { label: 'Antenna on or near the part', inText: 'whether there is an antenna' },
      antennaKeepOutMm: { label: 'Antenna, keep-out', inText: 'keep-out of the antenna', unit: 'mm' },
      antennaToMetalMm: {
        label: 'Antenna to nearest metal, folded',
        inText: 'distance from antenna to metal when folded',
        unit: 'mm',
      },
      dischargeEntry: {
        label: 'Discharge can enter at',
        inText: 'where a discharge can enter',
        choices: {
          nowhere: 'nowhere: enclosed',
          connector: 'a connector',
          'cut-edge': 'a cut edge',
          'touched-face': 'a face that people touch',
        },
      },
      dischargePath: {
        label: 'Discharge goes to',
        inText: 'where a discharge goes',
        choices: {
          chassis: 'the chassis',
          'guard-conductor': 'a guard conductor',
          suppressor: 'a suppressor',
          nothing: 'nothing provided',
        },
      },
      pullForceNewton: {
        label: 'Pull in handling or service',
        inText: 'pull force',
        hint: '0 where nobody pulls.',
        unit: 'newton',
      },
      pullFeature: {
        label: 'Pulled by',
        inText: 'what the part is pulled by',
        choices: { tab: 'a tab', hole: 'a reinforced hole', nothing: 'nothing provided' },
      },
      movesWhenCold: {
        label: 'Moves at its lowest temperature',
        inText: 'whether it moves at its lowest temperature',
      },
      coldTestDegC: { label: 'Flexing tested down to', inText: 'lowest temperature of the flex test', unit: 'degC' },
      oils: { label: 'Oils and fuels', choices: EXPOSURES },
      coolants: { label: 'Coolants', choices: EXPOSURES },
      cleaners: { label: 'Cleaners and disinfectants', choices: EXPOSURES },
      light: { label: 'Sunlight or ultraviolet light', choices: EXPOSURES },
      fluidsWithstood: {
        label: 'Materials withstand them',
        inText: 'whether the materials withstand them',
      },
    },
  },
  outgassing: {
    label: 'Outgassing',
    hint: 'ASTM E595 figures of the very material.',
    entry: {
      materialId: { label: 'Material' },
      totalLossPct: { label: 'Total mass loss', unit: 'pct' },
      condensablePct: { label: 'Condensable', inText: 'condensable matter', unit: 'pct' },
    },
  },
} as const satisfies Pick<FieldsOf<Brief>, TermRecord>
