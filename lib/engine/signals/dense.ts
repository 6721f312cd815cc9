/** A dense matrix that was taken apart into triangles, rows in the order in which they were used. */
export interface Factors {
  readonly size: number
  readonly values: Float64Array
  readonly order: Int32Array
}

/** Columns that are eliminated before the rest of the matrix is touched: it is then read once for all of them. */
const BLOCK = 16

/** LU with partial pivoting, in place, block by block; null where the matrix is singular to working accuracy. */
export function factor(values: Float64Array, size: number): Factors | null {
  const order = Int32Array.from({ length: size }, (_, row) => row)
  for (let from = 0; from < size; from += BLOCK) {
    const to = Math.min(size, from + BLOCK)
    for (let column = from; column < to; column += 1) {
      const pivotAt = findPivot(values, size, column)
      if (pivotAt === null) return null
      if (pivotAt !== column) swapRows(values, order, size, column, pivotAt)
      const start = column * size
      const pivot = values[start + column] as number
      for (let row = column + 1; row < size; row += 1) {
        const at = row * size
        const share = (values[at + column] as number) / pivot
        values[at + column] = share
        for (let k = column + 1; k < to; k += 1)
          values[at + k] = (values[at + k] as number) - share * (values[start + k] as number)
      }
    }
    // Rows of the block as they stand to the right of it, then what they take from the rows below.
    for (let row = from + 1; row < to; row += 1)
      subtractRows(values, row * size, values, row * size + from, row - from, values, from * size, size, to, size)
    for (let row = to; row < size; row += 1)
      subtractRows(values, row * size, values, row * size + from, to - from, values, from * size, size, to, size)
  }
  return { size, values, order }
}

function findPivot(values: Float64Array, size: number, column: number): number | null {
  let best = column
  let largest = Math.abs(values[column * size + column] as number)
  for (let row = column + 1; row < size; row += 1) {
    const here = Math.abs(values[row * size + column] as number)
    if (here > largest) {
      largest = here
      best = row
    }
  }
  return largest > 1e-300 ? best : null
}

function swapRows(values: Float64Array, order: Int32Array, size: number, one: number, other: number): void {
  const row = values.slice(one * size, (one + 1) * size)
  values.copyWithin(one * size, other * size, (other + 1) * size)
  values.set(row, other * size)
  const kept = order[one] as number
  order[one] = order[other] as number
  order[other] = kept
}

/**
 * target row less the sum of `count` rows times their shares, columns `first` to `last`. Four rows at a time, so that the target is read and
 * written a quarter as often.
 */
function subtractRows(
  target: Float64Array,
  targetAt: number,
  shares: Float64Array,
  sharesAt: number,
  count: number,
  rows: Float64Array,
  rowsAt: number,
  stride: number,
  first: number,
  last: number,
): void {
  let k = 0
  for (; k + 3 < count; k += 4) {
    const a = shares[sharesAt + k] as number
    const b = shares[sharesAt + k + 1] as number
    const c = shares[sharesAt + k + 2] as number
    const d = shares[sharesAt + k + 3] as number
    const one = rowsAt + k * stride
    const two = one + stride
    const three = two + stride
    const four = three + stride
    for (let at = first; at < last; at += 1) {
      target[targetAt + at] =
        (target[targetAt + at] as number) -
        (a * (rows[one + at] as number) +
          b * (rows[two + at] as number) +
          c * (rows[three + at] as number) +
          d * (rows[four + at] as number))
    }
  }
  for (; k < count; k += 1) {
    const share = shares[sharesAt + k] as number
    const one = rowsAt + k * stride
    for (let at = first; at < last; at += 1)
      target[targetAt + at] = (target[targetAt + at] as number) - share * (rows[one + at] as number)
  }
}

/** Solves for each column of a matrix that is kept row by row, `width` numbers a row. */
export function solveColumns({ size, values, order }: Factors, right: Float64Array, width: number): Float64Array {
  const solved = new Float64Array(size * width)
  for (let row = 0; row < size; row += 1) {
    const from = (order[row] as number) * width
    const to = row * width
    for (let c = 0; c < width; c += 1) solved[to + c] = right[from + c] as number
    subtractRows(solved, to, values, row * size, row, solved, 0, width, 0, width)
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    const to = row * width
    const after = row + 1
    subtractRows(solved, to, values, row * size + after, size - after, solved, after * width, width, 0, width)
    const pivot = values[row * size + row] as number
    for (let c = 0; c < width; c += 1) solved[to + c] = (solved[to + c] as number) / pivot
  }
  return solved
}

/** left (rows × inner) less-from target: target -= left · right, all row by row. */
export function subtractProduct(
  target: Float64Array,
  left: Float64Array,
  right: Float64Array,
  rows: number,
  inner: number,
  width: number,
): void {
  for (let row = 0; row < rows; row += 1)
    subtractRows(target, row * width, left, row * inner, inner, right, 0, width, 0, width)
}
