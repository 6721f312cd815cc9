import { gaussRule } from './gauss'
import type { Panel } from './panels'

/** Most polynomials on a panel. */
export const MOST_ORDER = 8
/** Sum of distances to a panel's ends, in half lengths, from which sums over points are as exact as closed forms. */
const FAR = 5
/** With few polynomials the recurrence holds farther out, and a closed form is cheaper than many points. */
const FAR_FOR_FEW = 14
const FEW = 4
const VERY_FAR = 14
const NEAR_COUNT = 10
const FAR_COUNT = 6

/** Potential and upward field at a point from each polynomial of a panel, with unit permittivity of vacuum. */
export interface Influence {
  readonly potential: Float64Array
  readonly fieldY: Float64Array
}

export const makeInfluence = (): Influence => ({
  potential: new Float64Array(MOST_ORDER),
  fieldY: new Float64Array(MOST_ORDER),
})

const functionsRe = new Float64Array(MOST_ORDER + 2)
const functionsIm = new Float64Array(MOST_ORDER + 2)

interface PointsOnPanel {
  readonly nodes: readonly number[]
  readonly weights: readonly number[]
  /** Polynomial n at node k: `[k * MOST_ORDER + n]`. */
  readonly polynomials: Float64Array
}

const POINTS = new Map<number, PointsOnPanel>()

export function pointsOnPanel(count: number): PointsOnPanel {
  const known = POINTS.get(count)
  if (known !== undefined) return known
  const rule = gaussRule(count)
  const polynomials = new Float64Array(count * MOST_ORDER)
  rule.nodes.forEach((x, k) => {
    polynomials[k * MOST_ORDER] = 1
    polynomials[k * MOST_ORDER + 1] = x
    for (let n = 2; n < MOST_ORDER; n += 1) {
      const before = polynomials[k * MOST_ORDER + n - 2] as number
      const now = polynomials[k * MOST_ORDER + n - 1] as number
      polynomials[k * MOST_ORDER + n] = ((2 * n - 1) * x * now - (n - 1) * before) / n
    }
  })
  const points = { ...rule, polynomials }
  POINTS.set(count, points)
  return points
}

/**
 * Adds what a panel does at (x, y), times `sign`: the logarithmic potential -ln(r)/2π of each Legendre polynomial on it. Near by in closed
 * form, by Legendre functions of the second kind: ∫P_n(s)/(ζ-s)ds = 2 Q_n(ζ), and so ∫P_n ln(ζ-s)ds = 2(Q_{n+1}-Q_{n-1})/(2n+1); a point on the
 * panel gets the principal value. Farther off by Gauss points. Exact mathematics.
 * @param mirrored  turn the field's y component, for the charge's image in a plane
 */
export function addInfluence(
  { x: panelX, y: panelY, halfX, halfY, halfLength, order }: Panel,
  x: number,
  y: number,
  sign: number,
  mirrored: boolean,
  into: Influence,
  withField: boolean,
): void {
  const dx = x - panelX
  const dy = y - panelY
  const square = halfLength * halfLength
  const re = (dx * halfX + dy * halfY) / square
  const im = (dy * halfX - dx * halfY) / square
  const toStart = Math.sqrt((re + 1) * (re + 1) + im * im)
  const toEnd = Math.sqrt((re - 1) * (re - 1) + im * im)
  const factor = (sign * halfLength) / (2 * Math.PI)
  const ySign = mirrored ? -1 : 1
  const spread = toStart + toEnd
  if (spread > (order <= FEW ? FAR_FOR_FEW : FAR)) {
    const { nodes, weights, polynomials } = pointsOnPanel(spread > VERY_FAR ? FAR_COUNT : NEAR_COUNT)
    for (let k = 0; k < nodes.length; k += 1) {
      const node = nodes[k] as number
      const weight = (weights[k] as number) * factor
      const awayX = dx - node * halfX
      const awayY = dy - node * halfY
      const away = awayX * awayX + awayY * awayY
      const potential = -0.5 * Math.log(away) * weight
      const fieldY = ((ySign * awayY) / away) * weight
      for (let n = 0; n < order; n += 1) {
        const polynomial = polynomials[k * MOST_ORDER + n] as number
        into.potential[n] = (into.potential[n] as number) + potential * polynomial
        if (withField) into.fieldY[n] = (into.fieldY[n] as number) + fieldY * polynomial
      }
    }
    return
  }
  const isOn = Math.abs(im) < 1e-11 && Math.abs(re) < 1
  const logStart = Math.log(toStart)
  const logEnd = Math.log(toEnd)
  const angleStart = Math.atan2(im, re + 1)
  const angleEnd = Math.atan2(im, re - 1)
  functionsRe[0] = (logStart - logEnd) / 2
  functionsIm[0] = isOn ? 0 : (angleStart - angleEnd) / 2
  const count = order + 1
  // Q_1 = ζ Q_0 - 1, then the recurrence of Legendre functions.
  functionsRe[1] = re * (functionsRe[0] as number) - im * (functionsIm[0] as number) - 1
  functionsIm[1] = re * (functionsIm[0] as number) + im * (functionsRe[0] as number)
  for (let n = 1; n < count; n += 1) {
    const a = functionsRe[n] as number
    const b = functionsIm[n] as number
    functionsRe[n + 1] = ((2 * n + 1) * (re * a - im * b) - n * (functionsRe[n - 1] as number)) / (n + 1)
    functionsIm[n + 1] = ((2 * n + 1) * (re * b + im * a) - n * (functionsIm[n - 1] as number)) / (n + 1)
  }
  const constant =
    (re + 1) * logStart - im * angleStart - ((re - 1) * logEnd - im * angleEnd) - 2 + 2 * Math.log(halfLength)
  into.potential[0] = (into.potential[0] as number) - constant * factor
  for (let n = 1; n < order; n += 1) {
    const integral = (2 * ((functionsRe[n + 1] as number) - (functionsRe[n - 1] as number))) / (2 * n + 1)
    into.potential[n] = (into.potential[n] as number) - integral * factor
  }
  if (!withField) return
  // E_x - i E_y = 2 Q_n / h, with h the panel's half as a complex number.
  for (let n = 0; n < order; n += 1) {
    const a = (2 * (functionsRe[n] as number)) / square
    const b = (2 * (functionsIm[n] as number)) / square
    into.fieldY[n] = (into.fieldY[n] as number) - ySign * (b * halfX - a * halfY) * factor
  }
}
