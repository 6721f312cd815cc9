import type { Remedy } from '@/lib/engine'
import { digitsAsComputed } from '@/lib/engine/units'

/** `Pads-only plating, lighter foil and larger radius`. */
export function nameRemedy({ changes }: Remedy): string {
  const titles = changes.map(({ title }, at) =>
    at === 0 ? title : `${title.charAt(0).toLowerCase()}${title.slice(1)}`,
  )
  const last = titles.pop() ?? ''
  return titles.length === 0 ? last : `${titles.join(', ')} and ${last}`
}

/** Strain as a multiple of the allowable, each at its worst corner of tolerances and material constants. */
export function formatStrainShare(marginFraction: number | null): string {
  return digitsAsComputed(marginFraction === null ? null : 1 - marginFraction, 'loadFraction')
}
