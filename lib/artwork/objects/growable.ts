type Numbers = Uint8Array | Int32Array | Uint32Array

/** A typed array that grows; finished, it is as long as what was put in. */
export class Growable<T extends Numbers> {
  #array: T
  length = 0

  constructor(private readonly make: (length: number) => T) {
    this.#array = make(64)
  }

  push(value: number): void {
    if (this.length === this.#array.length) this.#grow()
    this.#array[this.length] = value
    this.length += 1
  }

  at(index: number): number {
    return this.#array[index] ?? 0
  }

  finish(): T {
    return this.#array.slice(0, this.length) as T
  }

  #grow(): void {
    const larger = this.make(this.#array.length * 2)
    larger.set(this.#array)
    this.#array = larger
  }
}

export const growBytes = () => new Growable<Uint8Array>((length) => new Uint8Array(length))
export const growIntegers = () => new Growable<Int32Array>((length) => new Int32Array(length))
export const growIndices = () => new Growable<Uint32Array>((length) => new Uint32Array(length))
