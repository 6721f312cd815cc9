import type { Layer } from '@/lib/engine'
import type { HatchPattern } from './hatch'
import type { Palette } from './palette'

export type LayerKind = Layer['kind']

interface LayerAppearance {
  readonly fill: keyof Palette | null
  readonly hatch: HatchPattern
}

/**
 * Each kind has its own pattern, so that a drawing can be read without colour; the text beside it says the kind too.
 * Neighbours that occur together (film and adhesive, film and coverlay film) differ most.
 */
const APPEARANCES: Record<LayerKind, LayerAppearance> = {
  conductor: { fill: 'copper', hatch: 'none' },
  'base-film': { fill: 'film', hatch: 'rising' },
  adhesive: { fill: 'adhesive', hatch: 'dots' },
  'coverlay-film': { fill: 'film', hatch: 'falling' },
  bondply: { fill: 'prepreg', hatch: 'dashes' },
  'no-flow-prepreg': { fill: 'prepreg', hatch: 'crossed' },
  'rigid-laminate': { fill: 'laminate', hatch: 'grid' },
  'solder-mask': { fill: 'mask', hatch: 'upright' },
  stiffener: { fill: 'stiffener', hatch: 'paired' },
  'shield-film': { fill: 'shield', hatch: 'zigzag' },
  'unbonded-gap': { fill: null, hatch: 'none' },
}

export function getLayerAppearance(kind: string): LayerAppearance {
  const appearance = APPEARANCES[kind as LayerKind]
  if (appearance === undefined) throw new RangeError(`no appearance for the layer kind "${kind}"`)
  return appearance
}
