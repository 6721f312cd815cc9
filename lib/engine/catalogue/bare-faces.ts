import type { ZoneLayerResult, ZoneResult } from '../results'
import { hasCopper } from './needs'

/** What keeps crack, chemistry and contact away from copper. Adhesive alone does not, and a solder mask cracks, but for a flexible one in a wide fold. */
const COVERS: readonly string[] = [
  'base-film',
  'coverlay-film',
  'bondply',
  'no-flow-prepreg',
  'rigid-laminate',
  'stiffener',
]

interface BareFace {
  readonly layer: ZoneLayerResult
  readonly face: 'upper' | 'lower'
}

/** Faces of copper with no film between them and the outside, or the air between leaves. Copper of coverage 0 is absent. */
export function listBareFaces(
  { layers }: ZoneResult,
  covers: (layer: ZoneLayerResult) => boolean = () => false,
): BareFace[] {
  return layers.flatMap((layer, index) => {
    if (!hasCopper(layer)) return []
    const faces: BareFace[] = []
    if (!isCovered(layers.slice(0, index).reverse(), covers)) faces.push({ layer, face: 'upper' })
    if (!isCovered(layers.slice(index + 1), covers)) faces.push({ layer, face: 'lower' })
    return faces
  })
}

/** Outwards from the copper, is there a film before the outside or a gap? */
function isCovered(outwards: readonly ZoneLayerResult[], covers: (layer: ZoneLayerResult) => boolean): boolean {
  for (const layer of outwards) {
    if (layer.kind === 'unbonded-gap') return false
    if (COVERS.includes(layer.kind) || covers(layer)) return true
  }
  return false
}
