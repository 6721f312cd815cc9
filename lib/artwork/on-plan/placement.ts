import type { FlatPath } from '../shape/path'

/** How artwork lies on the plan: mirrored first (left for right), then turned against the clock, then shifted. */
export interface Placement {
  readonly isMirrored: boolean
  readonly turnDeg: 0 | 90 | 180 | 270
  readonly shiftNm: readonly [number, number]
}

export const EIGHT_WAYS: readonly Omit<Placement, 'shiftNm'>[] = [false, true].flatMap((isMirrored) =>
  ([0, 90, 180, 270] as const).map((turnDeg) => ({ isMirrored, turnDeg })),
)

const COS: Readonly<Record<number, number>> = { 0: 1, 90: 0, 180: -1, 270: 0 }
const SIN: Readonly<Record<number, number>> = { 0: 0, 90: 1, 180: 0, 270: -1 }

/** From the artwork's coordinates to the plan's. Quarter turns of whole numbers stay whole. */
export function toPlan({ isMirrored, turnDeg, shiftNm }: Placement, x: number, y: number): readonly [number, number] {
  const mx = isMirrored ? -x : x
  const [cos, sin] = [COS[turnDeg] ?? 1, SIN[turnDeg] ?? 0]
  return [cos * mx - sin * y + shiftNm[0], sin * mx + cos * y + shiftNm[1]]
}

/** From the plan's coordinates to the artwork's. */
export function toArtwork(
  { isMirrored, turnDeg, shiftNm }: Placement,
  x: number,
  y: number,
): readonly [number, number] {
  const [dx, dy] = [x - shiftNm[0], y - shiftNm[1]]
  const [cos, sin] = [COS[turnDeg] ?? 1, SIN[turnDeg] ?? 0]
  const mx = cos * dx + sin * dy
  return [isMirrored ? -mx : mx, -sin * dx + cos * dy]
}

export function mapPath(path: FlatPath, map: (x: number, y: number) => readonly [number, number]): FlatPath {
  const mapped: FlatPath = []
  for (let at = 0; at + 1 < path.length; at += 2) mapped.push(...map(path[at] ?? 0, path[at + 1] ?? 0))
  return mapped
}
