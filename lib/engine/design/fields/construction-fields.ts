import type { ConductorLayer, Zone } from '../construction'
import { LAYER_KIND_NAMES } from '../layer-kinds'
import { type FieldsOf, LAYER_FIELD, NAMED_FIELDS } from './field'

/** Fields of every kind of layer: conductor layers have them all. */
export const LAYER_FIELDS = {
  ...NAMED_FIELDS,
  kind: { label: 'Kind', choices: LAYER_KIND_NAMES },
  materialId: { label: 'Material' },
  thicknessUm: { label: 'Thickness', unit: 'um' },
  tolerancePlusUm: { label: 'Tolerance over', head: 'Over +', inText: 'upper tolerance', unit: 'um' },
  toleranceMinusUm: { label: 'Tolerance under', head: 'Under −', inText: 'lower tolerance', unit: 'um' },
  role: { label: 'Carries', inText: 'role', choices: { signal: 'conductors', plane: 'plane', mixed: 'both' } },
  planePattern: {
    label: 'Plane',
    inText: 'plane pattern',
    choices: { solid: 'solid', hatched: 'hatched', split: 'split', none: 'no plane' },
  },
  coverageFraction: { label: 'Copper share', inText: 'coverage' },
  plating: {
    label: 'Plating',
    fields: {
      process: {
        label: 'Plating',
        inText: 'process',
        // The stored word for plating of lands and pads alone is older than the trade's.
        choices: { none: 'none', panel: 'panel', pattern: 'pattern', button: 'pads only' },
      },
      thicknessUm: { label: 'Plated copper', head: 'Plated +', inText: 'thickness', unit: 'um' },
      toleranceUm: { label: 'Tolerance of plating', head: 'Plating ±', inText: 'tolerance', unit: 'um' },
      materialId: { label: 'Plating material', inText: 'material' },
    },
  },
  processingLossUm: { label: 'Loss in process', head: 'Loss in process −', inText: 'processing loss', unit: 'um' },
} as const satisfies FieldsOf<Omit<ConductorLayer, 'kind'>> & Record<'kind', unknown>

export const ZONE_FIELDS = {
  ...NAMED_FIELDS,
  kind: {
    label: 'Kind',
    choices: { rigid: 'rigid', flex: 'flex', stiffened: 'stiffened', finger: 'finger' },
  },
  lengthMm: { label: 'Length', unit: 'mm' },
  widthMm: { label: 'Width', unit: 'mm' },
  presence: {
    label: 'Layers present',
    entry: {
      layerId: LAYER_FIELD,
      coverageFraction: { label: 'Copper share', inText: 'coverage' },
      platedCopper: {
        label: 'Plated copper',
        choices: { whole: 'whole copper', 'pads-only': 'pads only', none: 'none' },
      },
      hatch: {
        label: 'Hatch',
        fields: {
          barMm: { label: 'Bar of the hatch', head: 'Hatch bar', inText: 'bar', unit: 'mm' },
          pitchMm: { label: 'Pitch of the hatch', head: 'Hatch pitch', inText: 'pitch', unit: 'mm' },
          angleDeg: { label: 'Angle of the bars to the length, degrees', head: 'Angle', inText: 'angle', unit: 'deg' },
        },
      },
    },
  },
  connectorWindow: {
    label: 'Connector accepts',
    inText: 'connector window',
    fields: {
      minUm: { label: 'Minimum thickness for the connector', inText: 'minimum thickness', unit: 'um' },
      maxUm: { label: 'Maximum thickness for the connector', inText: 'maximum thickness', unit: 'um' },
    },
  },
  contactFinish: {
    label: 'Finish on contacts',
    fields: {
      thicknessUm: {
        label: 'Thickness of the finish on the contacts',
        head: 'Finish on its contacts',
        inText: 'thickness',
        unit: 'um',
      },
      toleranceUm: { label: 'Tolerance of the finish', head: 'Finish ±', inText: 'tolerance', unit: 'um' },
    },
  },
  statedThicknessUm: { label: 'Stated thickness', head: 'Stated', unit: 'um' },
  statedToleranceUm: {
    label: 'Stated tolerance, ±',
    head: 'Stated ±',
    inText: 'stated tolerance',
    unit: 'um',
  },
  throughExpansionPpmPerC: {
    label: 'Expansion through the thickness',
    head: 'Expansion through',
    hint: 'Of the bonded stack, measured below its glass transition.',
    unit: 'ppm-per-degC',
  },
  throughModulusGpa: { label: 'Modulus through the thickness', head: 'Modulus through', unit: 'gpa' },
  glassTransitionDegC: { label: 'Glass transition', head: 'Glass transition', unit: 'degC' },
} as const satisfies FieldsOf<Zone>
