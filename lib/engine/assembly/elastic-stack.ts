import { atEnds, effectiveModulusGpa, type Leaf, type TolerancedLayer } from '../bending'
import type { Span } from '../numerics'
import type { LeafSection } from './bend-section'

/** Layers of a leaf as numbers, with the ends that tolerances and the spread of constants give them. */
export interface ElasticStack {
  readonly thicknessUm: readonly Span[]
  /** Coverage-weighted, of the elastic section. */
  readonly modulusGpa: readonly Span[]
}

export function readElasticStack(leaf: Leaf, { layers }: LeafSection): ElasticStack {
  return {
    thicknessUm: layers.map(spanOfThickness),
    modulusGpa: layers.map((layer, at) => spanOfModulus(layer, leaf.section.layers[at]?.effectiveModulusGpa ?? 0)),
  }
}

/** Coverage-weighted modulus over the spread of the layer's constants. */
export function spanOfModulus(layer: TolerancedLayer, nominal: number): Span {
  const { spreads = [] } = layer
  if (spreads.length === 0) return { low: nominal, nominal, high: nominal }
  // Every constant stiffens its layer as it grows, copper being stiffer than what fills its gaps.
  const ends = (['low', 'high'] as const).map((end) => effectiveModulusGpa(layer.id, atEnds(layer, spreads, end)))
  return { low: Math.min(nominal, ...ends), nominal, high: Math.max(nominal, ...ends) }
}

export const spanOfThickness = ({ thicknessUm, minusUm, plusUm }: TolerancedLayer): Span => ({
  low: thicknessUm - minusUm,
  nominal: thicknessUm,
  high: thicknessUm + plusUm,
})

/** Axis and rigidity of a stack, about its own axis, um and GPa um^3. */
export function bendStack(modulusGpa: readonly number[], thicknessUm: readonly number[]) {
  let depthUm = 0
  let stretching = 0
  let first = 0
  let second = 0
  for (const [at, modulus] of modulusGpa.entries()) {
    const t = thicknessUm[at] ?? 0
    const middleUm = depthUm + t / 2
    stretching += modulus * t
    first += modulus * t * middleUm
    second += modulus * t * (middleUm ** 2 + t ** 2 / 12)
    depthUm += t
  }
  const axisUm = first / stretching
  return { axisUm, depthUm, stretching, rigidity: second - stretching * axisUm ** 2 }
}
