import type { Design, Zone } from '../design'
import { inSentence } from '../units'

export interface PartSize {
  /** Greatest distance within it; of zones the sum, since nothing says how they lie. */
  readonly mm: number
  /** The lesser of its two sides. */
  readonly acrossMm: number
  readonly where: string
  readonly says: string
  readonly path: readonly (string | number)[]
}

/** From corner to corner; without an outline, over all zones one after the other. Null where the length or width of a zone is not known. */
export function findSize({ features, construction }: Design): PartSize | null {
  const corners = features.outline?.verticesMm ?? []
  if (corners.length >= 3) {
    const xs = corners.map(([x]) => x)
    const ys = corners.map(([, y]) => y)
    const sides = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const
    const mm = Math.hypot(...sides)
    return {
      mm,
      acrossMm: Math.min(...sides),
      where: 'the outline',
      says: `${inSentence(mm, 'mm')} from corner to corner`,
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
    : { mm, acrossMm, where: 'the zones', says: `${inSentence(mm, 'mm')} over all`, path: ['construction', 'zones'] }
}

/** Of the layers of a zone, as they are bought. */
export const sumThicknessUm = ({ layers }: Design['construction'], { presence }: Zone): number =>
  layers.reduce(
    (sum, { id, thicknessUm }) => (presence.some(({ layerId }) => layerId === id) ? sum + thicknessUm : sum),
    0,
  )
