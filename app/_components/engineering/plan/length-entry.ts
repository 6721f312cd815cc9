import type { LengthUnit } from '@/lib/engine/units'
import { parseLength } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import { wholePoint } from '@/lib/plan/edit'

export type ReadPlace = { readonly ok: true; readonly atMm: PointMm } | { readonly ok: false; readonly reason: string }

/** A place typed as two lengths, onto whole nanometres. */
export function readPlace(x: string, y: string, unit: LengthUnit): ReadPlace {
  const [readX, readY] = [parseLength(x, unit), parseLength(y, unit)]
  if (!readX.ok) return { ok: false, reason: `x: ${readX.message}` }
  if (!readY.ok) return { ok: false, reason: `y: ${readY.message}` }
  const atMm = wholePoint([readX.valueUm / 1000, readY.valueUm / 1000])
  return atMm === null ? { ok: false, reason: 'A plan reaches from -5000 to 5000 mm.' } : { ok: true, atMm }
}
