import { requireNumber } from '../numerics'
import { curvatureAt, findAxisUm, type StripStack, stressGpa, stressIntegral, type YieldScale } from './bent-state'
import { type BendLayer, FILM_SLOPE_FRACTION } from './layers'
import { type Loading, requireInsideRadiusUm, yieldScaleOf } from './strain'
import { atEnds, computeStrainRanges, type TolerancedLayer } from './strain-range'
import { type Strip, stripsOf } from './strips'

const PCT = 100
/** Past this a pull is no small addition: our choice. The copper is then fully past yield, and films creep. */
export const MOST_PULL_STRAIN_PCT = 1
/** Of the strain; Newton's steps square their error. */
const STRAIN_TOLERANCE = 1e-12
const MAX_STEPS = 100

/**
 * Strain that a force along the part adds to a bent section.
 *
 * Model    with the section bent to its curvature, eps = kappa (y - y0) + delta, bilinear in each strip; sum N = F fixes delta, which is
 *          F / sum(E t) while nothing yields and more where copper past yield carries no more. Flexed one way the force is taken to come and go
 *          with the bend, so that delta is that of the range (every yield doubled); reversed, half of the force, since half of the range decides.
 * Holds    a part that may contract sideways (uniaxial moduli: a little more strain than a wide, short leaf that is held); no creep. The force
 *          is shared evenly over the width.
 * @param pullNPerMm  force over the width, >= 0
 * @returns per cent; null past MOST_PULL_STRAIN_PCT, or where the section cannot carry the force
 * @throws  RangeError naming the argument
 * Source   SOURCES.compositeBeam, SOURCES.plasticBending; section under moment and force in test/standards/bending
 */
export function computePullStrainPct(
  layers: readonly BendLayer[],
  { insideRadiusMm, loading, pullNPerMm }: { insideRadiusMm: number; loading: Loading; pullNPerMm: number },
): number | null {
  requireNumber('pullNPerMm', pullNPerMm, { atLeast: 0, unit: 'N/mm' })
  if (pullNPerMm === 0) return 0
  const stack = makeFreeStack(layers)
  const bending = { insideRadiusUm: requireInsideRadiusUm(insideRadiusMm) }
  const yieldScale = yieldScaleOf(loading)
  const axisUm = findAxisUm(stack, bending, yieldScale)
  const curvature = curvatureAt(bending, axisUm)
  const forceNPerMm = loading === 'reversed' ? pullNPerMm / 2 : pullNPerMm
  const most = MOST_PULL_STRAIN_PCT / PCT
  const at = (strain: number) => findForce(stack, { axisUm, curvature, yieldScale, strain })
  if (at(most).forceNPerMm < forceNPerMm) return null
  let low = 0
  let high = most
  let strain = 0
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const { forceNPerMm: found, slopeNPerMm } = at(strain)
    if (found < forceNPerMm) low = strain
    else high = strain
    const newton = strain + (forceNPerMm - found) / slopeNPerMm
    const next = newton > low && newton < high ? newton : low + (high - low) / 2
    const isClose = Math.abs(next - strain) <= STRAIN_TOLERANCE * next
    strain = next
    if (isClose) break
  }
  return PCT * strain
}

/** The layers without the stiffness that held width brings. */
function makeFreeStack(layers: readonly BendLayer[]): StripStack {
  return {
    thicknessUm: layers.map(({ thicknessUm }) => thicknessUm),
    strips: layers.map((layer) => stripsOf(free(layer))),
  }
}

const free = <T extends BendLayer>(layer: T): T => ({
  ...layer,
  lateral: 'free',
  ...(layer.conductor !== undefined && { conductor: { ...layer.conductor, fillPoisson: 0 } }),
})

/**
 * Bound of the strain that a pull adds over tolerances and the spread of constants.
 *
 * Model    a force that the section carries for certain at each added strain: films with their least modulus and thickness, a tenth of it where
 *          the greatest strain of any face passes their yield; copper of least strength, coverage and thickness, with the modulus of either end, at
 *          the place within the range of its strains where it carries least, which is one of the ends. The bound is where that force is F.
 * @param radiusToleranceMm  below insideRadiusMm
 * @returns per cent; null past MOST_PULL_STRAIN_PCT
 * @throws  RangeError naming the argument
 * Source   as computePullStrainPct; random corners in test/unit/verdicts stay below it
 */
