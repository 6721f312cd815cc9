import { type Design, listStiffeners, type Plan } from '@/lib/engine'

export const FACES = ['top', 'bottom'] as const
export type Face = (typeof FACES)[number]

export const FACE_WORDS: Readonly<Record<Face, string>> = { top: 'On the top face', bottom: 'On the bottom face' }

/** The plan without what lies on a hidden face: components, markings, and what a layer of that face carries. What lies on no known face stays. */
export function withoutFaces(plan: Plan, design: Design, hidden: ReadonlySet<Face>): Plan {
  if (hidden.size === 0) return plan
  const isSeen = ({ face }: { readonly face: Face | null }) => face === null || !hidden.has(face)
  const layerOf = new Map(listStiffeners(design).map(({ id, layerId }) => [id, layerId]))
  const onSeen = (layerId: string | null) => isSeen({ face: faceOfLayer(design, layerId) })
  return {
    ...plan,
    components: plan.components.filter(isSeen),
    markings: plan.markings.filter(isSeen),
    stiffeners: plan.stiffeners.filter(({ stiffenerId }) => onSeen(layerOf.get(stiffenerId) ?? null)),
    coverlayOpenings: plan.coverlayOpenings.filter(({ layerId }) => onSeen(layerId)),
  }
}

/** Which face a layer is nearer to, by the conductors over and under it; null where there are none, or as many of both. */
function faceOfLayer({ construction: { layers } }: Design, layerId: string | null): Face | null {
  const at = layers.findIndex(({ id }) => id === layerId)
  if (at === -1) return null
  const count = (list: typeof layers) => list.filter(({ kind }) => kind === 'conductor').length
  const [over, under] = [count(layers.slice(0, at)), count(layers.slice(at + 1))]
  return over === under ? null : over < under ? 'top' : 'bottom'
}
