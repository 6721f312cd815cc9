import type { FlatBody } from '../bodies/flat-bodies'
import type { FoldedBand, FoldedPart } from '../kinematics/fold-part'
import type { JoinedPairs } from './find-clashes'

/** Leaves that a bend turns by more than this come nearer to each other again, as its radius says. */
const CONVERGES_RAD = Math.PI / 2

/** Which bodies of a folded part one bend joins, and the gap that it makes itself. */
export function findJoined(folded: FoldedPart): JoinedPairs {
  const bands = [...folded.bands.values()]
  return {
    isJoined: (first, second) => bands.some((band) => isOf(band, first) && isOf(band, second)),
    ownGapMm: (first, second) => {
      const gaps = bands.flatMap((band) => (isLeafOf(band, first) && isLeafOf(band, second) ? gapOfLeaves(band) : []))
      return gaps.length === 0 ? null : Math.min(...gaps)
    },
  }
}

function isLeafOf({ band }: FoldedBand, { carrier, isCarried }: FlatBody): boolean {
  if (isCarried || !('plateId' in carrier)) return false
  return carrier.plateId === band.fromPlateId || carrier.plateId === band.toPlateId
}

function isOf(folded: FoldedBand, body: FlatBody): boolean {
  return isLeafOf(folded, body) || ('bandId' in body.carrier && body.carrier.bandId === folded.band.id)
}

/** Between the inside faces where the band begins and ends; none where its leaves lead away from each other. */
function gapOfLeaves({ band, angleRad }: FoldedBand): readonly number[] {
  const turnRad = Math.min(Math.abs(angleRad), Math.PI)
  if (turnRad <= CONVERGES_RAD) return []
  const insideFaceMm = angleRad > 0 ? band.topMm : band.bottomMm
  const insideRadiusMm = band.lengthMm / Math.abs(angleRad) - Math.abs(insideFaceMm - band.neutralMm)
  return [2 * insideRadiusMm * Math.sin(turnRad / 2)]
}
