import type { Placement } from '../objects/placement'
import { type Aperture, type ApertureUse, makeUse } from './aperture'

/** The list of uses that objects point into; the same use stands in it once. */
export class ApertureUses {
  readonly list: ApertureUse[] = []
  readonly #known = new Map<Aperture, Map<string, number>>()

  indexOf(aperture: Aperture, isMirrored: boolean, rotationDeg: number, scale: number): number {
    let ofAperture = this.#known.get(aperture)
    if (ofAperture === undefined) {
      ofAperture = new Map()
      this.#known.set(aperture, ofAperture)
    }
    const key = `${isMirrored ? 'm' : ''}${rotationDeg}/${scale}`
    const known = ofAperture.get(key)
    if (known !== undefined) return known
    const index = this.list.length
    this.list.push(makeUse(aperture, isMirrored, rotationDeg, scale))
    ofAperture.set(key, index)
    return index
  }

  /** The use of an aperture inside a block, once the block is placed: the block's mirror and turn come after its own. */
  readonly placed = (index: number, { isMirrored, rotationDeg, scale }: Placement): number => {
    const use = this.list[index]
    if (use === undefined || (!isMirrored && rotationDeg === 0 && scale === 1)) return index
    const turned = rotationDeg + (isMirrored ? -use.rotationDeg : use.rotationDeg)
    return this.indexOf(use.aperture, use.isMirrored !== isMirrored, ((turned % 360) + 360) % 360, use.scale * scale)
  }
}
