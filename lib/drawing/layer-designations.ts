import type { Construction } from '@/lib/engine'

export interface LayerDesignation {
  /** `L2`: conductor layers counted from the top face down. */
  readonly conductor: string
  /** `F1`: the same layer counted among those that a flex zone carries; null for layers of rigid zones only. */
  readonly flex: string | null
}

/** Names of conductor layers by position, so that drawing, layer table and notes agree; keyed by layer id. */
export function nameConductorLayers(construction: Construction): Map<string, LayerDesignation> {
  const inFlex = new Set<string>()
  for (const zone of construction.zones) {
    if (zone.kind === 'flex') for (const presence of zone.presence) inFlex.add(presence.layerId)
  }
  const names = new Map<string, LayerDesignation>()
  let conductorCount = 0
  let flexCount = 0
  for (const layer of construction.layers) {
    if (layer.kind !== 'conductor') continue
    conductorCount += 1
    const isFlex = inFlex.has(layer.id)
    if (isFlex) flexCount += 1
    names.set(layer.id, { conductor: `L${conductorCount}`, flex: isFlex ? `F${flexCount}` : null })
  }
  return names
}

/** `F1 (L2)` or `L1`. */
export function formatDesignation(designation: LayerDesignation): string {
  return designation.flex === null ? designation.conductor : `${designation.flex} (${designation.conductor})`
}
