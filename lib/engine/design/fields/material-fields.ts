import type { Material } from '../material'
import { type FieldsOf, NAMED_FIELDS } from './field'

export const MATERIAL_FIELDS = {
  ...NAMED_FIELDS,
  kind: {
    label: 'Kind',
    choices: {
      'copper-foil': 'copper foil',
      'polymer-film': 'polymer film',
      adhesive: 'adhesive',
      prepreg: 'prepreg',
      'rigid-laminate': 'rigid laminate',
      'solder-mask': 'solder mask',
      'metal-sheet': 'metal sheet',
      'shield-film': 'shield film',
    },
  },
  specification: { label: 'Specification' },
  modulusGpa: { label: 'Modulus', unit: 'gpa' },
  poisson: { label: "Poisson's ratio", inText: "Poisson's ratio" },
  densityGPerCm3: { label: 'Density', unit: 'g-per-cm3' },
  maxServiceDegC: { label: 'Highest service temperature', inText: 'max service', unit: 'degC' },
  maxSolderDegC: { label: 'Highest solder peak', inText: 'max solder peak', unit: 'degC' },
  relativePermittivity: { label: 'Relative permittivity' },
  expansionPpmPerC: { label: 'Thermal expansion', unit: 'ppm-per-degC' },
  yieldStrainPct: { label: 'Yield strain', unit: 'pct' },
  flowFraction: { label: 'Share that can flow', inText: 'flow' },
  foil: {
    label: 'Foil',
    fields: {
      type: {
        label: 'Type of foil',
        inText: 'type',
        choices: {
          'rolled-annealed': 'rolled annealed',
          electrodeposited: 'electrodeposited',
          plated: 'plated',
        },
      },
      yieldStrengthMpa: { label: 'Yield strength', unit: 'mpa' },
      tensileStrengthMpa: { label: 'Tensile strength', unit: 'mpa' },
      fatigueDuctility: { label: 'Fatigue ductility' },
      allowableFoldOncePct: { label: 'Allowable elongation, one fold', inText: 'allowable fold once', unit: 'pct' },
      allowableInstallPct: { label: 'Allowable elongation, to install', inText: 'allowable install', unit: 'pct' },
      resistivityOhmMm2PerM: { label: 'Resistivity', unit: 'ohm-mm2-per-m' },
    },
  },
  note: { label: 'Note' },
} as const satisfies FieldsOf<Material>
