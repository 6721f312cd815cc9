/** A number that may lie anywhere between two ends. */
export interface Span {
  readonly low: number
  readonly nominal: number
  readonly high: number
}

/**
 * Range of a figure over independent spans: each number goes to the end that moves the figure most by itself, and the figure is taken there.
 *
 * Model    exact where the figure is monotone in each number whatever the others are; else the widest of all that was tried
 * @param compute  the figure at a list of numbers in the order of the spans
 */
export function findRange(
  spans: readonly Span[],
  compute: (values: readonly number[]) => number,
): { low: number; high: number } {
  const values = spans.map(({ nominal }) => nominal)
  const start = compute(values)
  let low = start
  let high = start
  const lowest = [...values]
  const highest = [...values]
  for (const [at, span] of spans.entries()) {
    if (span.low === span.high) continue
    values[at] = span.low
    const atLow = compute(values)
    values[at] = span.high
    const atHigh = compute(values)
    values[at] = span.nominal
    lowest[at] = atLow <= atHigh ? span.low : span.high
    highest[at] = atLow <= atHigh ? span.high : span.low
    low = Math.min(low, atLow, atHigh)
    high = Math.max(high, atLow, atHigh)
  }
  return { low: Math.min(low, compute(lowest)), high: Math.max(high, compute(highest)) }
}
