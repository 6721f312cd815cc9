import type { Place } from './outcome'

export const BRIEF_PLACE: Place = { kind: 'brief', id: 'brief', name: 'Brief' }
export const ROUTING_PLACE: Place = { kind: 'routing', id: 'routing', name: 'Routing' }
export const DESIGN_PLACE: Place = { kind: 'design', id: 'design', name: 'Design' }

export function placeOf(kind: Place['kind'], { id, name }: { readonly id: string; readonly name: string }): Place {
  return { kind, id, name }
}
