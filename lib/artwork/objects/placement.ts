/** Mirrored in x first, then turned, then enlarged, then moved: the order of LM, LR and LS (Gerber Layer Format Specification, "aperture transformation parameters"). */
export interface Placement {
  readonly isMirrored: boolean
  readonly rotationDeg: number
  readonly scale: number
  readonly xNm: number
  readonly yNm: number
  /** Whether dark and clear change places: a block flashed clear. */
  readonly swapsPolarity: boolean
}

export const UNMOVED: Placement = {
  isMirrored: false,
  rotationDeg: 0,
  scale: 1,
  xNm: 0,
  yNm: 0,
  swapsPolarity: false,
}

/** The four numbers of a placement's matrix: x' = a x + b y, y' = c x + d y. Quarter turns are exact. */
export function matrixOf({ isMirrored, rotationDeg, scale }: Pick<Placement, 'isMirrored' | 'rotationDeg' | 'scale'>) {
  const turn = ((rotationDeg % 360) + 360) % 360
  const quarter = [0, 90, 180, 270].indexOf(turn)
  const radians = (turn * Math.PI) / 180
  const cos = scale * (quarter >= 0 ? ([1, 0, -1, 0][quarter] ?? 0) : Math.cos(radians))
  const sin = scale * (quarter >= 0 ? ([0, 1, 0, -1][quarter] ?? 0) : Math.sin(radians))
  return isMirrored ? { a: -cos, b: -sin, c: -sin, d: cos } : { a: cos, b: -sin, c: sin, d: cos }
}
