import type { ArtworkPair, ArtworkSubject, Comparison, OpenFact } from './compared'
import { compareConductors, compareSpans } from './conductors'
import { compareCovers } from './covers'
import { compareHoles } from './holes'
import { compareOnPlan } from './on-plan'
import { comparePlacement, compareProjects } from './one-part'
import { compareOutlines } from './outline'
import { compareThicknesses } from './thickness'
import { listUnread } from './whole'

export { type ArtworkPair, filesFor, listNames, type OpenFact, unknownFiles } from './compared'
export { CONDUCTOR_COUNT_FACT } from './conductors'
export { groundOf, groundOfDrawing } from './ground'
export { SAME_SHARE_FRACTION } from './on-plan'

/**
 * Every fact that artwork states and another place states too: a closed list. A fact is compared by its numbers and choices; what is only written in
 * words on a drawing layer is for people.
 */
const ARTWORK_FACTS: Readonly<Record<string, (subject: ArtworkSubject) => Comparison>> = {
  'outline: size, area, cut-outs': compareOutlines,
  'conductor layers: number, places, sides': compareConductors,
  'layers that holes join': compareSpans,
  'holes: sizes, numbers, plating': compareHoles,
  'covers and stiffeners: there, on which side': compareCovers,
  'thickness of job and stack files': compareThicknesses,
  'project that the files name': compareProjects,
  'layers lie over the outline': comparePlacement,
  'on the plan: outline point by point, places of holes, shares of copper, hatches': compareOnPlan,
  'files that were not read whole, or that nobody knows': listUnread,
}

/** Whatever artwork and design both state, whether both agree or not, and what nobody can tell. */
export function compareArtwork(subject: ArtworkSubject): { pairs: ArtworkPair[]; open: OpenFact[] } {
  const found = Object.values(ARTWORK_FACTS).map((compare) => compare(subject))
  const broken = subject.artwork.files.filter(({ errorCount }) => errorCount > 0)
  const pairs = found.flatMap((each) => each.pairs)
  const isSure = (pair: ArtworkPair): boolean => pair.agrees || findBroken(pair, broken) === undefined
  return {
    pairs: pairs.filter(isSure),
    open: [
      ...pairs.filter((pair) => !isSure(pair)).map((pair) => leaveOpen(pair, findBroken(pair, broken) ?? '')),
      ...found.flatMap(({ open }) => open),
    ],
  }
}

/** What a file lacks since it was not read whole is no contradiction of its own. */
function findBroken({ one, other }: ArtworkPair, broken: ArtworkSubject['artwork']['files']): string | undefined {
  return broken.find(({ name }) => one.where.includes(name) || other.where.includes(name))?.name
}

const leaveOpen = ({ fact, one, other, places }: ArtworkPair, fileName: string): OpenFact => ({
  fact: fact.charAt(0).toLowerCase() + fact.slice(1),
  because: `${one.says} in ${one.where} and ${other.says} in ${other.where}, but ${fileName} was not read whole`,
  decidedBy: 'export the file again',
  places,
})