export function boundPullStrainPct(
  layers: readonly TolerancedLayer[],
  {
    insideRadiusMm,
    radiusToleranceMm,
    loading,
    pullNPerMm,
  }: { insideRadiusMm: number; radiusToleranceMm: number; loading: Loading; pullNPerMm: number },
): number | null {
  requireNumber('pullNPerMm', pullNPerMm, { atLeast: 0, unit: 'N/mm' })
  if (pullNPerMm === 0) return 0
  const yieldScale = yieldScaleOf(loading)
  const { conductors, surfaces } = computeStrainRanges({
    layers: layers.map(free),
    insideRadiusMm,
    radiusMinusMm: radiusToleranceMm,
    radiusPlusMm: radiusToleranceMm,
    loading,
  })
  const mostAtFaces =
    Math.max(...[surfaces.inner, surfaces.outer].flatMap(({ minPct, maxPct }) => [-minPct, maxPct])) / PCT
  const curvature = 1 / requireInsideRadiusUm(insideRadiusMm - radiusToleranceMm)
  const carriers = layers.flatMap((layer): ((strain: number) => number)[] => {
    const leastUm = layer.thicknessUm - layer.minusUm
    const low = atEnds(layer, layer.spreads ?? [], 'low')
    if (layer.conductor === undefined) {
      return [(strain) => leastUm * filmStress(low.modulusGpa, low.yieldStrainPct, mostAtFaces, strain, yieldScale)]
    }
    const range = conductors.find(({ id }) => id === layer.id)
    const high = atEnds(layer, layer.spreads ?? [], 'high')
    const { fillModulusGpa = 0, fillYieldStrainPct, coverageFraction = 0 } = low.conductor ?? {}
    const fillUm = leastUm * (1 - (high.conductor?.coverageFraction ?? 1))
    const copper =
      range === undefined || coverageFraction === 0
        ? []
        : [low.modulusGpa, high.modulusGpa].flatMap((modulusGpa) => stripsOf(free({ ...low, modulusGpa })).slice(0, 1))
    const spanStrain = curvature * leastUm
    const places = range === undefined ? [] : [range.inner.minPct / PCT, range.outer.maxPct / PCT - spanStrain]
    return [
      (strain) => fillUm * filmStress(fillModulusGpa, fillYieldStrainPct, mostAtFaces, strain, yieldScale),
      ...(copper.length === 0
        ? []
        : [
            (strain: number) =>
              Math.min(
                ...copper.flatMap((strip) =>
                  places.map((from) => copperForce(strip, { from, spanStrain, strain, yieldScale }) / curvature),
                ),
              ),
          ]),
    ]
  })
  const forceNPerMm = loading === 'reversed' ? pullNPerMm / 2 : pullNPerMm
  const carried = (strain: number): number => carriers.reduce((sum, carry) => sum + carry(strain), 0)
  let low = 0
  let high = MOST_PULL_STRAIN_PCT / PCT
  if (carried(high) < forceNPerMm) return null
  // The upper end is kept: a bound.
  while (high - low > BOUND_TOLERANCE * high) {
    const middle = (low + high) / 2
    if (carried(middle) < forceNPerMm) low = middle
    else high = middle
  }
  return PCT * high
}

/** Of the bound, which needs no more digits. */
const BOUND_TOLERANCE = 1e-6

/** Stress that an added strain brings a film at least. */
function filmStress(
  modulusGpa: number,
  yieldStrainPct: number | undefined,
  most: number,
  strain: number,
  yieldScale: YieldScale,
): number {
  const isPastYield = yieldStrainPct !== undefined && most + strain > (yieldScale * yieldStrainPct) / PCT
  return (isPastYield ? FILM_SLOPE_FRACTION : 1) * modulusGpa * strain
}

/** Force times curvature that an added strain brings a strip whose strains run from `from` over `spanStrain`. */
function copperForce(
  strip: Strip,
  {
    from,
    spanStrain,
    strain,
    yieldScale,
  }: { from: number; spanStrain: number; strain: number; yieldScale: YieldScale },
): number {
  const at = (edge: number) => stressIntegral(strip, edge, yieldScale)
  const to = from + spanStrain
  return Math.max(0, strip.widthFraction * (at(to + strain) - at(from + strain) - at(to) + at(from)))
}

/** Force over the width, and its slope over the added strain. 1 GPa um is 1 N/mm. */
function findForce(
  { thicknessUm, strips }: StripStack,
  {
    axisUm,
    curvature,
    yieldScale,
    strain,
  }: { axisUm: number; curvature: number; yieldScale: YieldScale; strain: number },
): { forceNPerMm: number; slopeNPerMm: number } {
  let force = 0
  let slope = 0
  let depthUm = 0
  for (let at = 0; at < strips.length; at += 1) {
    const inner = curvature * (depthUm - axisUm) + strain
    depthUm += thicknessUm[at] ?? 0
    const outer = curvature * (depthUm - axisUm) + strain
    for (const strip of strips[at] ?? []) {
      force +=
        strip.widthFraction * (stressIntegral(strip, outer, yieldScale) - stressIntegral(strip, inner, yieldScale))
      slope += strip.widthFraction * (stressGpa(strip, outer, yieldScale) - stressGpa(strip, inner, yieldScale))
    }
  }
  return { forceNPerMm: force / curvature, slopeNPerMm: slope / curvature }
}
