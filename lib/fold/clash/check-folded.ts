import { type CarriedBody, cutBand, type FlatBody, listFlatBodies, STRIP_DEG } from '../bodies/flat-bodies'
import { type Box, joinBoxes, type PlacedBody, placeBody } from '../bodies/place-bodies'
import type { FlatPart } from '../kinematics/flat-part'
import type { FoldedPart } from '../kinematics/fold-part'
import { type Clearance, comparePair, findClashes, type JoinedPairs } from './find-clashes'
import { findJoined } from './joined-pairs'

export interface FoldedCheck extends Clearance {
  readonly envelope: Box
}

/** Strips are quartered this often where their sag leaves a pair open: 15 degrees, then 3.75, 0.94 and 0.23. */
const CLOSER_LOOKS = 3

/** Least gaps and clashes of a folded part, and the box that it fills. */
export function checkFolded(
  part: FlatPart,
  carried: readonly CarriedBody[],
  folded: FoldedPart,
  clearanceMm: number,
): FoldedCheck {
  const solids = listFlatBodies(part, carried).filter(({ prisms }) => prisms.length > 0)
  const bodies = new Map(solids.map((body) => [body.id, placeBody(folded, body)]))
  const joined = findJoined(folded)
  const { clashes, least } = findClashes([...bodies.values()], clearanceMm, joined)
  const settled = clashes.flatMap((clash) => {
    if (clash.kind !== 'cannot-tell') return [clash]
    const [first, second] = clash.bodyIds.map((id) => bodies.get(id))
    if (first === undefined || second === undefined) return [clash]
    return lookCloser(part, folded, [first, second], clearanceMm, joined) ?? []
  })
  return { clashes: settled, least, envelope: joinBoxes([...bodies.values()].map(({ box }) => box)) }
}

function lookCloser(
  part: FlatPart,
  folded: FoldedPart,
  [first, second]: readonly [PlacedBody, PlacedBody],
  clearanceMm: number,
  joined: JoinedPairs,
): Clearance['clashes'] | null {
  let found: Clearance['clashes'] | null = null
  for (let look = 1; look <= CLOSER_LOOKS; look += 1) {
    const stripDeg = STRIP_DEG / 4 ** look
    const recut = (body: PlacedBody) => placeBody(folded, recutBody(part, body.body, stripDeg))
    const { clash } = comparePair(recut(first), recut(second), clearanceMm, joined, 0)
    if (clash === null) return null
    found = [clash]
    if (clash.kind !== 'cannot-tell') return found
  }
  return found
}

function recutBody(part: FlatPart, body: FlatBody, stripDeg: number): FlatBody {
  const band = part.bands.find(({ id }) => id === body.id && 'bandId' in body.carrier)
  return band === undefined ? body : cutBand(band, stripDeg)
}
