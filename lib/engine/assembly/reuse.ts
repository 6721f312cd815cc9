import type { Bend, ConductorFeature, Design, Zone } from '../design'
import type { BendResult, ConductorResult, ZoneResult } from '../results'
import type { Assembly } from './assembly'
import type { ThinnestCopper } from './conductor-results'
import type { DesignIndex } from './design-index'
import type { ZoneSection } from './zone-section'

/**
 * Results of an earlier assembly that still stand for a changed design. Edits share what they do not touch, so that
 * "the very same object" is a safe and cheap sign of "unchanged"; a copy is merely recomputed.
 */
export interface Reuse {
  readonly findZone: (zone: Zone) => { readonly section: ZoneSection; readonly result: ZoneResult } | null
  readonly findBend: (bend: Bend, position: number, section: ZoneSection | undefined) => BendResult | null
  readonly findConductor: (
    feature: ConductorFeature,
    position: number,
    thinnest: ThinnestCopper | undefined,
  ) => ConductorResult | null
}

const NOTHING: Reuse = { findZone: () => null, findBend: () => null, findConductor: () => null }

const hasSameBends = (before: Design, after: Design, zoneId: string): boolean => {
  const own = ({ bends }: Design) => bends.filter((bend) => bend.zoneId === zoneId)
  const earlier = own(before)
  return own(after).length === earlier.length && own(after).every((bend, at) => bend === earlier[at])
}

export function reuseFrom(basis: Assembly | undefined, index: DesignIndex): Reuse {
  if (basis === undefined || basis.index.design.materials !== index.design.materials) return NOTHING
  const before = basis.index
  const sameBrief = before.design.brief === index.design.brief
  return {
    findZone: (zone) => {
      const at = before.design.construction.zones.indexOf(zone)
      const section = basis.sections[at]
      const result = basis.zones[at]
      // Positions are part of a section: they order its layers and name missing inputs.
      const isSame =
        sameBrief &&
        section !== undefined &&
        result !== undefined &&
        index.design.construction.zones[at] === zone &&
        section.layers.every(
          ({ layer, position }) =>
            index.layersById.get(layer.id) === layer && index.layerPositions.get(layer.id) === position,
        )
      return isSame ? { section, result } : null
    },
    findBend: (bend, position, section) => {
      const result = basis.bends[position]
      const isSame =
        sameBrief &&
        result !== undefined &&
        section !== undefined &&
        before.design.bends[position] === bend &&
        basis.sections.includes(section) &&
        // A leaf that is too short passes the other bends of its zone too.
        (result.leaves.length < 2 || hasSameBends(before.design, index.design, bend.zoneId))
      return isSame ? result : null
    },
    findConductor: (feature, position, thinnest) => {
      const result = basis.conductors[position]
      const isSame =
        sameBrief &&
        result !== undefined &&
        thinnest !== undefined &&
        before.design.features.conductors[position] === feature &&
        basis.sections.some(({ layers }) => layers.includes(thinnest.layer)) &&
        basis.thinnest.get(feature.layerId)?.layer === thinnest.layer
      return isSame ? result : null
    },
  }
}
