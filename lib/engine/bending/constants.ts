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

export function withConstant<T extends BendLayer>(layer: T, constant: LayerConstant, value: number): T {
  return withConstants(layer, [{ constant, value }])
}

/** The layer with several constants moved, copied once: searches over corners make many of them. */
export function withConstants<T extends BendLayer>(
  layer: T,
  moved: readonly { readonly constant: LayerConstant; readonly value: number }[],
): T {
  const copy: T = { ...layer }
  let conductor: BendLayer['conductor']
  for (const { constant, value } of moved) {
    if (constant !== 'coverageFraction' && constant !== 'fillModulusGpa' && constant !== 'fillYieldStrainPct') {
      copy[constant] = value
    } else if (layer.conductor !== undefined) {
      conductor ??= { ...layer.conductor }
      conductor[constant] = value
    }
  }
  if (conductor !== undefined) copy.conductor = conductor
  return copy
}
