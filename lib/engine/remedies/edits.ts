import type { Bend, ConductorLayer, Design, DielectricLayer, Layer, Zone } from '../design'

// Edits share whatever they leave alone with the design that they start from: nothing is mutated, and the assembly
// sees by identity what has to be recomputed.

export function editConstruction(design: Design, change: Partial<Design['construction']>): Design {
  return { ...design, construction: { ...design.construction, ...change } }
}

export function editLayers(design: Design, change: (layer: Layer) => Layer): Design {
  return editConstruction(design, { layers: design.construction.layers.map(change) })
}

export function editConductorLayers(
  design: Design,
  layerIds: ReadonlySet<string>,
  change: (layer: ConductorLayer) => ConductorLayer,
): Design {
  return editLayers(design, (layer) => (layer.kind === 'conductor' && layerIds.has(layer.id) ? change(layer) : layer))
}

export function editZone(design: Design, zoneId: string, change: (zone: Zone) => Zone): Design {
  return editConstruction(design, {
    zones: design.construction.zones.map((zone) => (zone.id === zoneId ? change(zone) : zone)),
  })
}

export function editBend(design: Design, bendId: string, change: (bend: Bend) => Bend): Design {
  return { ...design, bends: design.bends.map((bend) => (bend.id === bendId ? change(bend) : bend)) }
}

/** The coverage of a hatched plane follows from its bars: it can be taken out, and is left alone otherwise. */
export function setZoneCoverage(design: Design, zoneId: string, layerId: string, coverageFraction: number): Design {
  return editZone(design, zoneId, (zone) => ({
    ...zone,
    presence: zone.presence.map((each) =>
      each.layerId === layerId && (each.hatch === null || coverageFraction === 0)
        ? { ...each, coverageFraction, hatch: null }
        : each,
    ),
  }))
}

/** Takes dielectric layers out of a zone, and out of the construction where no other zone has them. */
export function leaveOutOfZone(design: Design, zoneId: string, layerIds: ReadonlySet<string>): Design {
  const edited = editZone(design, zoneId, (zone) => ({
    ...zone,
    presence: zone.presence.filter(({ layerId }) => !layerIds.has(layerId)),
  }))
  return dropUnused(edited, layerIds)
}

/** Takes layers out of the construction altogether. */
export function removeLayers(design: Design, layerIds: ReadonlySet<string>): Design {
  return editConstruction(design, {
    layers: design.construction.layers.filter(({ id }) => !layerIds.has(id)),
    zones: design.construction.zones.map((zone) =>
      zone.presence.some(({ layerId }) => layerIds.has(layerId))
        ? { ...zone, presence: zone.presence.filter(({ layerId }) => !layerIds.has(layerId)) }
        : zone,
    ),
  })
}

/**
 * Takes a layer's copper out of a zone. A conductor layer that no other zone has stays listed with coverage 0: pads and
 * conductors name it.
 */
export function takeCopperOut(design: Design, zoneId: string, layerId: string): Design {
  const isElsewhere = design.construction.zones.some(
    (zone) => zone.id !== zoneId && zone.presence.some((each) => each.layerId === layerId),
  )
  if (!isElsewhere) return setZoneCoverage(design, zoneId, layerId, 0)
  return editZone(design, zoneId, (zone) => ({
    ...zone,
    presence: zone.presence.filter((each) => each.layerId !== layerId),
  }))
}

function dropUnused(design: Design, candidates: ReadonlySet<string>): Design {
  const isUsed = (layerId: string) =>
    design.construction.zones.some((zone) => zone.presence.some((each) => each.layerId === layerId))
  const unused = [...candidates].filter((layerId) => !isUsed(layerId))
  if (unused.length === 0) return design
  return editConstruction(design, {
    layers: design.construction.layers.filter(({ id }) => !unused.includes(id)),
  })
}

/** A sheet of another thickness whose tolerances stay the same share of it, kept to 0.01 um as people write them. */
export function resize<T extends ConductorLayer | DielectricLayer>(layer: T, thicknessUm: number): T {
  const scale = (toleranceUm: number) => Math.round(((toleranceUm * thicknessUm) / layer.thicknessUm) * 100) / 100
  return {
    ...layer,
    thicknessUm,
    tolerancePlusUm: scale(layer.tolerancePlusUm),
    toleranceMinusUm: scale(layer.toleranceMinusUm),
  }
}

/** An id that the list does not have: the wanted one, or that with the next free number. */
export function freshId(wanted: string, taken: readonly { readonly id: string }[]): string {
  const stem = wanted.slice(0, MAX_ID_STEM)
  const isTaken = (id: string) => taken.some((each) => each.id === id)
  if (!isTaken(stem)) return stem
  let number = 2
  while (isTaken(`${stem}-${number}`)) number += 1
  return `${stem}-${number}`
}

/** Ids have at most 40 characters; this leaves room for a number. */
const MAX_ID_STEM = 34
