import { cutBand, type FlatBody, STRIP_DEG } from '../bodies/flat-bodies'
import { placeBody } from '../bodies/place-bodies'
import type { FlatBand, FlatPart } from '../kinematics/flat-part'
import type { FoldedPart } from '../kinematics/fold-part'
import { comparePair, type JoinedPairs, type PairFound } from './find-clashes'

/** Strips are quartered this often where their sag leaves a pair open: 15 degrees, then 3.75, 0.94 and 0.23. */
const CLOSER_LOOKS = 3

export type LookCloser = (
  folded: FoldedPart,
  bodies: readonly [FlatBody, FlatBody],
  clearanceMm: number,
  joined: JoinedPairs,
  isSettled: (found: PairFound) => boolean,
) => PairFound | null

/**
 * Compares a pair with finer and finer strips of its bands until it is settled, or no finer strip is cut. Bands that were cut once are kept.
 *
 * @returns null where neither of the pair is a band, so that nothing gets finer
 */
export function makeLookCloser(part: FlatPart): LookCloser {
  const bands = new Map(part.bands.map((band) => [band.id, band]))
  const cut = new Map<string, FlatBody>()
  const recut = (body: FlatBody, look: number): FlatBody => {
    const band = 'bandId' in body.carrier ? bands.get(body.carrier.bandId) : undefined
    return band === undefined ? body : cutOnce(cut, band, look)
  }
  return (folded, bodies, clearanceMm, joined, isSettled) => {
    if (bodies.every(({ carrier }) => 'plateId' in carrier)) return null
    let found: PairFound | null = null
    for (let look = 1; look <= CLOSER_LOOKS; look += 1) {
      const [first, second] = bodies.map((body) => placeBody(folded, recut(body, look)))
      if (first === undefined || second === undefined) return null
      found = comparePair(first, second, clearanceMm, joined, 0)
      if (isSettled(found)) return found
    }
    return found
  }
}

function cutOnce(cut: Map<string, FlatBody>, band: FlatBand, look: number): FlatBody {
  const key = `${look} ${band.id}`
  const known = cut.get(key)
  if (known !== undefined) return known
  const made = cutBand(band, STRIP_DEG / 4 ** look)
  cut.set(key, made)
  return made
}
