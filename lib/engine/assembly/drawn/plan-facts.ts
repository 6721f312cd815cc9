import type { PlanFacts } from '@/lib/plan'
import { computeLeaves } from '../../bending'
import { type Bend, FLAT_ZONE_KINDS } from '../../design'
import { loadingOf } from '../bend-conductors'
import { buildBendSection } from '../bend-section'
import type { DesignIndex } from '../design-index'
import { buildZoneSection } from '../zone-section'

/** What the plan is measured with: the width of each bend's band, and what its features are. */
export function listPlanFacts(index: DesignIndex): PlanFacts {
  const { bends, construction, features } = index.design
  const placed = new Set(index.design.plan?.bendLines.map(({ bendId }) => bendId))
  return {
    bandWidthsMm: new Map(
      bends.filter(({ id }) => placed.has(id)).map((bend) => [bend.id, findBandWidthMm(bend, index)]),
    ),
    zoneOfBend: new Map(bends.map(({ id, zoneId }) => [id, zoneId])),
    flatZoneIds: new Set(construction.zones.filter(({ kind }) => FLAT_ZONE_KINDS.has(kind)).map(({ id }) => id)),
    drillsMm: new Map(features.holes.map(({ id, drillMm }) => [id, drillMm])),
    conductors: new Map(features.conductors.map(({ id, layerId, widthMm }) => [id, { layerId, widthMm }])),
    conductorLayerIds: construction.layers.filter(({ kind }) => kind === 'conductor').map(({ id }) => id),
  }
}

/** Flat length of the longest leaf: the same as the results of the bend state. Null where its section is not known. */
function findBandWidthMm(bend: Bend, index: DesignIndex): number | null {
  const zone = index.zonesById.get(bend.zoneId)
  if (zone === undefined) return null
  try {
    const section = buildBendSection(buildZoneSection(zone, index), bend.insideFace, index)
    if ('missing' in section) return null
    const { leaves } = computeLeaves({
      leaves: section.leaves.map(({ layers }) => layers),
      gapsUm: section.gapsUm,
      insideRadiusMm: bend.insideRadiusMm,
      angleDeg: bend.angleDeg,
      loading: loadingOf(bend),
    })
    return Math.max(...leaves.map(({ developedLengthMm }) => developedLengthMm))
  } catch (error) {
    // Beyond the reach of the relations; the bend's own results say so.
    if (error instanceof RangeError) return null
    throw error
  }
}
