/** The centre of an arc, how far its two radii differed, and whether it goes all round. */
export interface ResolvedArc {
  readonly centreXNm: number
  readonly centreYNm: number
  readonly mismatchNm: number
  readonly radiusNm: number
}

/**
 * Arcs with signed offsets (G75). The two ends are what neighbours share, so they stay, and the centre moves onto their bisector: the radii of a file differ by its
 * rounding. Ends on one point make a full circle, decided on the file's whole numbers.
 */
export function resolveMultiQuadrant(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  i: number,
  j: number,
): ResolvedArc {
  return ontoBisector(fromX, fromY, toX, toY, fromX + i, fromY + j)
}

/**
 * Arcs of a quarter turn at most whose offsets have no sign (G74): of four centres the one with equal radii whose arc runs the right way and no farther. Null where
 * none does, or where both ends are one point: then there is no arc.
 */
export function resolveSingleQuadrant(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  i: number,
  j: number,
  isClockwise: boolean,
): ResolvedArc | null {
  if (fromX === toX && fromY === toY) return null
  let best: ResolvedArc | null = null
  for (const signX of [1, -1]) {
    for (const signY of [1, -1]) {
      const centreX = fromX + signX * Math.abs(i)
      const centreY = fromY + signY * Math.abs(j)
      const sweep = sweepOf(fromX - centreX, fromY - centreY, toX - centreX, toY - centreY, isClockwise)
      if (sweep > Math.PI / 2 + ROUNDED_RAD) continue
      const arc = ontoBisector(fromX, fromY, toX, toY, centreX, centreY)
      if (best === null || arc.mismatchNm < best.mismatchNm) best = arc
    }
  }
  return best
}

/** A quarter turn whose ends were rounded may be a little more. */
const ROUNDED_RAD = 0.02

/** Radians from one direction to the other, above 0 and up to a full turn. */
export function sweepOf(fromX: number, fromY: number, toX: number, toY: number, isClockwise: boolean): number {
  const turn = Math.atan2(fromX * toY - fromY * toX, fromX * toX + fromY * toY) * (isClockwise ? -1 : 1)
  return turn <= 0 ? turn + 2 * Math.PI : turn
}

function ontoBisector(
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  centreX: number,
  centreY: number,
): ResolvedArc {
  const fromRadius = Math.hypot(fromX - centreX, fromY - centreY)
  const mismatchNm = Math.abs(fromRadius - Math.hypot(toX - centreX, toY - centreY))
  const chordX = toX - fromX
  const chordY = toY - fromY
  const chord = Math.hypot(chordX, chordY)
  if (chord === 0 || mismatchNm === 0)
    return { centreXNm: Math.round(centreX), centreYNm: Math.round(centreY), mismatchNm, radiusNm: fromRadius }
  const [middleX, middleY] = [(fromX + toX) / 2, (fromY + toY) / 2]
  const along = ((centreX - middleX) * -chordY + (centreY - middleY) * chordX) / chord
  return {
    centreXNm: Math.round(middleX + (-chordY / chord) * along),
    centreYNm: Math.round(middleY + (chordX / chord) * along),
    mismatchNm,
    radiusNm: Math.hypot(chord / 2, along),
  }
}
