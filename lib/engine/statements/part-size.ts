import type { Design, Zone } from '../design'
import { inSentence } from '../units'

export interface PartSize {
  /** No way within the part is longer: of an outline half of its way round, since two points part that in two; of zones their sum, where a zone may stand for several areas. */
  readonly reachMm: number
  /** What `reachMm` is, in words with its figure. */
  readonly saysReach: string
  /** Where only zones are known, a way may lead through several areas of one zone: past this nothing is left to doubt. */
  readonly mostReachMm: number
  /** The lesser of its two sides. */
  readonly acrossMm: number
  readonly where: string
  readonly path: readonly (string | number)[]
}

/** A zone may stand for two areas, as for both ends of one part. Our choice. */
export const AREAS_PER_ZONE = 2

/** From corner to corner; without an outline, over all zones one after the other. Null where the length or width of a zone is not known. */
export function findSize({ features, construction }: Design): PartSize | null {
  const corners = features.outline?.verticesMm ?? []
  if (corners.length >= 3) {
    const xs = corners.map(([x]) => x)
    const ys = corners.map(([, y]) => y)
    const sides = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const
    const roundMm = corners.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = corners[(at + 1) % corners.length] ?? [x, y]
      return sum + Math.hypot(nextX - x, nextY - y)
    }, 0)
    const reachMm = roundMm / 2
    return {
      reachMm,
      saysReach: `no way within it longer than ${inSentence(reachMm, 'mm')}`,
      mostReachMm: reachMm,
      acrossMm: Math.min(...sides),
      where: 'the outline',
      path: ['features', 'outline'],
    }
  }
  let mm = 0
  let acrossMm = 0
  for (const { lengthMm, widthMm } of construction.zones) {
    if (lengthMm === null || widthMm === null) return null
    mm += Math.hypot(lengthMm, widthMm)
    acrossMm = Math.max(acrossMm, Math.min(lengthMm, widthMm))
  }
  return mm === 0
    ? null
    : {
        reachMm: mm,
        saysReach: `${inSentence(mm, 'mm')} over all`,
        mostReachMm: AREAS_PER_ZONE * mm,
        acrossMm,
        where: 'the zones',
        path: ['construction', 'zones'],
      }
}

/** Of the layers of a zone, as they are bought. */
export const sumThicknessUm = ({ layers }: Design['construction'], { presence }: Zone): number =>
  layers.reduce(
    (sum, { id, thicknessUm }) => (presence.some(({ layerId }) => layerId === id) ? sum + thicknessUm : sum),
    0,
  )
