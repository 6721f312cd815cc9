import { gaussRule } from './gauss'
import type { Panel } from './panels'

/** Most polynomials on a panel. */
export const MOST_ORDER = 8
/** Sum of distances to a panel's ends, in half lengths, beyond which a series of moments is as exact as the closed form, and cheaper. */
const FAR = 6
/** Beyond `beyond` as many terms leave out less than 1e-7 of the potential: the term of s^k falls with the k-th power of half that sum. */
const TERMS = [
  { beyond: 40, count: 5 },
  { beyond: 14, count: 8 },
  { beyond: 0, count: 15 },
] as const
const MOST_TERMS = 16

/** Potential and upward field at a point from each polynomial of a panel, with unit permittivity of vacuum. */
export interface Influence {
  readonly potential: Float64Array
  readonly fieldY: Float64Array
}

export const makeInfluence = (): Influence => ({
  potential: new Float64Array(MOST_ORDER),
  fieldY: new Float64Array(MOST_ORDER),
})

/** ∫P_n(s) s^k ds from -1 to 1 at `[n * MOST_TERMS + k]`; zero where k is less than n, or n and k are not both even or odd. */
let knownMoments: Float64Array | null = null

function getMoments(): Float64Array {
  if (knownMoments !== null) return knownMoments
  // As many points integrate the highest product exactly.
  const { nodes, weights, polynomials } = pointsOnPanel((MOST_ORDER + MOST_TERMS) / 2 + 1)
  const moments = new Float64Array(MOST_ORDER * MOST_TERMS)
  for (let n = 0; n < MOST_ORDER; n += 1) {
    for (let k = n; k < MOST_TERMS; k += 2) {
      moments[n * MOST_TERMS + k] = nodes.reduce(
        (sum, node, at) => sum + (weights[at] as number) * (polynomials[at * MOST_ORDER + n] as number) * node ** k,
        0,
      )
    }
  }
  knownMoments = moments
  return moments
}

/** Powers of 1/ζ. */
const powersRe = new Float64Array(MOST_TERMS + 1)
const powersIm = new Float64Array(MOST_TERMS + 1)

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
 * panel gets the principal value. Farther off by the moments of the polynomials. Exact mathematics.
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
  if (spread > FAR) {
    addFarInfluence(re, im, spread, factor, ySign, { halfX, halfY, halfLength, order }, into, withField)
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

/** With ζ far off, ∫P_n ln(ζ-s)ds is ln ζ ∫P_n ds less the moments over k ζ^k, and ∫P_n/(ζ-s)ds the moments over ζ^(k+1). */
function addFarInfluence(
  re: number,
  im: number,
  spread: number,
  factor: number,
  ySign: number,
  { halfX, halfY, halfLength, order }: Pick<Panel, 'halfX' | 'halfY' | 'halfLength' | 'order'>,
  { potential, fieldY }: Influence,
  withField: boolean,
): void {
  const moments = getMoments()
  const count = spread > TERMS[0].beyond ? TERMS[0].count : spread > TERMS[1].beyond ? TERMS[1].count : TERMS[2].count
  const square = re * re + im * im
  const inverseRe = re / square
  const inverseIm = -im / square
  let powerRe = 1
  let powerIm = 0
  for (let k = 1; k <= count; k += 1) {
    const next = powerRe * inverseRe - powerIm * inverseIm
    powerIm = powerRe * inverseIm + powerIm * inverseRe
    powerRe = next
    powersRe[k] = powerRe
    powersIm[k] = powerIm
  }
  potential[0] = (potential[0] as number) - factor * (Math.log(square) + 2 * Math.log(halfLength))
  const most = Math.min(order, count)
  for (let n = 0; n < most; n += 1) {
    let sum = 0
    for (let k = n === 0 ? 2 : n; k < count; k += 2) {
      sum += ((moments[n * MOST_TERMS + k] as number) * (powersRe[k] as number)) / k
    }
    potential[n] = (potential[n] as number) + factor * sum
  }
  if (!withField) return
  const perSquare = (ySign * factor) / (halfLength * halfLength)
  for (let n = 0; n < most; n += 1) {
    let sumRe = 0
    let sumIm = 0
    for (let k = n; k < count; k += 2) {
      const moment = moments[n * MOST_TERMS + k] as number
      sumRe += moment * (powersRe[k + 1] as number)
      sumIm += moment * (powersIm[k + 1] as number)
    }
    fieldY[n] = (fieldY[n] as number) - perSquare * (sumIm * halfX - sumRe * halfY)
  }
}
