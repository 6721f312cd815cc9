import type { ExtentNm } from '../apertures/aperture'

/** Finds what lies near a place: entries of a box each, kept in square cells. */
export class BoxIndex {
  readonly #cells = new Map<number, number[]>()
  readonly #cellNm: number

  /** @param cellNm  side of a cell; entries much larger than one are kept in each cell that they touch */
  constructor(cellNm: number) {
    this.#cellNm = cellNm
  }

  add(entry: number, [minX, minY, maxX, maxY]: ExtentNm): void {
    this.#visit(minX, minY, maxX, maxY, (key) => {
      const cell = this.#cells.get(key)
      if (cell === undefined) this.#cells.set(key, [entry])
      else cell.push(entry)
    })
  }

  /** Entries whose cells a box touches; one that lies in several cells may come several times. */
  near(minX: number, minY: number, maxX: number, maxY: number, take: (entry: number) => void): void {
    this.#visit(minX, minY, maxX, maxY, (key) => {
      for (const entry of this.#cells.get(key) ?? []) take(entry)
    })
  }

  /** Entries that share a cell. */
  *cells(): IterableIterator<readonly number[]> {
    yield* this.#cells.values()
  }

  #visit(minX: number, minY: number, maxX: number, maxY: number, take: (key: number) => void): void {
    const size = this.#cellNm
    const [left, right] = [Math.floor(minX / size), Math.floor(maxX / size)]
    const [low, high] = [Math.floor(minY / size), Math.floor(maxY / size)]
    for (let column = left; column <= right; column += 1)
      // Coordinates reach 2 m either way: with cells of 10 um and more each key is a whole number that a double holds.
      for (let row = low; row <= high; row += 1) take(column * 1_000_003 + row)
  }
}
