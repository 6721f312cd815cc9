export interface GaussRule {
  readonly nodes: readonly number[]
  readonly weights: readonly number[]
}

const RULES = new Map<number, GaussRule>()

/** Gauss-Legendre nodes and weights on -1 to 1, by Newton steps on the Legendre polynomial. Exact mathematics. */
export function gaussRule(count: number): GaussRule {
  const known = RULES.get(count)
  if (known !== undefined) return known
  const nodes: number[] = []
  const weights: number[] = []
  for (let index = 0; index < count; index += 1) {
    let x = -Math.cos((Math.PI * (index + 0.75)) / (count + 0.5))
    let slope = 1
    for (let step = 0; step < 12; step += 1) {
      let before = 1
      let now = x
      for (let n = 2; n <= count; n += 1) {
        const next = ((2 * n - 1) * x * now - (n - 1) * before) / n
        before = now
        now = next
      }
      if (count === 1) before = 1
      slope = (count * (x * now - before)) / (x * x - 1)
      x -= now / slope
    }
    nodes.push(x)
    weights.push(2 / ((1 - x * x) * slope * slope))
  }
  const rule = { nodes, weights }
  RULES.set(count, rule)
  return rule
}
