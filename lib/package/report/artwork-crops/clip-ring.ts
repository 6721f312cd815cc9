/** x, y of each corner in turn, without the first again at the end. */
export type Ring = readonly number[]

export interface Frame {
  readonly width: number
  readonly height: number
}

type Side = readonly [axis: 0 | 1, bound: number, isUpper: boolean]

const sidesOf = ({ width, height }: Frame): readonly Side[] => [
  [0, 0, false],
  [0, width, true],
  [1, 0, false],
  [1, height, true],
]

/**
 * What of a ring lies within the frame (Sutherland and Hodgman 1974, from memory). Where several pieces are left, edges there and back along the frame join them: filled by the
 * even-odd rule together with the other rings of its shape, it covers exactly what the whole ring covers within.
 */
export function clipRing(ring: Ring, frame: Frame): number[] {
  let kept = [...ring]
  for (const [axis, bound, isUpper] of sidesOf(frame)) {
    const before = kept
    kept = []
    const isIn = (value: number) => (isUpper ? value <= bound : value >= bound)
    for (let at = 0; at < before.length; at += 2) {
      const last = at === 0 ? before.length - 2 : at - 2
      const [x, y] = [before[at] ?? 0, before[at + 1] ?? 0]
      const [lastX, lastY] = [before[last] ?? 0, before[last + 1] ?? 0]
      const [own, other] = axis === 0 ? [x, lastX] : [y, lastY]
      if (isIn(own) !== isIn(other)) {
        const share = (bound - other) / (own - other)
        const [crossX, crossY] = [lastX + share * (x - lastX), lastY + share * (y - lastY)]
        kept.push(axis === 0 ? bound : crossX, axis === 0 ? crossY : bound)
      }
      if (isIn(own)) kept.push(x, y)
    }
    if (kept.length === 0) return []
  }
  return kept
}

/** Does the edge run along the frame? There the ring was cut: nothing ends there. */
export function isAlongFrame([x1, y1, x2, y2]: readonly [number, number, number, number], frame: Frame): boolean {
  return sidesOf(frame).some(([axis, bound]) =>
    axis === 0 ? x1 === bound && x2 === bound : y1 === bound && y2 === bound,
  )
}
