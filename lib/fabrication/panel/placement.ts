import { getBounds, moveToOrigin, type Polygon, type QuarterTurnDeg, turnBy } from '@/lib/geometry'

/** One part on a panel: turned counter-clockwise, then moved so that its bounds begin at `xUm`, `yUm`. */
export interface Placement {
  /** From the panel's lower left corner. */
  readonly xUm: number
  readonly yUm: number
  readonly rotationDeg: QuarterTurnDeg
}

/** A part's outline, turned and moved so that its bounds begin at 0, 0. */
export interface TurnedPart {
  readonly outline: Polygon
  readonly widthUm: number
  readonly heightUm: number
}

export function turnPart(outline: Polygon, rotationDeg: QuarterTurnDeg): TurnedPart {
  const turned = moveToOrigin(turnBy(outline, rotationDeg))
  const { maxX, maxY } = getBounds(turned)
  return { outline: turned, widthUm: maxX, heightUm: maxY }
}
