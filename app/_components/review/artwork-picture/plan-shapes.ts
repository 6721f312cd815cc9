import type { Design } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import { NM_PER_MM } from '@/lib/plan'
import type { PlanShapes } from './picture-types'

/** What the plan draws where artwork lies over it; null where it draws no part. */
export function planShapesOf(design: Design): PlanShapes | null {
  const ground = groundOf(design)
  if (ground === null) return null
  const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string) =>
    list.find((entry) => entry.id === id)?.name ?? id
  const inMm = (rings: readonly (readonly number[])[]) => rings.map((ring) => ring.map((nm) => nm / NM_PER_MM))
  return {
    part: inMm(ground.part),
    zones: ground.zones.map(({ zoneId, rings }, index) => ({
      id: `${zoneId} ${index}`,
      name: nameOf(design.construction.zones, zoneId),
      rings: inMm(rings),
    })),
    // One line may bend several strips of the part.
    bends: ground.bands.map(({ lineId, bendId, rings, fromNm, toNm }, index) => ({
      id: `${lineId} ${index}`,
      name: nameOf(design.bends, bendId),
      rings: inMm(rings),
      fromMm: [fromNm[0] / NM_PER_MM, fromNm[1] / NM_PER_MM],
      toMm: [toNm[0] / NM_PER_MM, toNm[1] / NM_PER_MM],
    })),
  }
}
