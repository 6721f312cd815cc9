import type { RegistrationDemand, StepGroup, StepUnit } from '@/lib/fabrication'

export const UNIT_WORDS: Readonly<Record<StepUnit, string>> = {
  'per-square-metre-of-layer': 'per m² of a layer',
  'per-layer': 'per layer of a panel',
  'per-lamination': 'per press cycle',
  'per-cycle': 'per further cycle',
  'per-panel': 'per panel',
  'per-opening': 'per opening or hole of a part',
  'per-part': 'per part',
}

export const GROUP_WORDS: Readonly<Record<StepGroup, string>> = {
  materials: 'Materials',
  layers: 'Conductor layers',
  coverlay: 'Coverlay',
  press: 'Press cycles',
  holes: 'Holes and plating',
  outside: 'Outside',
  parts: 'Single parts',
}

export const DEMAND_WORDS: Readonly<Record<RegistrationDemand, string>> = {
  loose: 'Loose',
  ordinary: 'Ordinary',
  tight: 'Tight',
}
