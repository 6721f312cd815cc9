import { type CarriedBody, listFlatBodies } from '../bodies/flat-bodies'
import { type Box, joinBoxes, placeBody } from '../bodies/place-bodies'
import type { FlatPart } from '../kinematics/flat-part'
import type { FoldedPart } from '../kinematics/fold-part'
import { type Clearance, findClashes } from './find-clashes'
import { findJoined } from './joined-pairs'
import { makeLookCloser } from './look-closer'

export interface FoldedCheck extends Clearance {
  readonly envelope: Box
}

/** Least gaps and clashes of a folded part, and the box that it fills. */
export function checkFolded(
  part: FlatPart,
  carried: readonly CarriedBody[],
  folded: FoldedPart,
  clearanceMm: number,
): FoldedCheck {
  const solids = listFlatBodies(part, carried).filter(({ prisms }) => prisms.length > 0)
  const bodies = new Map(solids.map((body) => [body.id, placeBody(folded, body)]))
  const joined = findJoined(part)(folded)
  const lookCloser = makeLookCloser(part)
  const { clashes, least } = findClashes([...bodies.values()], clearanceMm, joined)
  const settled = clashes.flatMap((clash) => {
    if (clash.kind !== 'cannot-tell') return [clash]
    const [first, second] = clash.bodyIds.map((id) => bodies.get(id))
    if (first === undefined || second === undefined) return [clash]
    const closer = lookCloser(
      folded,
      [first.body, second.body],
      clearanceMm,
      joined,
      (found) => found.clash?.kind !== 'cannot-tell',
    )
    return closer === null ? [clash] : closer.clash === null ? [] : [closer.clash]
  })
  return { clashes: settled, least, envelope: joinBoxes([...bodies.values()].map(({ box }) => box)) }
}
