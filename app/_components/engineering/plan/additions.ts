import type { Design, Plan } from '@/lib/engine'
import { capitalise } from '@/lib/engine/units'
import { locateInRegion } from '@/lib/geometry'
import { areasOf, checkPlan, EMPTY_PLAN, type PointMm, toNm } from '@/lib/plan'
import { applyEdit, type PlanEdit, type PlanEntry, type PlanListKey } from '@/lib/plan/edit'
import { addBend, addZone, makeFreshId, makeFreshName, updateBend } from '../draft/design-edits'
import type { Tool } from './tools'

type PlanNode = NonNullable<Plan['outline']>[number]

/** A newly drawn shape belongs to a new entry of the design, to an existing one, or to nothing yet. */
export type Owner = { readonly kind: 'new' } | { readonly kind: 'none' } | { readonly kind: 'id'; readonly id: string }

export const planOf = (design: Design): Plan => design.plan ?? EMPTY_PLAN

/** The design with an edit of its plan; itself where the edit is refused. */
export function withEdit(design: Design, edit: PlanEdit): Design {
  const result = applyEdit(planOf(design), edit)
  return result.ok ? { ...design, plan: result.plan } : design
}

/** Adds what somebody drew, with the bend or zone that it stands for where that is new too: one step, and one undo. */
export function addDrawn(design: Design, tool: Tool, nodes: readonly PlanNode[], owner: Owner): Design {
  if (tool.key === 'outline') return withEdit(design, { act: 'set', field: 'outline', value: [...nodes] })
  const [prepared, ownerId] = prepareOwner(design, tool.key, nodes, owner)
  const plan = planOf(prepared)
  const list: readonly PlanEntry[] = plan[tool.key]
  const id = makeFreshId(tool.idPrefix, list)
  const entry = makeEntry(tool, id, nodes, ownerId, plan)
  if (entry === null) return design
  return withEdit(prepared, { act: 'add', list: tool.key, at: list.length, entry } as PlanEdit)
}

function prepareOwner(
  design: Design,
  list: PlanListKey,
  nodes: readonly PlanNode[],
  owner: Owner,
): readonly [Design, string | null] {
  if (owner.kind === 'id') return [design, owner.id]
  if (owner.kind === 'none') return [design, null]
  if (list === 'areas') {
    const made = addZone(design)
    return [made, made.construction.zones.at(-1)?.id ?? null]
  }
  if (list === 'bendLines') {
    const made = addBend(design)
    const id = made.bends.at(-1)?.id ?? null
    const zoneId = findZone(design, nodes)
    return [id === null || zoneId === null ? made : updateBend(made, id, (bend) => ({ ...bend, zoneId })), id]
  }
  return [design, null]
}

/** The zone in whose area the middle of a line lies; null where none is marked there. */
function findZone(design: Design, nodes: readonly PlanNode[]): string | null {
  const plan = planOf(design)
  const [from, to] = [nodes[0]?.atMm, nodes.at(-1)?.atMm]
  if (from === undefined || to === undefined || checkPlan(plan).length > 0) return null
  const middle: PointMm = [round((from[0] + to[0]) / 2), round((from[1] + to[1]) / 2)]
  return areasOf(plan).areas.find(({ region }) => locateInRegion(region, toNm(middle)) === 'inside')?.zoneId ?? null
}

const round = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0

/** Letters of datums in their order, without those that read as digits (ISO 5459, from memory). */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'.split('').filter((letter) => letter !== 'Q')

function freeLetter({ datums }: Plan): string {
  const taken = new Set(datums.map(({ letter }) => letter))
  const all = [...LETTERS, ...LETTERS.map((letter) => `A${letter}`)]
  return all.find((letter) => !taken.has(letter)) ?? 'ZZ'
}

/** A new entry with what is drawn of it; everything else is not known yet. */
function makeEntry(
  { key, singular }: Tool,
  id: string,
  nodes: readonly PlanNode[],
  ownerId: string | null,
  plan: Plan,
): PlanEntry | null {
  const [first, last] = [nodes[0]?.atMm, nodes.at(-1)?.atMm]
  if (first === undefined || last === undefined) return null
  const name = (list: readonly { readonly name: string }[]) => makeFreshName(capitalise(singular), list)
  const path = [...nodes]
  const owner = ownerId ?? ''
  switch (key) {
    case 'cutOuts':
      return { id, name: name(plan.cutOuts), nodes: path }
    case 'dividingLines':
      return { id, name: name(plan.dividingLines), nodes: path }
    case 'slits': {
      const unknown = { widthMm: null, startReliefDiameterMm: null, endReliefDiameterMm: null }
      return { id, name: name(plan.slits), slitId: ownerId, nodes: path, ...unknown }
    }
    case 'areas':
      return { id, name: name(plan.areas), zoneId: ownerId, markMm: first }
    case 'bendLines':
      return { id, bendId: owner, fromMm: first, toMm: last }
    case 'stiffeners':
      return { id, stiffenerId: owner, nodes: path }
    case 'coverlayOpenings':
      return { id, openingId: owner, layerId: null, nodes: path }
    case 'components':
      return { id, componentId: owner, face: null, nodes: path, heightMm: null }
    case 'routes':
      return { id, conductorId: owner, layerId: null, nodes: path, widthMm: null }
    case 'holes':
      return { id, holeId: owner, atMm: first, columns: 1, rows: 1, columnStepMm: null, rowStepMm: null }
    case 'pads':
      return { id, padId: owner, atMm: first, sizeMm: null, isRound: null, anchorsMm: [] }
    case 'connectorEnds':
      return {
        id,
        connectorId: owner,
        fromMm: first,
        toMm: last,
        insertionDepthMm: null,
        contactCount: null,
        firstContactMm: null,
        contactStepMm: null,
        contactLengthMm: null,
        platedLengthMm: null,
        target: null,
      }
    case 'corners':
      return { id, cornerId: owner, atMm: first }
    case 'datums':
      return { id, letter: freeLetter(plan), fromMm: first, toMm: last }
    case 'dimensions': {
      const direction = first[1] === last[1] ? 'along-x' : first[0] === last[0] ? 'along-y' : 'straight'
      return { id, direction, fromMm: first, toMm: last, plusMm: null, minusMm: null, isReference: false }
    }
    case 'notes':
      return { id, text: '', atMm: first }
    case 'markings':
      return { id, text: name([]), face: 'top', atMm: first, heightMm: null }
    default:
      return null
  }
}
