import { type Influence, MOST_ORDER, pointsOnPanel } from './influence'
import type { Panel } from './panels'

/** The rest varies over the planes' spacing, and no panel is longer than that: short ones need few points. */
const COUNTS = [
  { upTo: 0.06, count: 4 },
  { upTo: 0.2, count: 6 },
] as const
const MOST_COUNT = 10
/** Below this the difference of two large numbers is taken from its series. */
const SMALL = 1e-3
/** e^-36 is below the accuracy of a double. */
const MOST_AWAY = 18

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
  const share = panel.halfLength / spacing
  const needed = share < COUNTS[0].upTo ? COUNTS[0].count : share < COUNTS[1].upTo ? COUNTS[1].count : MOST_COUNT
  const { nodes, weights, polynomials } = pointsOnPanel(Math.max(needed, panel.order))
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
    // |sinh(a + ib)|² = sinh²a + sin²b; so far off that all angles are alike, the ratio of two of them is 1.
    const sinhAway = Math.sinh(Math.min(MOST_AWAY, Math.abs(kappa * awayX)))
    const awaySquare = sinhAway * sinhAway
    const sinImage = Math.sin(kappa * image)
    const sinDirect = Math.sin(kappa * direct)
    const ofImage = awaySquare + sinImage * sinImage
    const ofDirect = awaySquare + sinDirect * sinDirect
    const rest =
      0.5 *
      Math.log((isSmall ? ofImage / (kappa * kappa) : (ofImage * directSquare) / ofDirect) / (imageSquare * topSquare))
    let fieldY = 0
    if (withField) {
      // Imaginary part of coth(a + ib) is -sin b cos b over the same square.
      let im = (-kappa * sinImage * Math.cos(kappa * image)) / ofImage + image / imageSquare + toTop / topSquare
      if (isSmall) im -= (kappa * kappa * direct) / 3
      else im += (kappa * sinDirect * Math.cos(kappa * direct)) / ofDirect - direct / directSquare
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
