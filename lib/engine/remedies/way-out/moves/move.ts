import type { Design } from '../../../design'
import type { Failure, Judged } from '../judge'

/** A change that may clear a failure; whether it does is judged before it is taken. */
export interface Move {
  readonly id: string
  readonly title: string
  readonly detail: string
  readonly relaxes: string | null
  readonly cautions: readonly string[]
  readonly design: Design
}

/** Proposals for one failure, the smallest first. */
export type Mover = (failure: Failure, judged: Judged) => Iterable<Move>

export const placeId = ({ outcome }: Failure, kind: string): string | null =>
  outcome.places.find((place) => place.kind === kind)?.id ?? null

/** What is missing, in the unit of the limit; 0 where nothing is. */
export const shortfallOf = ({ outcome: { margin, decidingEnd } }: Failure): number =>
  Math.max(0, -(decidingEnd?.margin ?? margin))

/** Up to the next step, without the last binary digits. */
export function roundUp(value: number, step: number): number {
  return Math.round(Math.ceil(value / step - 1e-9) * step * 1e6) / 1e6
}
