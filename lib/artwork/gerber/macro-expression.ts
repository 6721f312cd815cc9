/**
 * Arithmetic of aperture macros: numbers, $1, + - x / and brackets (Gerber Layer Format Specification, "AM: arithmetic expressions"; `X` for `x` and a sign
 * before a value are common practice). Returns null where it is not arithmetic or the result is no number.
 */
export function evaluateExpression(text: string, variables: ReadonlyMap<number, number>): number | null {
  const reader = new ExpressionReader(text, variables)
  const value = reader.sum(0)
  return value === null || !reader.isAtEnd() || !Number.isFinite(value) ? null : value
}

/** Deeper brackets than any generator writes; a file of brackets alone must not use up the stack. */
const DEEPEST = 50

class ExpressionReader {
  #at = 0

  constructor(
    private readonly text: string,
    private readonly variables: ReadonlyMap<number, number>,
  ) {}

  isAtEnd(): boolean {
    this.#skip()
    return this.#at === this.text.length
  }

  sum(depth: number): number | null {
    let value = this.#product(depth)
    while (value !== null) {
      const sign = this.#peek()
      if (sign !== '+' && sign !== '-') break
      this.#at += 1
      const next = this.#product(depth)
      if (next === null) return null
      value = sign === '+' ? value + next : value - next
    }
    return value
  }

  #product(depth: number): number | null {
    let value = this.#value(depth)
    while (value !== null) {
      const sign = this.#peek()
      if (sign !== 'x' && sign !== 'X' && sign !== '/') break
      this.#at += 1
      const next = this.#value(depth)
      if (next === null) return null
      value = sign === '/' ? value / next : value * next
    }
    return value
  }

  #value(depth: number): number | null {
    if (depth > DEEPEST) return null
    const sign = this.#peek()
    if (sign === '-' || sign === '+') {
      this.#at += 1
      const value = this.#value(depth + 1)
      return value === null || sign === '+' ? value : -value
    }
    if (sign === '(') {
      this.#at += 1
      const value = this.sum(depth + 1)
      if (this.#peek() !== ')') return null
      this.#at += 1
      return value
    }
    const pattern = sign === '$' ? /\$(\d{1,9})/y : /(\d+\.?\d*|\.\d+)/y
    pattern.lastIndex = this.#at
    const found = pattern.exec(this.text)
    if (found === null) return null
    this.#at = pattern.lastIndex
    // A variable that was never set is 0 (the same specification).
    return sign === '$' ? (this.variables.get(Number(found[1])) ?? 0) : Number(found[1])
  }

  #peek(): string | undefined {
    this.#skip()
    return this.text[this.#at]
  }

  #skip(): void {
    while (this.text[this.#at] === ' ') this.#at += 1
  }
}
