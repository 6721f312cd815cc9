import { type Design, listStiffeners } from '@/lib/engine'
import { nameBends } from '../sheet/contents/bends'

/** Short names of what lies on a plan, as the tables of the sheet have them, by the id in the features. */
export interface PlanReferences {
  readonly zones: ReadonlyMap<string, string>
  readonly bends: ReadonlyMap<string, string>
  readonly holes: ReadonlyMap<string, string>
  readonly openings: ReadonlyMap<string, string>
  readonly stiffeners: ReadonlyMap<string, string>
  readonly components: ReadonlyMap<string, string>
  readonly connectors: ReadonlyMap<string, string>
  /** Of corners and slits that state one. */
  readonly tearStops: ReadonlyMap<string, string>
}

const number = (letter: string, list: readonly { readonly id: string }[]): ReadonlyMap<string, string> =>
  new Map(list.map(({ id }, index) => [id, `${letter}${index + 1}`]))

export function makePlanReferences(design: Design): PlanReferences {
  const { features, construction } = design
  return {
    zones: number('Z', construction.zones),
    bends: nameBends(design),
    holes: number('H', features.holes),
    openings: number('C', features.coverlayOpenings),
    stiffeners: number('S', listStiffeners(design)),
    components: number('K', features.components),
    connectors: number('X', features.connectors),
    tearStops: number(
      'T',
      [...features.outlineCorners, ...features.slits].filter(({ tearStop }) => tearStop === true),
    ),
  }
}
