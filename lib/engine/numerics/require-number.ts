/** The range a number must lie in; `unit` only serves the message. */
export interface NumberRange {
  above?: number
  atLeast?: number
  below?: number
  atMost?: number
  unit?: string
}

/**
 * Refuses a number that is not finite or lies outside a range. Infinity counts as outside: no
 * dimension or modulus of a circuit is infinite, and letting one through ends in NaN further on.
 *
 * @param name   argument as the caller wrote it, with index where it is a list (`layers[2].thicknessUm`)
 * @returns the number itself, so that a check can stand where the value is used
 * @throws  RangeError naming the argument, the range and the value found
 */
export function requireNumber(name: string, value: number, range: NumberRange): number {
  const inside =
    Number.isFinite(value) &&
    (range.above === undefined || value > range.above) &&
    (range.atLeast === undefined || value >= range.atLeast) &&
    (range.below === undefined || value < range.below) &&
    (range.atMost === undefined || value <= range.atMost)
  if (!inside) throw new RangeError(`${name} must be ${describeRange(range)}; found ${value}`)
  return value
}

function describeRange(range: NumberRange): string {
  const unit = range.unit === undefined ? '' : ` ${range.unit}`
  const parts: string[] = []
  if (range.above !== undefined) parts.push(`above ${range.above}${unit}`)
  if (range.atLeast !== undefined) parts.push(`at least ${range.atLeast}${unit}`)
  if (range.below !== undefined) parts.push(`below ${range.below}${unit}`)
  if (range.atMost !== undefined) parts.push(`at most ${range.atMost}${unit}`)
  return parts.length === 0 ? 'a finite number' : `a number ${parts.join(' and ')}`
}
