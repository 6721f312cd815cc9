import {
  type Design,
  findMaterial,
  LAYER_KIND_FACTS,
  type Layer,
  listLibraryMaterials,
  type Material,
  type MaterialKind,
  NO_PLATING,
} from '@/lib/engine'

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
