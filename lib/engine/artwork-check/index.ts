import type { ArtworkPair, ArtworkSubject, Comparison, OpenFact } from './compared'
import { compareConductors, compareSpans } from './conductors'
import { compareCovers } from './covers'
import { compareHoles } from './holes'
import { comparePlacement, compareProjects } from './one-part'
import { compareOutlines } from './outline'
import { compareThicknesses } from './thickness'
import { listUnread } from './whole'

export type { ArtworkPair, OpenFact } from './compared'

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
  'files that were not read whole, or that nobody knows': listUnread,
}

/** Whatever artwork and design both state, whether both agree or not, and what nobody can tell. */
export function compareArtwork(subject: ArtworkSubject): { pairs: ArtworkPair[]; open: OpenFact[] } {
  const found = Object.values(ARTWORK_FACTS).map((compare) => compare(subject))
  return { pairs: found.flatMap(({ pairs }) => pairs), open: found.flatMap(({ open }) => open) }
}
