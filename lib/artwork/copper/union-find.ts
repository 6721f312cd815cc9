/** Which of a number of things belong together. */
export class UnionFind {
  readonly #parents: Int32Array

  constructor(count: number) {
    this.#parents = Int32Array.from({ length: count }, (_, at) => at)
  }

  find(one: number): number {
    let root = one
    while (this.#parents[root] !== root) root = this.#parents[root] ?? root
    // Paths are shortened on the way, so that later questions are short.
    for (let at = one; at !== root; ) {
      const next = this.#parents[at] ?? root
      this.#parents[at] = root
      at = next
    }
    return root
  }

  join(one: number, other: number): void {
    const [a, b] = [this.find(one), this.find(other)]
    if (a !== b) this.#parents[Math.max(a, b)] = Math.min(a, b)
  }
}
