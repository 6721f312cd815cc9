import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'

/** Lists of a plan whose entries have an id: whatever somebody places. */
export type PlanListKey = {
  [K in keyof Plan]: Plan[K] extends readonly { readonly id: string }[] ? K : never
}[keyof Plan]

export type PlanEntry<K extends PlanListKey = PlanListKey> = Plan[K][number]

/** Something drawn: an entry of a list, or the outline. */
export type DrawnRef = { readonly list: 'outline' } | { readonly list: PlanListKey; readonly id: string }

/** Which point of what is drawn: a point of its path, or one of its single places. */
export type PointRef =
  | { readonly field: 'nodes'; readonly at: number }
  | { readonly field: 'fromMm' | 'toMm' | 'atMm' | 'markMm' | 'firstContactMm' }

/** What an entry's list alone says; all other acts come down to these. */
type ListEdit = {
  [K in PlanListKey]:
    | { readonly act: 'add'; readonly list: K; readonly at: number; readonly entry: PlanEntry<K> }
    | { readonly act: 'remove'; readonly list: K; readonly id: string }
    | { readonly act: 'change'; readonly list: K; readonly id: string; readonly fields: Partial<PlanEntry<K>> }
}[PlanListKey]

type WholeEdit = {
  [K in 'outline' | 'rollingDirectionDeg' | 'array' | 'housing']: {
    readonly act: 'set'
    readonly field: K
    readonly value: Plan[K]
  }
}['outline' | 'rollingDirectionDeg' | 'array' | 'housing']

/** A command as plain data: it can be kept, sent and compared. */
export type PlanEdit =
  | WholeEdit
  | ListEdit
  | { readonly act: 'set-path'; readonly of: DrawnRef; readonly nodes: readonly PlanNode[] }
  | { readonly act: 'add-point'; readonly of: DrawnRef; readonly at: number; readonly node: PlanNode }
  | { readonly act: 'remove-point'; readonly of: DrawnRef; readonly at: number }
  | { readonly act: 'move-point'; readonly of: DrawnRef; readonly point: PointRef; readonly toMm: PointMm }
  /** The way from one point to the next becomes the arc through a third; null makes it straight. */
  | { readonly act: 'set-arc'; readonly of: DrawnRef; readonly at: number; readonly viaMm: PointMm | null }
  /** A new point on the way from one point to the next, at a share of its length; the shape stays. */
  | { readonly act: 'split-edge'; readonly of: DrawnRef; readonly at: number; readonly share: number }
  | { readonly act: 'move'; readonly of: DrawnRef; readonly byMm: PointMm }
  /** Several as one: all, or none. */
  | { readonly act: 'all'; readonly edits: readonly PlanEdit[] }

export type EditResult =
  | { readonly ok: true; readonly plan: Plan; readonly undo: PlanEdit }
  | { readonly ok: false; readonly reason: string }
