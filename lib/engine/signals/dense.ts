/** A dense matrix that was taken apart into triangles, rows in the order in which they were used. */
export interface Factors {
  readonly size: number
  readonly values: Float64Array
  readonly order: Int32Array
}

/** LU with partial pivoting, in place; null where the matrix is singular to working accuracy. */
export function factor(values: Float64Array, size: number): Factors | null {
  const order = Int32Array.from({ length: size }, (_, row) => row)
  for (let column = 0; column < size; column += 1) {
    let best = column
    let largest = Math.abs(values[column * size + column] as number)
    for (let row = column + 1; row < size; row += 1) {
      const here = Math.abs(values[row * size + column] as number)
      if (here > largest) {
        largest = here
        best = row
      }
    }
    if (!(largest > 1e-300)) return null
    if (best !== column) {
      const one = values.slice(column * size, (column + 1) * size)
      values.copyWithin(column * size, best * size, (best + 1) * size)
      values.set(one, best * size)
      const kept = order[column] as number
      order[column] = order[best] as number
      order[best] = kept
    }
    const start = column * size
    const pivot = values[start + column] as number
    for (let row = column + 1; row < size; row += 1) {
      const at = row * size
      const share = (values[at + column] as number) / pivot
      if (share === 0) continue
      values[at + column] = share
      for (let k = column + 1; k < size; k += 1)
        values[at + k] = (values[at + k] as number) - share * (values[start + k] as number)
    }
  }
  return { size, values, order }
}

/** Solves for each column of a matrix that is kept row by row, `width` numbers a row. */
export function solveColumns({ size, values, order }: Factors, right: Float64Array, width: number): Float64Array {
  const solved = new Float64Array(size * width)
  for (let row = 0; row < size; row += 1) {
    const from = (order[row] as number) * width
    const to = row * width
    for (let c = 0; c < width; c += 1) solved[to + c] = right[from + c] as number
    for (let k = 0; k < row; k += 1) {
      const share = values[row * size + k] as number
      if (share === 0) continue
      const other = k * width
      for (let c = 0; c < width; c += 1)
        solved[to + c] = (solved[to + c] as number) - share * (solved[other + c] as number)
    }
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    const to = row * width
    for (let k = row + 1; k < size; k += 1) {
      const share = values[row * size + k] as number
      if (share === 0) continue
      const other = k * width
      for (let c = 0; c < width; c += 1)
        solved[to + c] = (solved[to + c] as number) - share * (solved[other + c] as number)
    }
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
  for (let row = 0; row < rows; row += 1) {
    const to = row * width
    for (let k = 0; k < inner; k += 1) {
      const share = left[row * inner + k] as number
      if (share === 0) continue
      const other = k * width
      for (let c = 0; c < width; c += 1)
        target[to + c] = (target[to + c] as number) - share * (right[other + c] as number)
    }
  }
}
