import { type Design, listStiffeners, type Plan } from '@/lib/engine'

type Named = readonly { readonly id: string }[]

/** Which entries of the plan draw what of the design. */
const DRAWS: readonly {
  readonly list: keyof Plan
  readonly field: string
  readonly of: (design: Design) => Named
  /** The shape stays, and belongs to nothing. */
  readonly mayBelongToNothing?: true
}[] = [
  { list: 'areas', field: 'zoneId', of: ({ construction }) => construction.zones, mayBelongToNothing: true },
  { list: 'bendLines', field: 'bendId', of: ({ bends }) => bends },
  { list: 'stiffeners', field: 'stiffenerId', of: listStiffeners },
  { list: 'slits', field: 'slitId', of: ({ features }) => features.slits, mayBelongToNothing: true },
  { list: 'holes', field: 'holeId', of: ({ features }) => features.holes },
  { list: 'pads', field: 'padId', of: ({ features }) => features.pads },
  { list: 'coverlayOpenings', field: 'openingId', of: ({ features }) => features.coverlayOpenings },
  { list: 'components', field: 'componentId', of: ({ features }) => features.components },
  { list: 'connectorEnds', field: 'connectorId', of: ({ features }) => features.connectors },
  { list: 'routes', field: 'conductorId', of: ({ features }) => features.conductors },
  { list: 'corners', field: 'cornerId', of: ({ features }) => features.outlineCorners },
]

/**
 * What was drawn of something that an edit removed goes with it: a plan that names what is not there cannot be saved. Names that were unknown
 * before the edit stay as they are, and with them what is said about them.
 */
export function withoutDrawnOfRemoved(before: Design, edited: Design): Design {
  const after = withoutRemovedClasses(edited)
  const { plan } = after
  if (plan === null) return after
  const changed = DRAWS.flatMap(({ list, field, of, mayBelongToNothing }) => {
    const kept = new Set(of(after).map(({ id }) => id))
    const removed = new Set(of(before).flatMap(({ id }) => (kept.has(id) ? [] : [id])))
    if (removed.size === 0) return []
    const entries = plan[list] as unknown as readonly Readonly<Record<string, unknown>>[]
    const left = entries.flatMap((entry) => {
      if (!removed.has(String(entry[field]))) return [entry]
      return mayBelongToNothing === true ? [{ ...entry, [field]: null }] : []
    })
    return [[list, left] as const]
  })
  return changed.length === 0 ? after : { ...after, plan: { ...plan, ...Object.fromEntries(changed) } as Plan }
}

/** Conductors of a net class that is gone are of none. */
function withoutRemovedClasses(design: Design): Design {
  const { features } = design
  const kept = new Set(features.netClasses.map(({ id }) => id))
  const isGone = (id: string | null) => id !== null && !kept.has(id)
  if (!features.conductors.some(({ netClassId }) => isGone(netClassId))) return design
  const conductors = features.conductors.map((each) => (isGone(each.netClassId) ? { ...each, netClassId: null } : each))
  return { ...design, features: { ...features, conductors } }
}
