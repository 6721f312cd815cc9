import type { Brief } from '../brief'
import type { FieldsOf } from './field'

export const ASSEMBLY_FIELDS = {
  solderPeakDegC: { label: 'Peak of the solder profile', inText: 'peak of the solder profile', unit: 'degC' },
  coverlayRatingDegC: {
    label: 'Coverlay bears in soldering',
    inText: 'what the coverlay bears in soldering',
    hint: 'Film or adhesive, the lower, by the maker’s sheet.',
    unit: 'degC',
  },
  carrier: {
    label: 'Held flat by',
    inText: 'carrier',
    hint: 'While paste, components and heat come.',
    choices: {
      pallet: 'a pallet',
      'array-frame': 'the frame of the array',
      'vacuum-plate': 'a vacuum plate',
      tape: 'tape on a plate',
      nothing: 'nothing',
    },
  },
  drying: {
    label: 'Dried by',
    inText: 'drying',
    choices: { bake: 'a bake before soldering', 'dry-pack': 'a dry pack opened in time' },
  },
  bakeDegC: { label: 'Bake temperature', unit: 'degC' },
  bakeHours: { label: 'Bake time', unit: 'hours' },
  toSolderHours: { label: 'From oven or pack to soldering', inText: 'time to soldering', unit: 'hours' },
  dryingSetBy: {
    label: 'Drying set by',
    inText: 'who sets the drying',
    choices: { 'film-maker': 'the film maker', assembler: 'the assembler', 'own-trial': 'a trial of our own' },
  },
  packedAs: {
    label: 'Packed',
    inText: 'packing',
    choices: {
      'flat-between-boards': 'flat between boards',
      trays: 'in trays',
      carrier: 'on a carrier',
      reel: 'on reels',
      bags: 'loose in bags',
    },
  },
  isDryPacked: { label: 'Dry pack with indicator', inText: 'whether it is dry packed' },
  storageMonths: { label: 'Storage before assembly, longest', inText: 'longest storage', unit: 'months' },
} as const satisfies FieldsOf<Brief['assembly']>

export const TOLERANCE_FIELDS = {
  outlineMm: { label: 'Outline, ±', inText: 'outline ±', unit: 'mm' },
  holeMm: { label: 'Hole diameter, ±', inText: 'hole diameter ±', unit: 'mm' },
  holeToEdgeMm: { label: 'Hole to edge, ±', inText: 'hole to edge ±', unit: 'mm' },
  stiffenerMm: { label: 'Stiffener position, ±', inText: 'stiffener position ±', unit: 'mm' },
  coverlayMm: { label: 'Coverlay position, ±', inText: 'coverlay position ±', unit: 'mm' },
  bendPositionMm: { label: 'Bend position, ±', inText: 'bend position ±', unit: 'mm' },
} as const satisfies FieldsOf<Brief['tolerances']>

export const ARRAY_FIELDS = {
  partCount: { label: 'Parts in the array', inText: 'number of parts' },
  frameWidthMm: { label: 'Width of the frame', inText: 'frame width', unit: 'mm' },
  tabsOffFlex: { label: 'Tabs off the flexible edges', inText: 'whether tabs stay off the flexible edges' },
  fiducials: { label: 'Fiducials', inText: 'whether there are fiducials' },
  toolingHoles: { label: 'Tooling holes', inText: 'whether there are tooling holes' },
  badPartMark: { label: 'Mark for bad parts', inText: 'whether bad parts are marked' },
} as const satisfies FieldsOf<Brief['array']>
