import { edgesOfRegion, extentAlong } from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { areasOf, type PlanArea } from '../topology/areas'
import type { BandMeasure } from './bands'

/** Size of an area along and across: along is square to its bends, or to its longest border, or the longer way of x and y. */
export interface AreaMeasure {
  /** Place in the list of areas. */
  readonly area: number
  readonly zoneId: string | null
  readonly lengthMm: number
  /** Least length of its bend axes; without a bend its whole extent. */
  readonly widthMm: number
  readonly areaMm2: number
}

export function measureAreas(plan: Plan, bands: readonly BandMeasure[]): AreaMeasure[] {
  return areasOf(plan).areas.map((area, at) => {
    const own = bands.filter((band) => band.area === at)
    const edges = edgesOfRegion(area.region)
    const along = directionOf(area, own)
    const extent = (direction: readonly [number, number]) => {
      const { low, high } = extentAlong(edges, direction)
      return (high - low) / NM_PER_MM
    }
    const axes = own.flatMap(({ axisLengthMm }) => axisLengthMm ?? [])
    return {
      area: at,
      zoneId: area.zoneId,
      lengthMm: extent(along),
      widthMm: axes.length > 0 ? Math.min(...axes) : extent([-along[1], along[0]]),
      areaMm2: area.areaMm2,
    }
  })
}

function directionOf(area: PlanArea, bands: readonly BandMeasure[]): readonly [number, number] {
  const [band] = bands
  if (band !== undefined) {
    const rad = (band.axisDeg * Math.PI) / 180
    return squareTo([Math.cos(rad), Math.sin(rad)])
  }
  let longest: readonly [number, number] | null = null
  let most = 0
  for (const { edges } of area.borders) {
    const [first, last] = [edges[0], edges.at(-1)]
    if (first === undefined || last === undefined) continue
    const [dx, dy] = [last.to[0] - first.from[0], last.to[1] - first.from[1]]
    const length = Math.hypot(dx, dy)
    // Of borders as long as each other the first one counts: to a nanometre, so that a turned plan measures alike.
    if (length > most + 1) {
      most = length
      longest = [dx / length, dy / length]
    }
  }
  if (longest !== null) return squareTo(longest)
  const edges = edgesOfRegion(area.region)
  const [x, y] = [extentAlong(edges, [1, 0]), extentAlong(edges, [0, 1])]
  return x.high - x.low >= y.high - y.low ? [1, 0] : [0, 1]
}

/** Square to a direction; exact along x and y, where sine and cosine are not. */
function squareTo([x, y]: readonly [number, number]): readonly [number, number] {
  const [u, v] = [Math.abs(x) < 1e-12 ? 0 : x, Math.abs(y) < 1e-12 ? 0 : y]
  if (u === 0) return [1, 0]
  if (v === 0) return [0, 1]
  return [-v, u]
}
