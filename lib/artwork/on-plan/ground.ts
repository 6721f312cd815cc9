import type { FlatPath } from '../shape/path'

type PointNm = readonly [xNm: number, yNm: number]

/** Rings of one piece of the plane, in nm: what lies within an odd number of them is inside. */
export type Rings = readonly FlatPath[]

/** What artwork is laid over: a plan in plain numbers, with arcs flattened. Coordinates are the plan's, in nm, seen on the top face. */
export interface PlanGround {
  /** What tells this outline, these zones and holes from others. */
  readonly basis: string
  /** The outline first, then its cut-outs. */
  readonly part: Rings
  readonly zones: readonly {
    readonly zoneId: string
    readonly isFinger: boolean
    readonly isRigid: boolean
    readonly rings: Rings
  }[]
  readonly bands: readonly GroundBand[]
  /** Every hole that the plan draws, patterns unfolded. */
  readonly holes: readonly { readonly holeId: string; readonly atNm: PointNm; readonly diameterNm: number | null }[]
}

/** What a bend covers in the flat. */
export interface GroundBand {
  /** What tells this axis and width from others. */
  readonly basis: string
  readonly lineId: string
  readonly bendId: string
  readonly fromNm: PointNm
  readonly toNm: PointNm
  readonly widthNm: number
  readonly rings: Rings
}
