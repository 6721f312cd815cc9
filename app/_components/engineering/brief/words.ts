import type { Brief } from '@/lib/engine'
import type { Choice } from '../cells'

export const CLASS_CHOICES: readonly Choice<NonNullable<Brief['performanceClass']>>[] = [
  { value: 'class-1', label: 'Class 1, general' },
  { value: 'class-2', label: 'Class 2, dedicated service' },
  { value: 'class-3', label: 'Class 3, high reliability' },
]

export const TYPE_CHOICES: readonly Choice<NonNullable<Brief['circuitType']>>[] = [
  { value: 'type-1', label: 'Type 1, single-sided flexible' },
  { value: 'type-2', label: 'Type 2, double-sided flexible' },
  { value: 'type-3', label: 'Type 3, multilayer flexible' },
  { value: 'type-4', label: 'Type 4, multilayer rigid-flex' },
  { value: 'type-5', label: 'Type 5, without plated holes' },
]

export const USE_CHOICES: readonly Choice<NonNullable<Brief['installationUse']>>[] = [
  { value: 'use-a', label: 'Use A, flexed to install' },
  { value: 'use-b', label: 'Use B, flexed continuously' },
  { value: 'use-c', label: 'Use C, above 105 °C' },
  { value: 'use-d', label: 'Use D, recognised flammability rating' },
]

export const FINISH_CHOICES: readonly Choice<NonNullable<Brief['surfaceFinish']>>[] = [
  { value: 'immersion-gold-over-electroless-nickel', label: 'immersion gold over electroless nickel' },
  { value: 'immersion-gold-over-palladium-nickel', label: 'immersion gold over palladium and nickel' },
  { value: 'electroplated-nickel-gold', label: 'electroplated nickel and gold' },
  { value: 'immersion-tin', label: 'immersion tin' },
  { value: 'immersion-silver', label: 'immersion silver' },
  { value: 'organic-solderability-preservative', label: 'organic solderability preservative' },
  { value: 'hot-air-solder-levelled', label: 'hot-air solder levelled' },
  { value: 'none', label: 'none' },
]

export const PANEL_CHOICES: readonly Choice<NonNullable<Brief['panelForm']>>[] = [
  { value: 'single-parts', label: 'single parts' },
  { value: 'assembly-arrays', label: 'arrays for assembly' },
  { value: 'fabricator-decides', label: 'the fabricator decides' },
]
