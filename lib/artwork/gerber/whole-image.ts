import { type Placement, UNMOVED } from '../objects/placement'

/**
 * Parameters that move the whole image (AS, MI, SF, OF, IR). They were taken out of the format in 2013 and are found in old files; the order, axes
 * first and the offset last, is from memory.
 */
export class WholeImage {
  isSwapped = false
  mirrorsX = false
  mirrorsY = false
  rotationDeg = 0
  scale = 1
  /** Offsets in the unit of the file, which may be stated later. */
  x = 0
  y = 0

  /** Takes a statement; a sentence where it cannot be followed, null where all is well. */
  take(text: string): string | null {
    const number = (letter: string, otherwise: number) => {
      const found = new RegExp(`${letter}([+-]?[\\d.]+)`).exec(text.slice(2))
      return found === null ? otherwise : Number(found[1])
    }
    switch (text.slice(0, 2)) {
      case 'AS':
        this.isSwapped = /AY/.test(text)
        return null
      case 'MI':
        this.mirrorsX = number('A', 0) === 1
        this.mirrorsY = number('B', 0) === 1
        return null
      case 'OF':
        if (!(Math.abs(number('A', 0)) + Math.abs(number('B', 0)) < 1e4)) return 'its numbers cannot be followed'
        this.x = number('A', 0)
        this.y = number('B', 0)
        return null
      case 'SF': {
        const [a, b] = [number('A', 1), number('B', 1)]
        if (!(a > 0) || a !== b) return 'scales that differ in x and y, or are 0, are not drawn'
        this.scale = a
        return null
      }
      default: {
        const turn = Number(/^IR(\d+)$/.exec(text)?.[1] ?? Number.NaN)
        if (![0, 90, 180, 270].includes(turn)) return 'only quarter turns are in the format'
        this.rotationDeg = turn
        return null
      }
    }
  }

  /** Null where the image stays where it is. */
  placement(unitNm: number): Placement | null {
    let isMirrored = false
    let rotationDeg = 0
    const then = (mirror: boolean, turn: number) => {
      rotationDeg = turn + (mirror ? -rotationDeg : rotationDeg)
      isMirrored = isMirrored !== mirror
    }
    if (this.isSwapped) then(true, 270)
    if (this.mirrorsX) then(true, 0)
    if (this.mirrorsY) then(true, 180)
    then(false, this.rotationDeg)
    rotationDeg = ((rotationDeg % 360) + 360) % 360
    const { scale } = this
    const [xNm, yNm] = [Math.round(this.x * unitNm), Math.round(this.y * unitNm)]
    if (!isMirrored && rotationDeg === 0 && scale === 1 && xNm === 0 && yNm === 0) return null
    return { ...UNMOVED, isMirrored, rotationDeg, scale, xNm, yNm }
  }
}
