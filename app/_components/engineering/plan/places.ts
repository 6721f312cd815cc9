import type { Design, Place } from '@/lib/engine'
import type { PointMm } from '@/lib/plan'
import { type DrawnRef, fieldsOf, handlesOf, type PlanListKey } from '@/lib/plan/edit'
import { BELONGS } from './belongs'

/** What the checklist calls the thing that an entry draws. */
export const PLACE_KINDS: Partial<Record<PlanListKey, Place['kind']>> = {
  areas: 'zone',
  bendLines: 'bend',
  stiffeners: 'stiffener',
  slits: 'slit',
  holes: 'hole',
  pads: 'pad',
  coverlayOpenings: 'coverlay-opening',
  components: 'component',
  connectorEnds: 'connector',
  corners: 'corner',
  routes: 'conductor',
}

/** Where something that the checklist speaks of is drawn; null where it is not. */
export function findDrawn(
  design: Design,
  { kind, id }: Pick<Place, 'kind' | 'id'>,
): { ref: DrawnRef; atMm: PointMm } | null {
  const { plan } = design
  if (plan === null) return null
  for (const [list, ownKind] of Object.entries(PLACE_KINDS) as [PlanListKey, Place['kind']][]) {
    const field = BELONGS[list]?.field
    if (ownKind !== kind || field === undefined) continue
    const entry = (plan[list] as readonly { readonly id: string }[]).find(
      (candidate) => (candidate as unknown as Readonly<Record<string, unknown>>)[field] === id,
    )
    if (entry === undefined) continue
    const ref: DrawnRef = { list, id: entry.id }
    const points = handlesOf(fieldsOf(plan, ref) ?? {}).map(({ atMm }) => atMm)
    const atMm = middleOf(points)
    if (atMm !== null) return { ref, atMm }
  }
  return null
}

function middleOf(points: readonly PointMm[]): PointMm | null {
  if (points.length === 0) return null
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length
  return [mean(0), mean(1)]
}
