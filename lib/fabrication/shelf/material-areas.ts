import { type Design, drawDimensions, type Zone } from '@/lib/engine'
import { areasOf } from '@/lib/plan'
import { describePurchase, listPurchases, type Purchase } from './purchases'

/** Size of a zone in plan; null where it is neither drawn nor stated. */
interface ZoneArea {
  readonly lengthMm: number | null
  readonly widthMm: number | null
  readonly areaMm2: number | null
  readonly basis: 'drawn' | 'stated' | 'unknown'
}

/** A material as it is bought, with the zones that it lies in and their area in one part. */
interface MaterialArea {
  readonly purchase: Purchase
  readonly description: string
  readonly zones: readonly Zone[]
  /** Null where the area of one of its zones is not known. */
  readonly areaMm2: number | null
  /** Zones whose area is not known. */
  readonly unknownZones: readonly Zone[]
}

/** What is drawn stands before what is stated: the areas of the plan that carry the zone, else its length times its width. */
export function measureZoneAreas(design: Design): ReadonlyMap<string, ZoneArea> {
  const areas = design.plan === null ? [] : areasOf(design.plan).areas
  const { zones } = drawDimensions(design).design.construction
  return new Map(
    zones.map(({ id, lengthMm, widthMm }): [string, ZoneArea] => {
      const drawn = areas.filter(({ zoneId }) => zoneId === id)
      if (drawn.length > 0) {
        const areaMm2 = drawn.reduce((sum, area) => sum + area.areaMm2, 0)
        return [id, { lengthMm, widthMm, areaMm2, basis: 'drawn' }]
      }
      return lengthMm === null || widthMm === null
        ? [id, { lengthMm, widthMm, areaMm2: null, basis: 'unknown' }]
        : [id, { lengthMm, widthMm, areaMm2: lengthMm * widthMm, basis: 'stated' }]
    }),
  )
}

/**
 * Sheets that the part is made from, each with the area of the zones that it lies in: before anything is etched or cut out of it,
 * and without the rest of the panel.
 */
export function measureMaterials(design: Design): MaterialArea[] {
  const areas = measureZoneAreas(design)
  return listPurchases(design).map((purchase) => {
    const ids = new Set([purchase.layer, ...purchase.foilLayers, ...purchase.adhesiveLayers].map(({ id }) => id))
    const zones = design.construction.zones.filter(({ presence }) => presence.some(({ layerId }) => ids.has(layerId)))
    const unknownZones = zones.filter(({ id }) => areas.get(id)?.basis === 'unknown')
    return {
      purchase,
      description: describePurchase(design, purchase),
      zones,
      areaMm2: unknownZones.length > 0 ? null : zones.reduce((sum, { id }) => sum + (areas.get(id)?.areaMm2 ?? 0), 0),
      unknownZones,
    }
  })
}
