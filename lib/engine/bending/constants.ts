import type { BendLayer } from './layers'

/** Constants of a layer that may have a spread. */
export type LayerConstant =
  | 'modulusGpa'
  | 'poisson'
  | 'yieldStrengthMpa'
  | 'yieldStrainPct'
  | 'coverageFraction'
  | 'fillModulusGpa'
  | 'fillYieldStrainPct'

export function readConstant(layer: BendLayer, constant: LayerConstant): number {
  const value =
    constant === 'coverageFraction' || constant === 'fillModulusGpa' || constant === 'fillYieldStrainPct'
      ? layer.conductor?.[constant]
      : layer[constant]
  if (value === undefined) throw new RangeError(`layer ${layer.id} has a spread of ${constant} and no value of it`)
  return value
}

export function withConstant(layer: BendLayer, constant: LayerConstant, value: number): BendLayer {
  const { conductor } = layer
  if (constant !== 'coverageFraction' && constant !== 'fillModulusGpa' && constant !== 'fillYieldStrainPct') {
    return { ...layer, [constant]: value }
  }
  return conductor === undefined ? layer : { ...layer, conductor: { ...conductor, [constant]: value } }
}
