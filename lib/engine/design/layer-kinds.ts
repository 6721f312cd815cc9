import type { Layer } from './construction'
import type { MaterialKind } from './material'

interface LayerKindFacts {
  /** As people call it, at the head of a row and in a picker. */
  readonly name: string
  /** Kinds of material that it may be made of, the likeliest first; an unbonded gap is air. */
  readonly materials: readonly MaterialKind[]
  /** Common thickness of a new layer: a beginning that the person then changes. */
  readonly usualThicknessUm: number
}

/**
 * What there is to know of each kind of layer. A new kind is named by the compiler here, and wherever else something depends on
 * the kind; pickers list what stands here, in this order.
 */
export const LAYER_KIND_FACTS = {
  conductor: { name: 'Conductor', materials: ['copper-foil'], usualThicknessUm: 18 },
  'base-film': { name: 'Base film', materials: ['polymer-film'], usualThicknessUm: 25 },
  adhesive: { name: 'Adhesive', materials: ['adhesive'], usualThicknessUm: 25 },
  'coverlay-film': { name: 'Coverlay film', materials: ['polymer-film'], usualThicknessUm: 25 },
  bondply: { name: 'Bondply', materials: ['adhesive', 'prepreg', 'polymer-film'], usualThicknessUm: 50 },
  'no-flow-prepreg': { name: 'No-flow prepreg', materials: ['prepreg'], usualThicknessUm: 60 },
  'rigid-laminate': { name: 'Rigid laminate', materials: ['rigid-laminate'], usualThicknessUm: 200 },
  'solder-mask': { name: 'Solder mask', materials: ['solder-mask'], usualThicknessUm: 25 },
  stiffener: { name: 'Stiffener', materials: ['rigid-laminate', 'polymer-film', 'metal-sheet'], usualThicknessUm: 200 },
  'shield-film': { name: 'Shield film', materials: ['shield-film'], usualThicknessUm: 20 },
  'unbonded-gap': { name: 'Unbonded gap', materials: [], usualThicknessUm: 100 },
} as const satisfies Readonly<Record<Layer['kind'], LayerKindFacts>>

export const LAYER_KINDS = Object.keys(LAYER_KIND_FACTS) as readonly Layer['kind'][]

export const LAYER_KIND_NAMES = Object.fromEntries(
  Object.entries(LAYER_KIND_FACTS).map(([kind, { name }]) => [kind, name]),
) as Readonly<Record<Layer['kind'], string>>

/** The name of a kind; the kind itself where results of a later version hold one that is not known here. */
export function nameLayerKind(kind: string): string {
  return Object.hasOwn(LAYER_KIND_NAMES, kind) ? LAYER_KIND_NAMES[kind as Layer['kind']] : kind
}
