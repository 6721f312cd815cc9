import { type CarriedBody, listFlatBodies } from '../bodies/flat-bodies'
import { placeBody } from '../bodies/place-bodies'
import type { FlatPart } from '../kinematics/flat-part'
import type { FoldedPart } from '../kinematics/fold-part'

/** What a part takes up along one axis: certainly as much, and at most as much. */
export interface Extent {
  readonly lowerMm: number
  readonly upperMm: number
}

/** Along x and y of the plan, and square to it, as the plate that stays lies. */
export type Envelope = readonly [alongX: Extent, alongY: Extent, height: Extent]

/** Strips this fine stand off the true bend by less than a micrometre at any radius of the trade. */
const STRIP_DEG = 1
/** Arcs of outlines were flattened by at most this much. */
const CHORD_ERROR_MM = 0.002

/** The box that a folded part fills, what stands on it included. */
export function measureEnvelope(part: FlatPart, carried: readonly CarriedBody[], folded: FoldedPart): Envelope {
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  const [outerLow, outerHigh] = [[...low], [...high]]
  for (const body of listFlatBodies(part, carried, STRIP_DEG)) {
    for (const { corners, sagMm } of placeBody(folded, body).prisms) {
      for (const corner of corners) {
        for (const axis of [0, 1, 2] as const) {
          low[axis] = Math.min(low[axis] ?? 0, corner[axis])
          high[axis] = Math.max(high[axis] ?? 0, corner[axis])
          outerLow[axis] = Math.min(outerLow[axis] ?? 0, corner[axis] - sagMm)
          outerHigh[axis] = Math.max(outerHigh[axis] ?? 0, corner[axis] + sagMm)
        }
      }
    }
  }
  const extent = (axis: 0 | 1 | 2): Extent => ({
    lowerMm: Math.max(0, (high[axis] ?? 0) - (low[axis] ?? 0) - 2 * CHORD_ERROR_MM),
    upperMm: (outerHigh[axis] ?? 0) - (outerLow[axis] ?? 0) + 2 * CHORD_ERROR_MM,
  })
  return [extent(0), extent(1), extent(2)]
}
