import type { ArtworkSpot } from '@/lib/engine/results'

type Given = string | string[] | undefined

/** A place as an address says it, `12.5,3`; null where it says none. */
export function readPoint(given: Given): { readonly xMm: number; readonly yMm: number } | null {
  const parts =
    typeof given === 'string' ? given.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part))) : []
  const [xMm, yMm] = parts
  if (parts.length !== 2 || xMm === undefined || yMm === undefined) return null
  return Number.isFinite(xMm) && Number.isFinite(yMm) ? { xMm, yMm } : null
}

export function readPlace(frame: Given, at: Given): ArtworkSpot | null {
  const point = readPoint(at)
  return point === null || (frame !== 'plan' && frame !== 'files') ? null : { frame, ...point }
}
