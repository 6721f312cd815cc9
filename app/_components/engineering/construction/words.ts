import { getLayerKindLabel } from '@/lib/drawing'
import type { ConductorLayer, Layer, Zone } from '@/lib/engine'
import type { Choice } from '../cells'
import { LAYER_KINDS } from '../draft'

export const LAYER_KIND_CHOICES: readonly Choice<Layer['kind']>[] = LAYER_KINDS.map((kind) => ({
  value: kind,
  label: getLayerKindLabel(kind),
}))

export const ROLE_CHOICES: readonly Choice<ConductorLayer['role']>[] = [
  { value: 'signal', label: 'conductors' },
  { value: 'plane', label: 'plane' },
  { value: 'mixed', label: 'both' },
]

export const PLANE_CHOICES: readonly Choice<NonNullable<ConductorLayer['planePattern']>>[] = [
  { value: 'solid', label: 'solid' },
  { value: 'hatched', label: 'hatched' },
  { value: 'split', label: 'split' },
]

export const PLATING_CHOICES: readonly Choice<ConductorLayer['plating']['process']>[] = [
  { value: 'none', label: 'none' },
  { value: 'panel', label: 'panel' },
  { value: 'pattern', label: 'pattern' },
  { value: 'button', label: 'pads only' },
]

export const PLATED_COPPER_CHOICES: readonly Choice<NonNullable<Zone['presence'][number]['platedCopper']>>[] = [
  { value: 'whole', label: 'whole copper' },
  { value: 'pads-only', label: 'pads only' },
  { value: 'none', label: 'none' },
]

export const ZONE_KIND_CHOICES: readonly Choice<Zone['kind']>[] = [
  { value: 'rigid', label: 'rigid' },
  { value: 'flex', label: 'flex' },
  { value: 'stiffened', label: 'stiffened' },
  { value: 'finger', label: 'finger' },
]
