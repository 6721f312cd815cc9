import type { ArtworkFileFacts } from '@/lib/artwork'
import type { Design } from '../design'
import { DESIGN_PLACE, type Place, placeOf } from '../results'
import { asEntered, countOf } from '../units'
import {
  type ArtworkPair,
  type ArtworkSubject,
  type Comparison,
  filesFor,
  listNames,
  type OpenFact,
  unknownFiles,
} from './compared'

/** Half a mil: sizes of inch files are rounded to a tenth of a mil, and drills step by 0.05 mm. Our choice. */
const SAME_SIZE_MM = 0.0127

type Hole = Design['features']['holes'][number]
interface DrilledSize {
  diameterMm: number
  hits: number
  readonly files: Set<string>
  readonly platings: Set<'plated' | 'not plated' | 'not said'>
}

/** Sizes, counts and plating of drilled holes, as the drill files say and as the features list them. */
export function compareHoles({ artwork, design }: ArtworkSubject): Comparison {
  const files = filesFor(artwork, 'holes')
  const { holes, none } = design.features
  const open: OpenFact[] = []
  if (files.length === 0) {
    if (holes.length > 0) open.push(openHoles('no drill file with a hole in it is there', 'add the drill files'))
    return { pairs: [], open }
  }
  const slots = files.filter(({ tools }) => tools?.some((tool) => tool.slots + tool.routedMoves > 0))
  if (slots.length > 0) {
    open.push(
      openHoles(`slots and routed openings of ${listNames(slots)} are not compared`, 'look at them in the drill file'),
    )
  }
  const drilled = gatherSizes(files)
  if (holes.length === 0) {
    const total = drilled.reduce((sum, { hits }) => sum + hits, 0)
    if (total > 0 && none.includes('holes')) {
      return {
        pairs: [
          pair(
            'Number of holes',
            listNames(files),
            String(total),
            'the features',
            'none',
            false,
            ['features', 'none'],
            [DESIGN_PLACE],
          ),
        ],
        open,
      }
    }
    return {
      pairs: [],
      open:
        total === 0
          ? open
          : [...open, openHoles('no hole is listed in the features', 'list the holes with their sizes')],
    }
  }
  const unsized = holes.filter(({ drillMm }) => drillMm === null)
  for (const { name } of unsized) open.push(openHoles(`the size of "${name}" is not stated`, 'state its drill'))
  const pairs: ArtworkPair[] = []
  for (const size of drilled) {
    const listed = holes.filter((hole) => isSameSize(hole.drillMm, size.diameterMm))
    if (listed.length > 0) comparePresent(design, size, listed, pairs, open)
    // One that has no size yet may be this one.
    else if (unsized.length === 0) {
      pairs.push(
        pair(
          `Holes of ${mm(size.diameterMm)}`,
          [...size.files].join(', '),
          countOf(size.hits, 'hole'),
          'the features',
          'no hole of this size',
          false,
          ['features', 'holes'],
          [DESIGN_PLACE],
        ),
      )
    }
  }
  for (const hole of holes) {
    const { drillMm } = hole
    if (drillMm === null || drilled.some(({ diameterMm }) => isSameSize(drillMm, diameterMm))) continue
    const missing = unreadDrills(artwork.files)
    if (missing.length > 0) {
      open.push(
        openHoles(
          `"${hole.name}" is in no drill file that was read, and ${listNames(missing)} was not`,
          'mend these files',
        ),
      )
    } else {
      pairs.push(
        pair(
          `Holes of ${mm(drillMm)}`,
          listNames(files),
          'no hole of this size',
          `"${hole.name}" of the features`,
          mm(drillMm),
          false,
          pathOf(design, hole),
          [placeOf('hole', hole)],
        ),
      )
    }
  }
  return { pairs, open }
}

/** Drill files that were not read whole, and layers of which nobody knows what they are. */
const unreadDrills = (files: readonly ArtworkFileFacts[]): ArtworkFileFacts[] => [
  ...files.filter(
    ({ kind, errorCount, questions }) =>
      kind === 'drill' && (errorCount > 0 || questions.some(({ taken }) => taken === null)),
  ),
  ...unknownFiles({ files: [...files] }).filter(({ kind }) => kind === 'drill'),
]

