import type { FlatPart, LeafOf } from '../kinematics/flat-part'
import { type FoldShares, foldPart } from '../kinematics/fold-part'
import { type BodyFace, listFacesOf } from './body-faces'
import { type CarriedBody, listFlatBodies } from './flat-bodies'
import { placeBody } from './place-bodies'

/** A closed body where the fold brings it. */
export interface FoldedBody extends LeafOf {
  readonly id: string
  readonly kind: 'plate' | 'band' | 'carried'
  readonly faces: readonly BodyFace[]
}

/** Strips of a band for the eye: finer than those that clashes are sought with first. */
const SHOWN_STRIP_DEG = 6

/**
 * All bodies of the part, folded by the shares.
 *
 * @param stripDeg  turn of one strip of a band folded whole
 * @throws UnfoldablePartError as `foldPart`
 */
export function listFoldedBodies(
  part: FlatPart,
  carried: readonly CarriedBody[],
  fixedPlateId: string,
  shares: FoldShares,
  stripDeg: number = SHOWN_STRIP_DEG,
): readonly FoldedBody[] {
  const folded = foldPart(part, fixedPlateId, shares)
  return listFlatBodies(part, carried, stripDeg).flatMap((body): FoldedBody[] => {
    if (body.prisms.length === 0) return []
    const kind = 'bandId' in body.carrier ? 'band' : body.isCarried ? 'carried' : 'plate'
    const placed = placeBody(folded, body)
    const leaves = [...new Set(placed.prisms.map(({ leaf }) => leaf))]
    return leaves.map((leaf) => ({
      id: leaf === null ? body.id : `${body.id}/leaf-${leaf}`,
      solidId: body.id,
      leaf,
      kind,
      faces: listFacesOf({ ...placed, prisms: placed.prisms.filter((prism) => prism.leaf === leaf) }),
    }))
  })
}
