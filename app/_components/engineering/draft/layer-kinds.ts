import {
  type Design,
  findMaterial,
  type Layer,
  listLibraryMaterials,
  MATERIALS_OF_LAYER,
  type Material,
  NO_PLATING,
} from '@/lib/engine'

export const LAYER_KINDS = [
  'conductor',
  'base-film',
  'adhesive',
  'coverlay-film',
  'bondply',
  'no-flow-prepreg',
  'rigid-laminate',
  'solder-mask',
  'stiffener',
  'shield-film',
  'unbonded-gap',
] as const satisfies readonly Layer['kind'][]

/** The design's own materials and the library's that suit a layer kind, the likeliest kind first. */
export function listMaterialsFor(design: Design, kind: Layer['kind']): Material[] {
  if (kind === 'unbonded-gap') return []
  const kinds = MATERIALS_OF_LAYER[kind]
  return [...design.materials, ...listLibraryMaterials()]
    .filter((material) => kinds.includes(material.kind))
    .sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind))
}

/** Common thickness of a new layer of each kind, um: a beginning that the person then changes. */
const USUAL_THICKNESS_UM: Record<Layer['kind'], number> = {
  conductor: 18,
  'base-film': 25,
  adhesive: 25,
  'coverlay-film': 25,
  bondply: 50,
  'no-flow-prepreg': 60,
  'rigid-laminate': 200,
  'solder-mask': 25,
  stiffener: 200,
  'shield-film': 20,
  'unbonded-gap': 100,
}

/** A layer of another kind in the same place: what both kinds have is kept, the rest begins at usual values. */
export function makeLayerOfKind(
  design: Design,
  kind: Layer['kind'],
  base: { readonly id: string; readonly name: string; readonly from: Layer | null },
): Layer {
  const { id, name, from } = base
  const thicknessUm = from?.thicknessUm ?? USUAL_THICKNESS_UM[kind]
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
