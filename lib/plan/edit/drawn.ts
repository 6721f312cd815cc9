import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import type { DrawnRef, PlanEntry, PlanListKey, PointRef } from './plan-edit'

/** In the order in which a list shows them and a picture paints them, the last on top. */
export const PLAN_LISTS = [
  'cutOuts',
  'areas',
  'dividingLines',
  'stiffeners',
  'coverlayOpenings',
  'components',
  'connectorEnds',
  'routes',
  'pads',
  'holes',
  'slits',
  'bendLines',
  'corners',
  'datums',
  'dimensions',
  'notes',
  'markings',
] as const satisfies readonly PlanListKey[]

const CLOSED: ReadonlySet<string> = new Set(['outline', 'cutOuts', 'stiffeners', 'coverlayOpenings', 'components'])

export const isClosedList = (list: DrawnRef['list']): boolean => CLOSED.has(list)

const PLACES = ['fromMm', 'toMm', 'atMm', 'markMm', 'firstContactMm'] as const

type Fields = Readonly<Record<string, unknown>>

/** An entry as the fields that it has: every list's entries have an id, and points under a few names. */
export function fieldsOf(plan: Plan, ref: DrawnRef): Fields | null {
  if (ref.list === 'outline') return plan.outline === null ? null : { nodes: plan.outline }
  const list: readonly PlanEntry[] = plan[ref.list]
  return list.find(({ id }) => id === ref.id) ?? null
}

export const nodesOf = (fields: Fields): readonly PlanNode[] | null =>
  Array.isArray(fields.nodes) ? (fields.nodes as readonly PlanNode[]) : null

/** Single places of an entry, apart from its path. */
export function placesOf(fields: Fields): { readonly field: (typeof PLACES)[number]; readonly atMm: PointMm }[] {
  return PLACES.flatMap((field) => {
    const atMm = fields[field]
    return Array.isArray(atMm) ? [{ field, atMm: atMm as unknown as PointMm }] : []
  })
}

/** Every point of an entry that can be taken hold of. */
export function handlesOf(fields: Fields): { readonly point: PointRef; readonly atMm: PointMm }[] {
  const nodes = (nodesOf(fields) ?? []).map(({ atMm }, at) => ({ point: { field: 'nodes', at } as const, atMm }))
  return [...nodes, ...placesOf(fields).map(({ field, atMm }) => ({ point: { field } as const, atMm }))]
}

/** Fields of an entry that move with it, besides its path and single places. */
export function anchorsOf(fields: Fields): readonly PointMm[] | null {
  return Array.isArray(fields.anchorsMm) ? (fields.anchorsMm as readonly PointMm[]) : null
}
