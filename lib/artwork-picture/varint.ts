/** Whole numbers in as few bytes as they need, seven bits a byte, the last one below 128; signed ones with their sign in the lowest bit. */
export class VarintWriter {
  #bytes = new Uint8Array(1024)
  #length = 0

  unsigned(value: number): void {
    if (this.#length + 8 > this.#bytes.length) this.#grow()
    let left = value
    while (left >= 128) {
      this.#bytes[this.#length] = (left % 128) + 128
      this.#length += 1
      left = Math.floor(left / 128)
    }
    this.#bytes[this.#length] = left
    this.#length += 1
  }

  signed(value: number): void {
    this.unsigned(value < 0 ? -2 * value - 1 : 2 * value)
  }

  finish(): Uint8Array {
    return this.#bytes.slice(0, this.#length)
  }

  #grow(): void {
    const larger = new Uint8Array(2 * this.#bytes.length)
    larger.set(this.#bytes)
    this.#bytes = larger
  }
}

export class VarintReader {
  constructor(
    private readonly bytes: Uint8Array,
    private at: number,
    private readonly end: number,
  ) {}

  /** @throws RangeError past the end */
  unsigned(): number {
    let value = 0
    let factor = 1
    for (;;) {
      if (this.at >= this.end) throw new RangeError('the picture ends too early')
      const byte = this.bytes[this.at] ?? 0
      this.at += 1
      value += (byte % 128) * factor
      if (byte < 128) return value
      factor *= 128
    }
  }

  signed(): number {
    const value = this.unsigned()
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2
  }

  get isAtEnd(): boolean {
    return this.at === this.end
  }
}
