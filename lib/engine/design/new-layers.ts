import { listLibraryMaterials } from '../materials'
import { type Layer, NO_PLATING } from './construction'
import { findMaterial } from './cross-checks'
import type { Design } from './design'
import { LAYER_KIND_FACTS } from './layer-kinds'
import type { Material, MaterialKind } from './material'

/** An id that no entry of the list has: the prefix and the next free number. */
export function makeFreshId(prefix: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map((entry) => entry.id))
  let number = taken.length + 1
  while (ids.has(`${prefix}-${number}`)) number += 1
  return `${prefix}-${number}`
}

/** The design's own materials and the library's that suit a layer kind, the likeliest kind first. */
export function listMaterialsFor(design: Design, kind: Layer['kind']): Material[] {
  const kinds: readonly MaterialKind[] = LAYER_KIND_FACTS[kind].materials
  return [...design.materials, ...listLibraryMaterials()]
    .filter((material) => kinds.includes(material.kind))
    .sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind))
}

/** A layer of another kind in the same place: what both kinds have is kept, the rest begins at usual values. */
export function makeLayerOfKind(
  design: Design,
  kind: Layer['kind'],
  base: { readonly id: string; readonly name: string; readonly from: Layer | null },
): Layer {
  const { id, name, from } = base
  const thicknessUm = from?.thicknessUm ?? LAYER_KIND_FACTS[kind].usualThicknessUm
  if (kind === 'unbonded-gap') return { id, name, kind, thicknessUm }
  const common = {
    id,
    name,
    thicknessUm,
    tolerancePlusUm: from === null || from.kind === 'unbonded-gap' ? 0 : from.tolerancePlusUm,
    toleranceMinusUm: from === null || from.kind === 'unbonded-gap' ? 0 : from.toleranceMinusUm,
    materialId: chooseMaterialId(design, kind, from),
  }
  if (kind !== 'conductor') return { ...common, kind }
  return {
    ...common,
    kind,
    role: 'signal',
    planePattern: null,
    coverageFraction: 0.5,
    plating: NO_PLATING,
    processingLossUm: 0,
  }
}

function chooseMaterialId(design: Design, kind: Layer['kind'], from: Layer | null): string {
  const offered = listMaterialsFor(design, kind)
  const present = from === null || from.kind === 'unbonded-gap' ? null : findMaterial(design, from.materialId)
  if (present !== null && offered.some((material) => material.id === present.id)) return present.id
  return offered[0]?.id ?? ''
}