const isSameSize = (one: number | null, other: number): boolean => one !== null && Math.abs(one - other) <= SAME_SIZE_MM
const mm = (value: number): string => asEntered(Math.round(value * 1e4) / 1e4, 'mm')
const pathOf = ({ features }: Design, hole: Hole) => ['features', 'holes', features.holes.indexOf(hole), 'drillMm']

/** Sizes within the tolerance of comparison count as one. */
function gatherSizes(files: readonly ArtworkFileFacts[]): DrilledSize[] {
  const sizes: DrilledSize[] = []
  for (const { name, tools } of files) {
    for (const { diameterMm, hits, plating } of tools ?? []) {
      if (hits === 0) continue
      let size = sizes.find((known) => isSameSize(known.diameterMm, diameterMm))
      if (size === undefined) {
        size = { diameterMm, hits: 0, files: new Set(), platings: new Set() }
        sizes.push(size)
      }
      size.hits += hits
      size.files.add(name)
      size.platings.add(plating ?? 'not said')
    }
  }
  return sizes.sort((one, other) => one.diameterMm - other.diameterMm)
}

/** How many holes the plan draws of a kind; null where it draws none of them. */
function countDrawn({ plan }: Design, { id }: Hole): number | null {
  const drawn = plan?.holes.filter(({ holeId }) => holeId === id) ?? []
  return drawn.length === 0 ? null : drawn.reduce((sum, { columns, rows }) => sum + columns * rows, 0)
}

function comparePresent(
  design: Design,
  size: DrilledSize,
  listed: readonly Hole[],
  pairs: ArtworkPair[],
  open: OpenFact[],
): void {
  const places = listed.map((hole) => placeOf('hole', hole))
  const names = listed.map(({ name }) => `"${name}"`).join(' and ')
  const where = [...size.files].join(', ')
  const counts = listed.map((hole) => countDrawn(design, hole))
  const undrawn = listed.filter((_, at) => counts[at] === null)
  if (undrawn.length > 0) {
    open.push(
      openHoles(
        `the number of ${undrawn.map(({ name }) => `"${name}"`).join(' and ')} is not stated; ${where} has ${size.hits} of ${mm(size.diameterMm)}`,
        'draw them in the plan',
        places,
      ),
    )
  } else {
    const drawn = counts.reduce((sum: number, count) => sum + (count ?? 0), 0)
    pairs.push(
      pair(
        `Number of holes of ${mm(size.diameterMm)}`,
        where,
        String(size.hits),
        `${names} in the plan`,
        String(drawn),
        size.hits === drawn,
        ['plan', 'holes'],
        places,
      ),
    )
  }
  if (size.platings.has('not said') || listed.some(({ plated }) => plated === null)) {
    open.push(
      openHoles(
        size.platings.has('not said')
          ? `${where} does not say whether its holes of ${mm(size.diameterMm)} are plated`
          : `nobody has said whether ${names} ${listed.length === 1 ? 'is' : 'are'} plated`,
        'say whether they are plated',
        places,
      ),
    )
    return
  }
  const stated = new Set(listed.map(({ plated }) => (plated === true ? 'plated' : 'not plated')))
  const write = (platings: ReadonlySet<string>) => [...platings].sort().join(' and ')
  pairs.push(
    pair(
      `Plating of holes of ${mm(size.diameterMm)}`,
      where,
      write(size.platings),
      `${names} of the features`,
      write(stated),
      write(size.platings) === write(stated),
      ['features', 'holes'],
      places,
    ),
  )
}

function pair(
  fact: string,
  where: string,
  says: string,
  otherWhere: string,
  otherSays: string,
  agrees: boolean,
  path: readonly (string | number)[],
  places: readonly Place[],
): ArtworkPair {
  return { fact, one: { where, says }, other: { where: otherWhere, says: otherSays, path }, agrees, places }
}

const openHoles = (because: string, decidedBy: string, places: readonly Place[] = [DESIGN_PLACE]): OpenFact => ({
  fact: 'the holes',
  because,
  decidedBy,
  places,
})
