import type { FlatBody } from '../bodies/flat-bodies'
import type { FlatBand, FlatPart } from '../kinematics/flat-part'
import type { FoldedPart } from '../kinematics/fold-part'
import type { JoinedPairs } from './find-clashes'

/** Leaves that a bend turns by more than this come nearer to each other again, as its radius says. */
const CONVERGES_RAD = Math.PI / 2

/**
 * Which bodies of a part one bend joins, and the gap that it makes itself at a state of the fold. What joins what is found once; the gap follows
 * the angle.
 */
export function findJoined(part: FlatPart): (folded: FoldedPart) => JoinedPairs {
  const bandsAt = new Map<string, readonly FlatBand[]>()
  for (const band of part.bands) {
    for (const plateId of new Set([band.fromPlateId, band.toPlateId])) {
      bandsAt.set(plateId, [...(bandsAt.get(plateId) ?? []), band])
    }
  }
  const byId = new Map(part.bands.map((band) => [band.id, band]))
  const bandsOf = ({ carrier, isCarried }: FlatBody): readonly FlatBand[] => {
    if ('bandId' in carrier) {
      const own = byId.get(carrier.bandId)
      return own === undefined ? [] : [own]
    }
    return isCarried ? [] : (bandsAt.get(carrier.plateId) ?? [])
  }
  const listShared = (first: FlatBody, second: FlatBody): readonly FlatBand[] => {
    const others = bandsOf(second)
    return bandsOf(first).filter((band) => others.includes(band))
  }
  const isJoined = (first: FlatBody, second: FlatBody): boolean => listShared(first, second).length > 0
  return (folded) => ({
    isJoined,
    ownGapMm: (first, second) => {
      if ('bandId' in first.carrier || 'bandId' in second.carrier) return null
      const gaps = listShared(first, second).flatMap((band) =>
        gapOfLeaves(band, folded.bands.get(band.id)?.angleRad ?? 0),
      )
      return gaps.length === 0 ? null : Math.min(...gaps)
    },
  })
}

/** Between the inside faces where the band begins and ends; none where its leaves lead away from each other. */
function gapOfLeaves(band: FlatBand, angleRad: number): readonly number[] {
  const turnRad = Math.min(Math.abs(angleRad), Math.PI)
  if (turnRad <= CONVERGES_RAD) return []
  const insideFaceMm = angleRad > 0 ? band.topMm : band.bottomMm
  const insideRadiusMm = band.lengthMm / Math.abs(angleRad) - Math.abs(insideFaceMm - band.neutralMm)
  return [2 * insideRadiusMm * Math.sin(turnRad / 2)]
}
