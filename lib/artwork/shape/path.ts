/** A closed path in nanometres: x, y of each corner. What lies to the left of it is inside, so that paths add up by their winding. */
export type FlatPath = number[]

/** Twice the signed area; from the first corner, so that products stay exact enough far from the origin. */
function doubleArea(path: readonly number[]): number {
  const [x0 = 0, y0 = 0] = path
  let sum = 0
  for (let at = 2; at + 3 < path.length; at += 2) {
    const ax = (path[at] ?? 0) - x0
    const ay = (path[at + 1] ?? 0) - y0
    const bx = (path[at + 2] ?? 0) - x0
    const by = (path[at + 3] ?? 0) - y0
    sum += ax * by - ay * bx
  }
  return sum
}

export const areaNm2 = (path: readonly number[]): number => doubleArea(path) / 2

/** The same path with its inside to the left. */
export function orient(path: FlatPath): FlatPath {
  return doubleArea(path) < 0 ? reverse(path) : path
}

export function reverse(path: readonly number[]): FlatPath {
  const turned: FlatPath = []
  for (let at = path.length - 2; at >= 0; at -= 2) turned.push(path[at] ?? 0, path[at + 1] ?? 0)
  return turned
}

export function translate(path: readonly number[], dx: number, dy: number): FlatPath {
  const moved: FlatPath = new Array(path.length)
  for (let at = 0; at < path.length; at += 2) {
    moved[at] = (path[at] ?? 0) + dx
    moved[at + 1] = (path[at + 1] ?? 0) + dy
  }
  return moved
}

/** Corners of the smallest convex polygon round the points, inside to the left (monotone chain, Andrew 1979). */
export function convexHull(points: readonly number[]): FlatPath {
  const order = Array.from({ length: points.length / 2 }, (_, index) => index)
  const x = (index: number) => points[2 * index] ?? 0
  const y = (index: number) => points[2 * index + 1] ?? 0
  order.sort((a, b) => x(a) - x(b) || y(a) - y(b))
  const half = (indices: readonly number[]): number[] => {
    const chain: number[] = []
    for (const index of indices) {
      while (chain.length >= 2) {
        const [a = 0, b = 0] = chain.slice(-2)
        if ((x(b) - x(a)) * (y(index) - y(a)) - (y(b) - y(a)) * (x(index) - x(a)) > 0) break
        chain.pop()
      }
      chain.push(index)
    }
    return chain.slice(0, -1)
  }
  return [...half(order), ...half(order.reverse())].flatMap((index) => [x(index), y(index)])
}
