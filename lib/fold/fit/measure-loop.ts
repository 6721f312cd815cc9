import type { FlatBand, FlatPart, PlanePoint } from '../kinematics/flat-part'
import type { Vector } from '../kinematics/vector'
import type { FlatEnd } from './place-end'
import { findWay } from './place-end'

/** The film between the plate that stays and an end, as it would hang between the two. */
export interface Loop {
  /** Where it leaves the plate that stays: the middle of the first bend's border, at its neutral surface. */
  readonly from: Vector
  /** Along the neutral surface, through the middles of the bends' borders to the end. It is the same flat and folded, so that nothing spans more. */
  readonly lengthMm: number
}

/**
 * @returns null where no bend lies between the two: nothing then hangs
 */
export function measureLoop(part: FlatPart, fixedPlateId: string, end: FlatEnd): Loop | null {
  const way = findWay(part, fixedPlateId, end.plateId)
  const first = way?.[0]
  if (way === null || first === undefined) return null
  const points = way.flatMap(({ band, isForward }) => {
    const borders = [0, band.lengthMm].map((at) => middleOfBorder(band, at))
    return isForward ? borders : borders.toReversed()
  })
  const [start] = points
  if (start === undefined) return null
  const all: readonly PlanePoint[] = [...points, [end.at[0], end.at[1]]]
  const lengthMm = all.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = all[at + 1] ?? [x, y]
    return sum + Math.hypot(nextX - x, nextY - y)
  }, 0)
  return { from: [start[0], start[1], first.band.neutralMm], lengthMm }
}

/** Half-way along the border of a band at a distance across it, from its least to its greatest place there. */
function middleOfBorder({ loops, start, across }: FlatBand, atMm: number): PlanePoint {
  const alongs = loops.flatMap((loop) =>
    loop.flatMap(([x, y]) => {
      const distance = (x - start[0]) * across[0] + (y - start[1]) * across[1]
      return Math.abs(distance - atMm) < BORDER_MM ? [(y - start[1]) * across[0] - (x - start[0]) * across[1]] : []
    }),
  )
  const along = alongs.length === 0 ? 0 : (Math.min(...alongs) + Math.max(...alongs)) / 2
  return [start[0] + across[0] * atMm - across[1] * along, start[1] + across[1] * atMm + across[0] * along]
}

/** Corners of a band nearer to its border than this are on it: borders are cut in whole nanometres. */
const BORDER_MM = 1e-4
