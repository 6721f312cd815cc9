/**
 * The part as it lies flat, cut into rigid plates and the bands that bend, in millimetres. Heights count from a plane
 * that runs through the whole part (a common layer's surface), so areas of unequal thickness meet where they do.
 */
export interface FlatPart {
  readonly plates: readonly FlatPlate[]
  readonly bands: readonly FlatBand[]
}

export type PlanePoint = readonly [xMm: number, yMm: number]

/** What is as thick all over: an area between two heights. */
export interface FlatSolid {
  readonly id: string
  /** The outline, then holes; corners in order. */
  readonly loops: readonly (readonly PlanePoint[])[]
  readonly bottomMm: number
  readonly topMm: number
  /** Leaves that nothing bonds to each other, from the top down, between the two heights; left out where all of it is one. */
  readonly leaves?: readonly LeafSpan[]
}

/** Heights of one leaf. */
export interface LeafSpan {
  readonly bottomMm: number
  readonly topMm: number
}

/** Which solid a body is made of, and which leaf of it. */
export interface LeafOf {
  readonly solidId: string
  /** From 1, from the top down; null where the solid is one. */
  readonly leaf: number | null
}

/** The bodies that a solid is made of: itself, or each of its leaves under an id of its own. */
export function listLeaves<S extends FlatSolid>(solid: S): readonly (S & LeafOf)[] {
  const { leaves } = solid
  if (leaves === undefined || leaves.length < 2) return [{ ...solid, solidId: solid.id, leaf: null }]
  return leaves.map((span, index) => ({
    ...solid,
    ...span,
    id: `${solid.id}/leaf-${index + 1}`,
    solidId: solid.id,
    leaf: index + 1,
  }))
}

/** What moves as one: areas of the part that no bend parts, each as thick as it is. */
export interface FlatPlate {
  readonly id: string
  readonly solids: readonly FlatSolid[]
}

/** A strip between two parallel borders, across the whole width of the part there. */
export interface FlatBand extends FlatSolid {
  readonly fromPlateId: string
  readonly toPlateId: string
  /** A point of the border with `fromPlateId`. */
  readonly start: PlanePoint
  /** Unit vector across the band, from one border to the other. */
  readonly across: PlanePoint
  /** Along the neutral surface from border to border; the same flat and folded. */
  readonly lengthMm: number
  /** Positive where the top face is inside the bend. */
  readonly angleDeg: number
  /** Height of the neutral surface. */
  readonly neutralMm: number
}
