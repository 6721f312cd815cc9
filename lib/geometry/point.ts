/**
 * A place in the plane in whole micrometres, x to the right and y up. Whole numbers make every decision below exact: a
 * cross product of differences within the bound stays below 2^53, where doubles hold each integer.
 */
export type Point = readonly [xUm: number, yUm: number]

/** Vertices in order, without the first one repeated at the end. */
export type Polygon = readonly Point[]

/** 16.7 m: differences stay below 2^25, their products below 2^50, and the sum of two products below 2^52. */
export const MAX_COORDINATE_UM = 2 ** 24

/**
 * @throws RangeError naming the first coordinate that is no whole number of micrometres within the bound
 */
export function requireWholeMicrometres(name: string, polygon: Polygon): void {
  polygon.forEach((point, at) => {
    for (const axis of [0, 1] as const) {
      const value = point[axis]
      if (!Number.isInteger(value) || Math.abs(value) > MAX_COORDINATE_UM) {
        throw new RangeError(
          `${name}[${at}][${axis}] must be a whole number of micrometres up to ${MAX_COORDINATE_UM}; found ${value}`,
        )
      }
    }
  })
}

/**
 * Twice the area of the triangle a, b, c: positive where c lies to the left of the way from a to b, 0 where the three
 * are in line. Exact within MAX_COORDINATE_UM.
 */
export function turnOf(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/** Entry of a ring, counted round its end. */
export function at<T>(ring: readonly T[], index: number): T {
  const entry = ring[((index % ring.length) + ring.length) % ring.length]
  if (entry === undefined) throw new RangeError('an empty ring has no entries')
  return entry
}
