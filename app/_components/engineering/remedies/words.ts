import type { Remedy } from '@/lib/engine'
import { digitsAsComputed } from '@/lib/engine/units'

/** `Pads-only plating and larger radius`. */
export function nameRemedy({ changes }: Remedy): string {
  return changes
    .map(({ title }, at) => (at === 0 ? title : `${title.charAt(0).toLowerCase()}${title.slice(1)}`))
    .join(' and ')
}

/** Strain as a multiple of the allowable, each at its worst corner of tolerances and material constants. */
export function formatStrainShare(marginFraction: number | null): string {
  return digitsAsComputed(marginFraction === null ? null : 1 - marginFraction, 'loadFraction')
}
