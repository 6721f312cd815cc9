import type { Vector } from '../kinematics/vector'

/** A closed body bounded by exact surfaces, in millimetres: what exchange formats of solid modelling call a boundary representation. */
export interface ExactSolid {
  readonly id: string
  readonly vertices: readonly Vector[]
  readonly edges: readonly ExactEdge[]
  readonly faces: readonly ExactFace[]
  /** In closed form, from the area in plan: what a reader of the body has to find. */
  readonly volumeMm3: number
}

/** A curve between two vertices, in that direction. */
export interface ExactEdge {
  /** Places in the list of vertices. */
  readonly from: number
  readonly to: number
  readonly curve: ExactCurve
}

export type ExactCurve =
  | { readonly kind: 'line' }
  /** Counter-clockwise about its axis. */
  | { readonly kind: 'circle'; readonly centre: Vector; readonly axis: Vector; readonly radiusMm: number }
  /** Cubic pieces of equal parameter length that meet without a corner: two poles to each piece, and both ends. */
  | { readonly kind: 'spline'; readonly poles: readonly Vector[] }

export type ExactSurface =
  | { readonly kind: 'plane'; readonly origin: Vector; readonly normal: Vector }
  | { readonly kind: 'cylinder'; readonly origin: Vector; readonly axis: Vector; readonly radiusMm: number }
  /** Straight lines from each pole of one spline to its counterpart; its normal is along x (from low to high). */
  | { readonly kind: 'ruled'; readonly low: readonly Vector[]; readonly high: readonly Vector[] }

export interface ExactFace {
  readonly surface: ExactSurface
  /** Whether the surface's own normal looks out of the body; that of a cylinder looks away from its axis. */
  readonly isOutward: boolean
  /** The outer loop first; counter-clockwise seen from outside the body, holes clockwise. */
  readonly loops: readonly (readonly ExactUse[])[]
}

/** An edge as a loop runs along it. */
export interface ExactUse {
  readonly edge: number
  readonly isForward: boolean
}
