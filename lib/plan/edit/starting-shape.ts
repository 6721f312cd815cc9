import type { PlanNode } from '../document/path-schema'
import { EMPTY_PLAN, type Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'

export const STARTING_SHAPES = ['strip', 'L', 'T', 'cross', 'U', 'ring'] as const
export type StartingShape = (typeof STARTING_SHAPES)[number]

export interface ShapeSizes {
  /** Over all, along x. */
  readonly lengthMm: number
  /** Over all, along y. */
  readonly widthMm: number
  /** Of an arm. */
  readonly armMm: number
  /** Of inside corners. */
  readonly cornerRadiusMm: number
}

/** An outline to begin from, its lower left corner at the origin; null where the sizes leave no such shape. */
export function startingShape(kind: StartingShape, sizes: ShapeSizes): Plan | null {
  const { lengthMm: l, widthMm: w, armMm: a, cornerRadiusMm: r } = sizes
  const isWide = [l, w, a].every((mm) => mm > 0) && r >= 0
  const midX = round((l - a) / 2)
  const midY = round((w - a) / 2)
  const make = (fits: boolean, corners: readonly Corner[]): Plan | null =>
    isWide && fits ? { ...EMPTY_PLAN, outline: withRadii(corners, r) } : null
  switch (kind) {
    case 'strip':
      return make(true, [
        [0, 0],
        [l, 0],
        [l, w],
        [0, w],
      ])
    case 'L':
      return make(a + r < l && a + r < w, [
        [0, 0],
        [l, 0],
        [l, a],
        [a, a, true],
        [a, w],
        [0, w],
      ])
    case 'T':
      return make(midX > r && a + r < w, [
        [0, w - a],
        [midX, w - a, true],
        [midX, 0],
        [midX + a, 0],
        [midX + a, w - a, true],
        [l, w - a],
        [l, w],
        [0, w],
      ])
    case 'cross':
      return make(midX > r && midY > r, [
        [0, midY],
        [midX, midY, true],
        [midX, 0],
        [midX + a, 0],
        [midX + a, midY, true],
        [l, midY],
        [l, midY + a],
        [midX + a, midY + a, true],
        [midX + a, w],
        [midX, w],
        [midX, midY + a, true],
        [0, midY + a],
      ])
    case 'U':
      return make(2 * a + 2 * r < l && a + r < w, [
        [0, 0],
        [l, 0],
        [l, w],
        [l - a, w],
        [l - a, a, true],
        [a, a, true],
        [a, w],
        [0, w],
      ])
    case 'ring': {
      const plan = make(2 * a + 2 * r < Math.min(l, w), [
        [0, 0],
        [l, 0],
        [l, w],
        [0, w],
      ])
      const inner: readonly Corner[] = [
        [a, a, true],
        [l - a, a, true],
        [l - a, w - a, true],
        [a, w - a, true],
      ]
      return plan === null
        ? null
        : { ...plan, cutOuts: [{ id: 'opening', name: 'Opening', nodes: withRadii(inner, r) }] }
    }
  }
}

/** A corner of lines along x and y; true where it is an inside corner of the part. */
type Corner = readonly [x: number, y: number, isInside?: boolean]

const SINE_45 = Math.SQRT1_2

/** Corners in order, the inside ones rounded by an arc through its middle. */
function withRadii(corners: readonly Corner[], radiusMm: number): PlanNode[] {
  return corners.flatMap((corner, at): PlanNode[] => {
    const [x, y, isInside] = corner
    const before = corners[(at - 1 + corners.length) % corners.length]
    const after = corners[(at + 1) % corners.length]
    if (isInside !== true || radiusMm === 0 || before === undefined || after === undefined) return [node([x, y])]
    const towards = (other: Corner): PointMm => [Math.sign(other[0] - x), Math.sign(other[1] - y)]
    const [ux, uy] = towards(before)
    const [vx, vy] = towards(after)
    const middle = radiusMm * (1 - SINE_45)
    return [
      {
        ...node([x + ux * radiusMm, y + uy * radiusMm]),
        viaMm: point([x + (ux + vx) * middle, y + (uy + vy) * middle]),
      },
      node([x + vx * radiusMm, y + vy * radiusMm]),
    ]
  })
}

const round = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0
const point = ([x, y]: PointMm): PointMm => [round(x), round(y)]
const node = (at: PointMm): PlanNode => ({ atMm: point(at), viaMm: null })
