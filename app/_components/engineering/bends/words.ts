import type { Bend } from '@/lib/engine'
import type { Choice } from '../cells'

export const USE_CHOICES: readonly Choice<NonNullable<Bend['use']>>[] = [
  { value: 'fold-once', label: 'fold once at assembly' },
  { value: 'flex-to-install', label: 'flex to install' },
  { value: 'dynamic', label: 'dynamic, in service' },
]

export const MOTION_CHOICES: readonly Choice<Bend['motion']>[] = [
  { value: 'one-way', label: 'from flat to the radius and back' },
  { value: 'reversed', label: 'to both sides of flat' },
]

export const FACE_CHOICES: readonly Choice<Bend['insideFace']>[] = [
  { value: 'top', label: 'top face' },
  { value: 'bottom', label: 'bottom face' },
]

export const HOLDER_CHOICES: readonly Choice<NonNullable<Bend['radiusHeldBy']>>[] = [
  { value: 'former', label: 'a former' },
  { value: 'stop', label: 'a stop' },
  { value: 'channel', label: 'a channel' },
  { value: 'bonded-in-place', label: 'bonded in place' },
  { value: 'nothing', label: 'nothing' },
]

export function getUseLabel(use: string | null): string {
  return USE_CHOICES.find((choice) => choice.value === use)?.label ?? 'use not stated'
}
