import type { SeenPoint } from './depth-order'

/** Where the eye stands: turned about the upright axis, and raised over the plane of the part. */
export interface FoldedView {
  readonly turnDeg: number
  readonly raiseDeg: number
}

/** Views with the names of the trade's drawings (ISO 128-3:2022, first angle); the last is what shows most of a small part. */
export const FOLDED_VIEWS = {
  oblique: { turnDeg: -30, raiseDeg: 30 },
  front: { turnDeg: 0, raiseDeg: 0 },
  top: { turnDeg: 0, raiseDeg: 90 },
  side: { turnDeg: -90, raiseDeg: 0 },
} as const satisfies Record<string, FoldedView>
export type FoldedViewName = keyof typeof FOLDED_VIEWS

const RAD_PER_DEG = Math.PI / 180

/** Parallel projection of a point in space, millimetres: to the right, down, away from the eye. */
export function makeSeen({ turnDeg, raiseDeg }: FoldedView): (point: readonly [number, number, number]) => SeenPoint {
  const [sinTurn, cosTurn] = [Math.sin(turnDeg * RAD_PER_DEG), Math.cos(turnDeg * RAD_PER_DEG)]
  const [sinRaise, cosRaise] = [Math.sin(raiseDeg * RAD_PER_DEG), Math.cos(raiseDeg * RAD_PER_DEG)]
  return ([x, y, z]) => {
    const right = x * cosTurn - y * sinTurn
    const back = x * sinTurn + y * cosTurn
    return [right, -(back * sinRaise + z * cosRaise), back * cosRaise - z * sinRaise]
  }
}
