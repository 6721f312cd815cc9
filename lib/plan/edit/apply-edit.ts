import type { PlanNode } from '../document/path-schema'
import type { Plan } from '../document/plan-schema'
import type { PointMm } from '../document/primitives'
import { anchorsOf, fieldsOf, isClosedList, nodesOf, placesOf } from './drawn'
import { isArc, movePoint, removePoint, shiftNodes, shiftPoint, splitEdge, wholePoint } from './nodes'
import type { DrawnRef, EditResult, PlanEdit, PlanEntry, PlanListKey } from './plan-edit'

/**
 * Does what an edit says, and tells the edit that takes it back: applied to the result it gives the same document. An edit whose object is
 * not there, or that would leave no path, is refused and changes nothing. Whether the plan holds together is for `checkPlan`: while
 * somebody draws it need not.
 */
export function applyEdit(plan: Plan, edit: PlanEdit): EditResult {
  switch (edit.act) {
    case 'set':
      return done({ ...plan, [edit.field]: edit.value }, {
        act: 'set',
        field: edit.field,
        value: plan[edit.field],
      } as PlanEdit)
    case 'add':
      return add(plan, edit.list, edit.at, edit.entry)
    case 'remove':
      return remove(plan, edit.list, edit.id)
    case 'change':
      return change(plan, { list: edit.list, id: edit.id }, edit.fields as Fields)
    case 'set-path':
      return setNodes(plan, edit.of, edit.nodes)
    case 'all':
      return all(plan, edit.edits)
    case 'move':
      return move(plan, edit.of, edit.byMm)
    default:
      return editPath(plan, edit)
  }
}

type Fields = Readonly<Record<string, unknown>>

const done = (plan: Plan, undo: PlanEdit): EditResult => ({ ok: true, plan, undo })
const refuse = (reason: string): EditResult => ({ ok: false, reason })
const GONE = 'this is not in the plan any more'
const OUT_OF_REACH = 'a plan reaches from -5000 to 5000 mm'

const listOf = (plan: Plan, list: PlanListKey): readonly PlanEntry[] => plan[list]
const withList = (plan: Plan, list: PlanListKey, entries: readonly PlanEntry[]): Plan => ({ ...plan, [list]: entries })

function add(plan: Plan, list: PlanListKey, at: number, entry: PlanEntry): EditResult {
  const present = listOf(plan, list)
  if (present.some(({ id }) => id === entry.id)) return refuse(`"${entry.id}" is in the plan already`)
  const place = Math.max(0, Math.min(at, present.length))
  const next = withList(plan, list, [...present.slice(0, place), entry, ...present.slice(place)])
  return done(next, { act: 'remove', list, id: entry.id })
}

function remove(plan: Plan, list: PlanListKey, id: string): EditResult {
  const present = listOf(plan, list)
  const at = present.findIndex((entry) => entry.id === id)
  const entry = present[at]
  if (entry === undefined) return refuse(GONE)
  return done(
    withList(
      plan,
      list,
      present.filter((_, index) => index !== at),
    ),
    { act: 'add', list, at, entry } as PlanEdit,
  )
}

function change(plan: Plan, of: Exclude<DrawnRef, { list: 'outline' }>, fields: Fields): EditResult {
  const present = listOf(plan, of.list)
  const entry = present.find(({ id }) => id === of.id)
  if (entry === undefined) return refuse(GONE)
  const id = typeof fields.id === 'string' ? fields.id : of.id
  if (id !== of.id && present.some((other) => other.id === id)) return refuse(`"${id}" is in the plan already`)
  const before = Object.fromEntries(Object.keys(fields).map((key) => [key, (entry as Fields)[key]]))
  const next = withList(
    plan,
    of.list,
    present.map((other) => (other === entry ? ({ ...entry, ...fields } as PlanEntry) : other)),
  )
  return done(next, { act: 'change', list: of.list, id, fields: before } as PlanEdit)
}

