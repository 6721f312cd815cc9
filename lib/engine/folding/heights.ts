import type { BendMeasures, ZoneHeights } from '@/lib/fold'
import type { Design } from '../design'
import type { BendResult, ZoneResult } from '../results'

export interface Heights {
  /** By zone, over the top of the layer that runs through all of them. */
  readonly zones: ReadonlyMap<string, ZoneHeights>
  /** By bend; bends of loose leaves and those without a section are not there. */
  readonly bends: ReadonlyMap<string, BendMeasures>
}

/**
 * Areas of unequal thickness meet at the layer that they share. Null where no layer runs through all zones that the plan draws: nothing then says
 * how high one lies against the next.
 */
export function findHeights(
  design: Design,
  zones: readonly ZoneResult[],
  bends: readonly BendResult[],
  drawnZoneIds: ReadonlySet<string>,
): Heights | null {
  const drawn = zones.filter(({ zoneId }) => drawnZoneIds.has(zoneId))
  const [first] = drawn
  const shared = first?.layers.find(({ layerId }) =>
    drawn.every(({ layers }) => layers.some((layer) => layer.layerId === layerId)),
  )
  if (shared === undefined) return null
  const heights = new Map(
    drawn.map((zone): [string, ZoneHeights] => {
      const topUm = zone.layers.find(({ layerId }) => layerId === shared.layerId)?.topDepthUm ?? 0
      return [zone.zoneId, { topMm: topUm / 1000, bottomMm: (topUm - zone.thicknessUm) / 1000 }]
    }),
  )
  const measured = design.bends.flatMap((bend): [string, BendMeasures][] => {
    const zone = heights.get(bend.zoneId)
    const [leaf, ...others] = bends.find(({ bendId }) => bendId === bend.id)?.leaves ?? []
    if (zone === undefined || leaf === undefined || others.length > 0) return []
    const depthMm = leaf.decidingAxisDepthUm / 1000
    const isTopInside = bend.insideFace === 'top'
    return [
      [
        bend.id,
        {
          lengthMm: ((bend.angleDeg * Math.PI) / 180) * (bend.insideRadiusMm + depthMm),
          angleDeg: isTopInside ? bend.angleDeg : -bend.angleDeg,
          neutralMm: isTopInside ? zone.topMm - depthMm : zone.bottomMm + depthMm,
        },
      ],
    ]
  })
  return { zones: heights, bends: new Map(measured) }
}
