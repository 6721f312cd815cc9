import type { Remedy } from '@/lib/engine'
import { digitsAsComputed } from '@/lib/engine/units'

/** `Pads-only plating and larger radius`. */
export function nameRemedy({ changes }: Remedy): string {
  return changes
    .map(({ title }, at) => (at === 0 ? title : `${title.charAt(0).toLowerCase()}${title.slice(1)}`))
    .join(' and ')
}

/** Strain at the worst tolerances as a multiple of the allowable. */
export function formatStrainShare(marginFraction: number | null): string {
  return digitsAsComputed(marginFraction === null ? null : 1 - marginFraction, 'loadFraction')
}