function setNodes(plan: Plan, of: DrawnRef, nodes: readonly PlanNode[]): EditResult {
  const before = nodesOf(fieldsOf(plan, of) ?? {})
  if (of.list === 'outline') {
    return done({ ...plan, outline: [...nodes] }, { act: 'set', field: 'outline', value: plan.outline })
  }
  return before === null ? refuse(GONE) : change(plan, of, { nodes })
}

function all(plan: Plan, edits: readonly PlanEdit[]): EditResult {
  let now = plan
  const undone: PlanEdit[] = []
  for (const edit of edits) {
    const result = applyEdit(now, edit)
    if (!result.ok) return result
    now = result.plan
    undone.unshift(result.undo)
  }
  return done(now, { act: 'all', edits: undone })
}

function move(plan: Plan, of: DrawnRef, byMm: PointMm): EditResult {
  const fields = fieldsOf(plan, of)
  if (fields === null) return refuse(GONE)
  const moved: Record<string, unknown> = {}
  const nodes = nodesOf(fields)
  if (nodes !== null) moved.nodes = shiftNodes(nodes, byMm)
  for (const { field, atMm } of placesOf(fields)) moved[field] = shiftPoint(atMm, byMm)
  const anchors = anchorsOf(fields)?.map((at) => shiftPoint(at, byMm))
  if (anchors !== undefined) moved.anchorsMm = anchors
  if (Object.values(moved).includes(null) || anchors?.includes(null) === true) return refuse(OUT_OF_REACH)
  return of.list === 'outline' ? setNodes(plan, of, moved.nodes as readonly PlanNode[]) : change(plan, of, moved)
}

type PathEdit = Extract<PlanEdit, { act: 'add-point' | 'remove-point' | 'move-point' | 'set-arc' | 'split-edge' }>

function editPath(plan: Plan, edit: PathEdit): EditResult {
  const fields = fieldsOf(plan, edit.of)
  if (fields === null) return refuse(GONE)
  if (edit.act === 'move-point' && edit.point.field !== 'nodes') {
    const to = wholePoint(edit.toMm)
    if (to === null) return refuse(OUT_OF_REACH)
    if (edit.of.list === 'outline' || !(edit.point.field in fields)) return refuse(GONE)
    return change(plan, edit.of, { [edit.point.field]: to })
  }
  const nodes = nodesOf(fields)
  if (nodes === null) return refuse(GONE)
  const isClosed = isClosedList(edit.of.list)
  const [next, reason] = editNodes(nodes, edit, isClosed)
  return next === null ? refuse(reason) : setNodes(plan, edit.of, next)
}

function editNodes(
  nodes: readonly PlanNode[],
  edit: PathEdit,
  isClosed: boolean,
): readonly [PlanNode[] | null, string] {
  switch (edit.act) {
    case 'add-point': {
      const place = Math.max(0, Math.min(edit.at, nodes.length))
      const isLast = !isClosed && place === nodes.length
      const node = isLast ? { ...edit.node, viaMm: null } : edit.node
      return [[...nodes.slice(0, place), node, ...nodes.slice(place)], '']
    }
    case 'remove-point':
      return [
        removePoint(nodes, edit.at, isClosed),
        isClosed ? 'three points are the least' : 'two points are the least',
      ]
    case 'move-point': {
      const to = wholePoint(edit.toMm)
      if (to === null || edit.point.field !== 'nodes') return [null, OUT_OF_REACH]
      return [movePoint(nodes, edit.point.at, to, isClosed), GONE]
    }
    case 'set-arc': {
      const node = nodes[edit.at]
      const next = nodes[edit.at + 1] ?? (isClosed ? nodes[0] : undefined)
      if (node === undefined || next === undefined) return [null, GONE]
      if (edit.viaMm !== null && !isArc(node.atMm, edit.viaMm, next.atMm)) {
        return [null, 'no arc of at most a half circle runs through this point']
      }
      return [nodes.map((present, at) => (at === edit.at ? { ...present, viaMm: edit.viaMm } : present)), '']
    }
    case 'split-edge':
      return [splitEdge(nodes, edit.at, edit.share, isClosed), 'there is no room for another point']
  }
}
