import { listLibraryMaterials } from '../materials'
import { type Layer, NO_PLATING } from './construction'
import { findMaterial } from './cross-checks'
import type { Design } from './design'
import { LAYER_KIND_FACTS } from './layer-kinds'
import type { Material, MaterialKind } from './material'
import { readOwnMaterialId } from './own-materials'

/** An id that no entry of the list has: the prefix and the next free number. */
export function makeFreshId(prefix: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map((entry) => entry.id))
  let number = taken.length + 1
  while (ids.has(`${prefix}-${number}`)) number += 1
  return `${prefix}-${number}`
}

/**
 * The design's own materials and the library's that suit a layer kind, and after them those that are offered besides; the likeliest kind first.
 */
export function listMaterialsFor(
  design: Pick<Design, 'materials'>,
  kind: Layer['kind'],
  offered: readonly Material[] = [],
): Material[] {
  const kinds: readonly MaterialKind[] = LAYER_KIND_FACTS[kind].materials
  const own = new Set(design.materials.map(({ id }) => id))
  return (
    [...design.materials, ...listLibraryMaterials(), ...offered.filter(({ id }) => !own.has(id))]
      // What a plating bath adds is no layer's foil.
      .filter((material) => kinds.includes(material.kind) && material.foil?.type !== 'plated')
      .sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind))
  )
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

/** What layers and their plating are made of, each once, in the order of the layers. */
export function listLayerMaterialIds(layers: readonly Layer[]): ReadonlySet<string> {
  return new Set(
    layers.flatMap((layer) => [
      ...(layer.kind === 'unbonded-gap' ? [] : [layer.materialId]),
      ...(layer.kind === 'conductor' && layer.plating.materialId !== null ? [layer.plating.materialId] : []),
    ]),
  )
}

/**
 * The design with a copy of each offered material that its layers are made of, so that it holds what its results rest on. Copies that
 * nothing is made of any more go; materials that came with the design itself stay.
 */
export function withTakenMaterials(design: Design, offered: readonly Material[]): Design {
  const used = new Set([
    ...listLayerMaterialIds(design.construction.layers),
    ...design.brief.outgassing.map(({ materialId }) => materialId),
  ])
  const own = new Set(design.materials.map(({ id }) => id))
  const kept = design.materials.filter(({ id }) => used.has(id) || readOwnMaterialId(id) === null)
  const taken = offered.filter(({ id }) => used.has(id) && !own.has(id))
  if (taken.length === 0 && kept.length === design.materials.length) return design
  return { ...design, materials: [...kept, ...taken] }
}
