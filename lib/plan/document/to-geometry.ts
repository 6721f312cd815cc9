import type { Path, PointNm } from '@/lib/geometry'
import type { PlanNode } from './path-schema'
import { NM_PER_MM, type PointMm } from './primitives'

/** Exact, since a document's coordinates are whole nanometres. */
export const toNm = ([x, y]: PointMm): PointNm => [Math.round(x * NM_PER_MM) + 0, Math.round(y * NM_PER_MM) + 0]

export const toMm = ([x, y]: readonly [number, number]): PointMm => [
  Math.round(x) / NM_PER_MM + 0,
  Math.round(y) / NM_PER_MM + 0,
]

export const pathInNm = (nodes: readonly PlanNode[]): Path =>
  nodes.map(({ atMm, viaMm }) => ({ at: toNm(atMm), via: viaMm === null ? null : toNm(viaMm) }))

export const pathInMm = (path: Path): PlanNode[] =>
  path.map(({ at, via }) => ({ atMm: toMm(at), viaMm: via === null ? null : toMm(via) }))
