import { findMaterial } from './cross-checks'
import type { Design } from './design'
import type { Material } from './material'

const METALS: readonly Material['kind'][] = ['copper-foil', 'metal-sheet']

/** Films, adhesives and boards that the construction is made of, each once, in the order of the layers. */
export function listOrganicMaterials(design: Design): Material[] {
  const ids = new Set(
    design.construction.layers.flatMap((layer) => (layer.kind === 'unbonded-gap' ? [] : [layer.materialId])),
  )
  return [...ids].flatMap((id) => {
    const material = findMaterial(design, id)
    return material === null || METALS.includes(material.kind) ? [] : [material]
  })
}
