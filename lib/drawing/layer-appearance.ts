import type { Layer } from '@/lib/engine'
import type { HatchPattern } from './hatch'
import type { Palette } from './palette'

export type LayerKind = Layer['kind']

interface LayerAppearance {
  readonly label: string
  readonly fill: keyof Palette | null
  readonly hatch: HatchPattern
}

/**
 * Each kind has its own pattern, so that a drawing can be read without colour; the text beside it says the kind too.
 * Neighbours that occur together (film and adhesive, film and coverlay film) differ most.
 */
const APPEARANCES: Record<LayerKind, LayerAppearance> = {
  conductor: { label: 'Conductor', fill: 'copper', hatch: 'none' },
  'base-film': { label: 'Base film', fill: 'film', hatch: 'rising' },
  adhesive: { label: 'Adhesive', fill: 'adhesive', hatch: 'dots' },
  'coverlay-film': { label: 'Coverlay film', fill: 'film', hatch: 'falling' },
  bondply: { label: 'Bondply', fill: 'prepreg', hatch: 'dashes' },
  'no-flow-prepreg': { label: 'No-flow prepreg', fill: 'prepreg', hatch: 'crossed' },
  'rigid-laminate': { label: 'Rigid laminate', fill: 'laminate', hatch: 'grid' },
  'solder-mask': { label: 'Solder mask', fill: 'mask', hatch: 'upright' },
  stiffener: { label: 'Stiffener', fill: 'stiffener', hatch: 'paired' },
  'shield-film': { label: 'Shield film', fill: 'shield', hatch: 'zigzag' },
  'unbonded-gap': { label: 'Unbonded gap', fill: null, hatch: 'none' },
}

export function getLayerAppearance(kind: string): LayerAppearance {
  const appearance = APPEARANCES[kind as LayerKind]
  if (appearance === undefined) throw new RangeError(`no appearance for the layer kind "${kind}"`)
  return appearance
}

export function getLayerKindLabel(kind: string): string {
  return getLayerAppearance(kind).label
}
