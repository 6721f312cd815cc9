import type { Writing } from './draw-set'

type Point = readonly [number, number]

/** How a whole set is moved: turned against the clock, mirrored before that, shifted after. Exact for quarters. */
export function turned(deg: number, isMirrored: boolean, shift: Point): NonNullable<Writing['move']> {
  const quarter: Readonly<Record<number, Point>> = { 0: [1, 0], 90: [0, 1], 180: [-1, 0], 270: [0, -1] }
  const [cos, sin] = quarter[deg] ?? [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
  return ([x, y]) => {
    const mx = isMirrored ? -x : x
    return [cos * mx - sin * y + shift[0], sin * mx + cos * y + shift[1]]
  }
}

/** As drawn, in inches, and every mirroring and quarter turn. */
export const WHOLE_TURNS: readonly (readonly [string, Writing])[] = [
  ['as drawn', {}],
  ['in inches', { unit: 'inch' }],
  ...[false, true].flatMap((isMirrored) =>
    [0, 90, 180, 270].map(
      (deg) =>
        [
          `${isMirrored ? 'mirrored and ' : ''}turned by ${deg} and shifted`,
          { move: turned(deg, isMirrored, [12.3, -45.6]), isMirrored },
        ] as const,
    ),
  ),
]

/** Any other turn, in both units. */
export const OTHER_TURNS: readonly (readonly [string, Writing])[] = [
  ...[17.3, 45, 61].map((deg) => [`turned by ${deg}`, { move: turned(deg, false, [3, 4]) }] as const),
  ['mirrored, turned by 33 and in inches', { move: turned(33, true, [3, 4]), isMirrored: true, unit: 'inch' }],
]
