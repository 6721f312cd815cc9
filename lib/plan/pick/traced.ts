import { boundsOf, edgesOfLoop, edgesOfPath, isAtMostHalf, type LineOrArc, makeArc } from '@/lib/geometry'
import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { pathInNm } from '../document/to-geometry'
import { dimensionWay } from '../edit/dimension-way'
import { fieldsOf, isClosedList, nodesOf, PLAN_LISTS, placesOf } from '../edit/drawn'
import { isSame } from '../edit/nodes'
import type { DrawnRef } from '../edit/plan-edit'

/** What is drawn as edges that a pointer can meet, with the box round them in mm. */
export interface Traced {
  readonly ref: DrawnRef
  readonly isClosed: boolean
  readonly edges: readonly LineOrArc[]
  /** Point of the path that each edge starts from. */
  readonly starts: readonly number[]
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }
}

const traced = new WeakMap<object, Traced>()

/** Worked out once for each entry: a change elsewhere costs nothing here. */
export function traceEntry(plan: Plan, ref: DrawnRef): Traced | null {
  const fields = fieldsOf(plan, ref)
  return fields === null ? null : traceFields(ref, fields)
}

function traceFields(ref: DrawnRef, fields: Readonly<Record<string, unknown>>): Traced {
  const nodes = nodesOf(fields)
  // The outline has no entry of its own: its path stands for it.
  const key = ref.list === 'outline' && nodes !== null ? nodes : fields
  const found = traced.get(key)
  if (found !== undefined) return found
  const made = trace(ref, nodes, fields)
  traced.set(key, made)
  return made
}

/** Everything drawn, the outline first, in the order of painting. */
export function traceAll(plan: Plan): Traced[] {
  const outline = traceEntry(plan, { list: 'outline' })
  return [
    ...(outline === null ? [] : [outline]),
    ...PLAN_LISTS.flatMap((list) => plan[list].map((entry) => traceFields({ list, id: entry.id }, entry))),
  ]
}

function trace(ref: DrawnRef, nodes: readonly PlanNode[] | null, fields: Readonly<Record<string, unknown>>): Traced {
  const isClosed = isClosedList(ref.list)
  const points = placesOf(fields).map(({ atMm }) => atMm)
  const way = ref.list === 'dimensions' ? dimensionWay(fields as Plan['dimensions'][number]) : points.slice(0, 2)
  const path = nodes ?? way.map((atMm) => ({ atMm, viaMm: null }))
  const { sound, starts } = soundPath(path, isClosed)
  const edges = isClosed ? edgesOfLoop(pathInNm(sound)) : edgesOfPath(pathInNm(sound))
  const bounds = edges.length === 0 ? null : boundsOf(edges)
  const all = [...path.map(({ atMm }) => atMm), ...points]
  return {
    ref,
    isClosed,
    edges,
    starts,
    box: {
      minX: Math.min((bounds?.minX ?? Number.POSITIVE_INFINITY) / NM_PER_MM, ...all.map(([x]) => x)),
      minY: Math.min((bounds?.minY ?? Number.POSITIVE_INFINITY) / NM_PER_MM, ...all.map(([, y]) => y)),
      maxX: Math.max((bounds?.maxX ?? Number.NEGATIVE_INFINITY) / NM_PER_MM, ...all.map(([x]) => x)),
      maxY: Math.max((bounds?.maxY ?? Number.NEGATIVE_INFINITY) / NM_PER_MM, ...all.map(([, y]) => y)),
    },
  }
}

/** Without steps of no length, and without arcs that are none: a path may be so while somebody draws it. */
function soundPath(
  nodes: readonly PlanNode[],
  isClosed: boolean,
): { readonly sound: PlanNode[]; readonly starts: number[] } {
  const starts = nodes.flatMap(({ atMm }, at) => {
    const next = nodes[at + 1] ?? (isClosed ? nodes[0] : undefined)
    return next !== undefined && isSame(atMm, next.atMm) ? [] : [at]
  })
  const kept = starts.flatMap((at) => nodes[at] ?? [])
  const inNm = pathInNm(kept)
  const sound = kept.map((node, at): PlanNode => {
    const [from, to] = [inNm[at], inNm[at + 1] ?? inNm[0]]
    if (from?.via == null || to === undefined) return node
    const arc = makeArc(from.at, from.via, to.at)
    return arc !== null && isAtMostHalf(arc) ? node : { ...node, viaMm: null }
  })
  return { sound: kept.length < 2 ? [] : sound, starts }
}
