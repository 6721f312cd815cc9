import type { Design, DielectricLayer } from '@/lib/engine'
import { type LocatedValue, listStated, type Measurement, type ParameterDirection } from './parameter'

const BRIEF_PLACE = { kind: 'brief', id: 'brief', name: 'Brief' } as const

/** One figure of the brief; null is not stated. */
export const inBrief = (
  value: number | null,
  unknown: string,
  direction: ParameterDirection = 'smaller-is-harder',
): Measurement =>
  listStated(
    direction,
    [value],
    (stated): LocatedValue | null => (stated === null ? null : { value: stated, place: BRIEF_PLACE, foilUm: null }),
    unknown,
    unknown,
  )

/** Why a design without a layer of the kind has nothing to be held against; null where it has one. */
export const lacksLayer =
  (kind: DielectricLayer['kind'], reason: string) =>
  ({ construction }: Design): string | null =>
    construction.layers.some((layer) => layer.kind === kind) ? null : reason
