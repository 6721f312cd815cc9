import type { Design } from '@/lib/engine'
import { boundsOf, getAreaUm2, getBounds } from '@/lib/geometry'
import { areasOf, NM_PER_MM } from '@/lib/plan'
import { readDrawnPart } from './drawn-part'
import type { NestedPart } from './nest-part'
import { readNestedPart } from './nested-part'

/** The part in the flat, as an order states it. */
interface OutlineMeasure {
  readonly basis: 'drawn' | 'stated' | 'zones'
  readonly lengthMm: number
  readonly widthMm: number
  /** Drawn cut-outs are taken off. */
  readonly areaMm2: number
  /** As it is laid on panels: arcs as polygons, the rolling direction along x or y. */
  readonly verticesMm: readonly (readonly [number, number])[]
  readonly rollingDirection: NestedPart['rollingDirection']
  /** What was taken for granted; empty for none. */
  readonly note: string
}

type OutlineReading =
  | { readonly ok: true; readonly outline: OutlineMeasure }
  | { readonly ok: false; readonly reason: string }

const UM_PER_MM = 1000

/** Size and area of the outline that panels are filled with; what is drawn is measured as drawn, to the nanometre. */
export function measureOutline(design: Design): OutlineReading {
  const reading = readNestedPart(design)
  if (!reading.ok) return { ok: false, reason: reading.reason }
  const { part, note } = reading
  const common = {
    verticesMm: part.outline.map(([x, y]) => [x / UM_PER_MM, y / UM_PER_MM] as const),
    rollingDirection: part.rollingDirection,
    note,
  }
  // Where the drawing cannot be laid on panels the part is what was stated.
  const drawn = design.plan === null || readDrawnPart(design) === null ? null : areasOf(design.plan).part
  if (drawn !== null) {
    const { minX, maxX, minY, maxY } = boundsOf(drawn.outer)
    return {
      ok: true,
      outline: {
        ...common,
        basis: 'drawn',
        lengthMm: (maxX - minX) / NM_PER_MM,
        widthMm: (maxY - minY) / NM_PER_MM,
        areaMm2: drawn.areaNm2 / NM_PER_MM ** 2,
      },
    }
  }
  const { minX, maxX, minY, maxY } = getBounds(part.outline)
  return {
    ok: true,
    outline: {
      ...common,
      basis: reading.basis === 'outline' ? 'stated' : 'zones',
      lengthMm: (maxX - minX) / UM_PER_MM,
      widthMm: (maxY - minY) / UM_PER_MM,
      areaMm2: getAreaUm2(part.outline) / UM_PER_MM ** 2,
    },
  }
}
