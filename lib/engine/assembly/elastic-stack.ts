import { effectiveModulusGpa, type Leaf, type TolerancedLayer, withConstant } from '../bending'
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
    modulusGpa: layers.map((layer, at) => {
      const nominal = leaf.section.layers[at]?.effectiveModulusGpa ?? 0
      const ends = [moveAll(layer, 'low'), moveAll(layer, 'high')].map((moved) => effectiveModulusGpa(layer.id, moved))
      return { low: Math.min(nominal, ...ends), nominal, high: Math.max(nominal, ...ends) }
    }),
  }
}

export const spanOfThickness = ({ thicknessUm, minusUm, plusUm }: TolerancedLayer): Span => ({
  low: thicknessUm - minusUm,
  nominal: thicknessUm,
  high: thicknessUm + plusUm,
})

/** Every constant stiffens its layer as it grows, copper being stiffer than what fills its gaps: the ends are those of all at once. */
function moveAll(layer: TolerancedLayer, end: 'low' | 'high'): TolerancedLayer {
  let moved = layer
  for (const spread of layer.spreads ?? []) {
    moved = { ...moved, ...withConstant(moved, spread.constant, spread[end]) }
  }
  return moved
}

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
