/** A place, in the units of the file or in mm. */
export type Point = readonly [x: number, y: number]

/** x' = a x + c y + e, y' = b x + d y + f: how blocks and groups place what is in them. */
export interface Affine {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

export const shiftBy = ([e, f]: Point): Affine => ({ ...IDENTITY, e, f })
export const scaleBy = (a: number, d: number): Affine => ({ ...IDENTITY, a, d })

/** Quarter turns are exact: a drawing that was turned by 90 degrees keeps its corners. */
export function turnBy(deg: number): Affine {
  const turned = ((deg % 360) + 360) % 360
  const quarter = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ][turned / 90] as [number, number] | undefined
  const [cos, sin] = quarter ?? [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 }
}

/** First the later ones of the list, then the earlier: as they are written in a product of matrices. */
export function product(...list: readonly Affine[]): Affine {
  return list.reduce(
    (m, n) => ({
      a: m.a * n.a + m.c * n.b,
      b: m.b * n.a + m.d * n.b,
      c: m.a * n.c + m.c * n.d,
      d: m.b * n.c + m.d * n.d,
      e: m.a * n.e + m.c * n.f + m.e,
      f: m.b * n.e + m.d * n.f + m.f,
    }),
    IDENTITY,
  )
}

export const carry = ({ a, b, c, d, e, f }: Affine, [x, y]: Point): Point => [a * x + c * y + e, b * x + d * y + f]

/** A direction has no place. */
export const carryVector = ({ a, b, c, d }: Affine, [x, y]: Point): Point => [a * x + c * y, b * x + d * y]
