import type { Design, Layer, Material, Zone } from '../design'
import { findLibraryMaterial } from '../materials'

/** Look-ups over one design, built once per evaluation: a list search per layer and zone would cost more than the sums. */
export interface DesignIndex {
  readonly design: Design
  readonly layersById: ReadonlyMap<string, Layer>
  readonly layerPositions: ReadonlyMap<string, number>
  readonly zonesById: ReadonlyMap<string, Zone>
  /** The design's own material first, then the library's. */
  readonly findMaterial: (materialId: string) => Material | null
}

export function indexDesign(design: Design): DesignIndex {
  const layersById = new Map<string, Layer>()
  const layerPositions = new Map<string, number>()
  design.construction.layers.forEach((layer, position) => {
    layersById.set(layer.id, layer)
    layerPositions.set(layer.id, position)
  })
  const own = new Map(design.materials.map((material) => [material.id, material]))
  return {
    design,
    layersById,
    layerPositions,
    zonesById: new Map(design.construction.zones.map((zone) => [zone.id, zone])),
    findMaterial: (materialId) => own.get(materialId) ?? findLibraryMaterial(materialId),
  }
}
