import { type Influence, MOST_ORDER, pointsOnPanel } from './influence'
import type { Panel } from './panels'

/** The rest varies over the planes' spacing, and no panel is longer than that. */
const COUNT = 10
/** Below this the difference of two large numbers is taken from its series. */
const SMALL = 1e-3

/**
 * What is left of the potential between two planes after the charge and its two nearest images: with κ = π/(2b),
 * φ = (ln|sinh κ(z-z̄')| - ln|sinh κ(z-z')|)/2π, an exact solution (images summed; exact mathematics). It is smooth, so Gauss points do.
 */
export function addBetweenPlanes(
  panel: Panel,
  x: number,
  y: number,
  sign: number,
  spacing: number,
  into: Influence,
  withField: boolean,
): void {
  const { nodes, weights, polynomials } = pointsOnPanel(COUNT)
  const kappa = Math.PI / (2 * spacing)
  const factor = (sign * panel.halfLength) / (2 * Math.PI)
  for (let k = 0; k < nodes.length; k += 1) {
    const node = nodes[k] as number
    const awayX = x - panel.x - node * panel.halfX
    const sourceY = panel.y + node * panel.halfY
    const direct = y - sourceY
    const image = y + sourceY
    const toTop = image - 2 * spacing
    const imageSquare = awayX * awayX + image * image
    const topSquare = awayX * awayX + toTop * toTop
    const directSquare = awayX * awayX + direct * direct
    const isSmall = directSquare * kappa * kappa < SMALL * SMALL
    const weight = (weights[k] as number) * factor
    const rest =
      logSinh(kappa * awayX, kappa * image) -
      0.5 * Math.log(imageSquare * topSquare) -
      (isSmall ? Math.log(kappa) : logSinh(kappa * awayX, kappa * direct) - 0.5 * Math.log(directSquare))
    let fieldY = 0
    if (withField) {
      const ofImage = cothImaginary(kappa * awayX, kappa * image)
      let im = kappa * ofImage + image / imageSquare + toTop / topSquare
      if (isSmall) {
        im -= (kappa * kappa * direct) / 3
      } else {
        const ofDirect = cothImaginary(kappa * awayX, kappa * direct)
        im -= kappa * ofDirect + direct / directSquare
      }
      // E_x - i E_y is minus the derivative of the complex potential.
      fieldY = im * weight
    }
    for (let n = 0; n < panel.order; n += 1) {
      const polynomial = polynomials[k * MOST_ORDER + n] as number
      into.potential[n] = (into.potential[n] as number) + rest * weight * polynomial
      if (withField) into.fieldY[n] = (into.fieldY[n] as number) + fieldY * polynomial
    }
  }
}

/** ln|sinh(a + ib)|, without overflow. */
function logSinh(a: number, b: number): number {
  const away = Math.abs(a)
  if (away > 18) return away - Math.LN2
  const real = Math.sinh(away)
  const imaginary = Math.sin(b)
  return 0.5 * Math.log(real * real + imaginary * imaginary)
}

/** Imaginary part of coth(a + ib), from which the field across the planes follows. */
function cothImaginary(a: number, b: number): number {
  if (Math.abs(a) > 18) return 0
  return -Math.sin(2 * b) / (Math.cosh(2 * a) - Math.cos(2 * b))
}
