import { dot, lengthOf, minus, plus, times, type Vector } from '../kinematics/vector'

/** Corners of a convex body, in any order. */
export type Corners = readonly Vector[]

/** Least distance of two convex bodies between two bounds, and a point half-way between them. Both are 0 where they meet. */
export interface Gap {
  readonly lowerMm: number
  readonly upperMm: number
  readonly at: Vector
}

/** Rounds of the search; it ends after a handful, and the bounds say what is known if it does not. */
const MOST_ROUNDS = 64
/** The search ends where the bounds are this near, in millimetres: far below any tolerance of a part. */
const NEAR_ENOUGH_MM = 1e-9

interface Support {
  /** Corner of the first body less corner of the second. */
  readonly between: Vector
  readonly first: Vector
  readonly second: Vector
}

interface Nearest {
  readonly point: Vector
  readonly corners: readonly Support[]
  readonly weights: readonly number[]
}

/**
 * Distance of two convex bodies by their difference (Gilbert, Johnson and Keerthi, 1988). Each round gives an upper bound, the
 * distance of points that both bodies hold, and a lower one, a plane that separates them.
 */
export function measureGap(first: Corners, second: Corners): Gap {
  let simplex: readonly Support[] = [findSupport(first, second, [1, 0, 0])]
  let lowerMm = 0
  let nearest = findNearest(simplex)
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const upperMm = lengthOf(nearest.point)
    if (upperMm <= NEAR_ENOUGH_MM) return { lowerMm: 0, upperMm: 0, at: middleOf(nearest) }
    const next = findSupport(first, second, times(nearest.point, -1))
    lowerMm = Math.max(lowerMm, dot(nearest.point, next.between) / upperMm)
    if (upperMm - lowerMm <= NEAR_ENOUGH_MM || simplex.some(({ between }) => isSame(between, next.between))) break
    const found = findNearest([...nearest.corners, next])
    if (lengthOf(found.point) >= upperMm) break
    nearest = found
    simplex = found.corners
  }
  const upperMm = lengthOf(nearest.point)
  // Where both are the same distance, the product that gives the lower one may end above in its last digit.
  return { lowerMm: Math.min(Math.max(0, lowerMm), upperMm), upperMm, at: middleOf(nearest) }
}

const isSame = (a: Vector, b: Vector) => a[0] === b[0] && a[1] === b[1] && a[2] === b[2]

function findSupport(first: Corners, second: Corners, direction: Vector): Support {
  const a = furthest(first, direction, 1)
  const b = furthest(second, direction, -1)
  return { between: minus(a, b), first: a, second: b }
}

function furthest(corners: Corners, direction: Vector, sign: 1 | -1): Vector {
  let best = corners[0]
  if (best === undefined) throw new RangeError('a body has at least one corner')
  let most = sign * dot(best, direction)
  for (const corner of corners) {
    const here = sign * dot(corner, direction)
    if (here > most) {
      most = here
      best = corner
    }
  }
  return best
}

function middleOf({ corners, weights }: Nearest): Vector {
  let middle: Vector = [0, 0, 0]
  corners.forEach(({ first, second }, index) => {
    middle = plus(middle, times(plus(first, second), (weights[index] ?? 0) / 2))
  })
  return middle
}

/** The point of a simplex nearest to 0: the best of its parts that hold their own nearest point inside. */
function findNearest(simplex: readonly Support[]): Nearest {
  let best: Nearest | null = null
  let leastMm = Number.POSITIVE_INFINITY
  for (let chosen = 1; chosen < 1 << simplex.length; chosen += 1) {
    const corners = simplex.filter((_, index) => (chosen >> index) & 1)
    const weights = weighNearest(corners)
    if (weights === null) continue
    const point = corners.reduce<Vector>(
      (sum, { between }, index) => plus(sum, times(between, weights[index] ?? 0)),
      [0, 0, 0],
    )
    const distanceMm = lengthOf(point)
    if (distanceMm < leastMm) {
      leastMm = distanceMm
      best = { point, corners, weights }
    }
  }
  if (best === null) throw new RangeError('a simplex has a nearest point')
  return best
}

/**
 * Weights of the point of the plane through all corners that is nearest to 0; null where it lies outside them, or where
 * they span no plane of their own.
 */
function weighNearest(corners: readonly Support[]): readonly number[] | null {
  const base = corners[0]?.between
  if (base === undefined) return null
  if (corners.length === 1) return [1]
  const edges = corners.slice(1).map(({ between }) => minus(between, base))
  const rest = solveSymmetric(
    edges.map((row) => edges.map((column) => dot(row, column))),
    edges.map((edge) => -dot(edge, base)),
  )
  if (rest === null) return null
  const weights = [1 - rest.reduce((sum, weight) => sum + weight, 0), ...rest]
  return weights.every((weight) => weight >= 0) ? weights : null
}

/** Gaussian elimination with pivots, for 1 to 3 unknowns; null where the rows are not independent. */
function solveSymmetric(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] | null {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0])
  const size = rows.length
  const scale = Math.max(...rows.map((row, index) => Math.abs(row[index] ?? 0)))
  for (let column = 0; column < size; column += 1) {
    let pivot = column
    for (let row = column + 1; row < size; row += 1) {
      if (Math.abs(entry(rows, row, column)) > Math.abs(entry(rows, pivot, column))) pivot = row
    }
    if (Math.abs(entry(rows, pivot, column)) <= scale * 1e-14) return null
    ;[rows[column], rows[pivot]] = [rows[pivot] ?? [], rows[column] ?? []]
    for (let row = column + 1; row < size; row += 1) {
      const factor = entry(rows, row, column) / entry(rows, column, column)
      rows[row] = (rows[row] ?? []).map((value, index) => value - factor * entry(rows, column, index))
    }
  }
  const solution = new Array<number>(size).fill(0)
  for (let row = size - 1; row >= 0; row -= 1) {
    let value = entry(rows, row, size)
    for (let column = row + 1; column < size; column += 1) value -= entry(rows, row, column) * (solution[column] ?? 0)
    solution[row] = value / entry(rows, row, row)
  }
  return solution
}

const entry = (rows: readonly (readonly number[])[], row: number, column: number) => rows[row]?.[column] ?? 0
