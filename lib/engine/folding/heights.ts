import type { BendMeasures, ZoneHeights } from '@/lib/fold'
import type { Design, Plan } from '../design'
import type { BendResult, ZoneResult } from '../results'
import { findLeafRuns, findLeafSpans, type LeafRun } from './leaf-runs'

export interface Heights {
  /** By zone, over the top of the layer that runs through all of them. */
  readonly zones: ReadonlyMap<string, ZoneHeights>
  /** By bend; those without a section are not there. */
  readonly bends: ReadonlyMap<string, BendMeasures>
  /** Of bends whose leaves are not bonded to each other. */
  readonly leafRuns: readonly LeafRun[]
}

/**
 * Areas of unequal thickness meet at the layer that they share. Null where no layer runs through all zones that the plan draws: nothing then says
 * how high one lies against the next.
 */
export function findHeights(
  design: Design,
  plan: Plan,
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
      const faces = { topMm: topUm / 1000, bottomMm: (topUm - zone.thicknessUm) / 1000 }
      const leaves = findLeafSpans(zone, faces.topMm)
      return [zone.zoneId, leaves.length < 2 ? faces : { ...faces, leaves }]
    }),
  )
  const { runs, depths } = findLeafRuns(design, plan, bends)
  const measured = design.bends.flatMap((bend): [string, BendMeasures][] => {
    const zone = heights.get(bend.zoneId)
    const leaves = bends.find(({ bendId }) => bendId === bend.id)?.leaves ?? []
    const [leaf] = leaves
    if (zone === undefined || leaf === undefined || leaves.length !== (zone.leaves?.length ?? 1)) return []
    const depthMm = (depths.get(bend.id) ?? leaf.decidingAxisDepthUm) / 1000
    const isTopInside = bend.insideFace === 'top'
    // Air at a face is outside of the first leaf, from whose face depths count.
    const topMm = zone.leaves?.[0]?.topMm ?? zone.topMm
    const bottomMm = zone.leaves?.at(-1)?.bottomMm ?? zone.bottomMm
    return [
      [
        bend.id,
        {
          lengthMm: ((bend.angleDeg * Math.PI) / 180) * (bend.insideRadiusMm + depthMm),
          angleDeg: isTopInside ? bend.angleDeg : -bend.angleDeg,
          neutralMm: isTopInside ? topMm - depthMm : bottomMm + depthMm,
        },
      ],
    ]
  })
  return { zones: heights, bends: new Map(measured), leafRuns: runs }
}
