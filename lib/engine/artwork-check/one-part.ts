import type { ArtworkFileFacts } from '@/lib/artwork'
import { DESIGN_PLACE } from '../results'
import { readPartNumbers } from '../statements'
import { inSentence } from '../units'
import { type ArtworkPair, type ArtworkSubject, type Comparison, filesFor, NOTHING_COMPARED } from './compared'

/** Files of one part name one project, and lie over one outline. */
export function compareProjects({ artwork, design }: ArtworkSubject): Comparison {
  const named = artwork.files.flatMap(({ name, project, job }) => {
    if (project !== null) return [{ file: name, ...project }]
    return job?.name == null || job.name === ''
      ? []
      : [{ file: name, name: job.name, mark: null, revision: job.revision }]
  })
  const [first, ...others] = named
  if (first === undefined) return NOTHING_COMPARED
  const pairs = others.flatMap((other): ArtworkPair[] => {
    const compare = (fact: string, one: string | null, two: string | null): ArtworkPair[] =>
      one === null || two === null
        ? []
        : [
            {
              fact,
              one: { where: other.file, says: two },
              other: { where: first.file, says: one },
              agrees: one.toLowerCase() === two.toLowerCase(),
              places: [DESIGN_PLACE],
            },
          ]
    return [
      ...compare('Project of the files', first.name, other.name),
      ...compare('Mark of the project', first.mark, other.mark),
      ...compare('Revision of the project', first.revision, other.revision),
    ]
  })
  const { partNumber } = design.brief
  const ours = named.flatMap(({ file, name }): ArtworkPair[] => {
    const read = readPartNumbers(name, partNumber)
    if (read.named.length === 0) return []
    return [
      {
        fact: 'Part number',
        one: { where: file, says: `project ${name}` },
        other: { where: 'the brief', says: partNumber, path: ['brief', 'partNumber'] },
        agrees: read.named.includes(read.wanted),
        places: [DESIGN_PLACE],
      },
    ]
  })
  return { pairs: [...pairs, ...ours], open: [] }
}

/** A layer of this part lies over its profile by this much of itself at least. Notes beside the circuit are no such layers. Our choice. */
const LEAST_OVERLAP = 0.5

type Box = readonly [number, number, number, number]
const areaOf = ([minX, minY, maxX, maxY]: Box): number => Math.max(0, maxX - minX) * Math.max(0, maxY - minY)

export function comparePlacement({ artwork }: ArtworkSubject): Comparison {
  const profiles = filesFor(artwork, 'profile').filter(({ extentMm }) => extentMm !== null)
  const [profile] = profiles
  const around = profile?.extentMm
  // Of several profiles nobody knows which one the layers go with.
  if (profile === undefined || around == null || profiles.length > 1) return NOTHING_COMPARED
  const layers = filesFor(artwork, 'copper', 'coverlay', 'solder mask', 'stiffener', 'holes', 'paste')
  const pairs = layers.flatMap((file: ArtworkFileFacts): ArtworkPair[] => {
    const own = file.extentMm
    if (own === null || areaOf(own) === 0) return []
    const shared: Box = [
      Math.max(own[0], around[0]),
      Math.max(own[1], around[1]),
      Math.min(own[2], around[2]),
      Math.min(own[3], around[3]),
    ]
    return [
      {
        fact: `Where ${file.name} lies`,
        one: { where: file.name, says: writeBox(own) },
        other: { where: profile.name, says: writeBox(around) },
        agrees: areaOf(shared) >= LEAST_OVERLAP * areaOf(own),
        places: [DESIGN_PLACE],
      },
    ]
  })
  return { pairs, open: [] }
}

const writeBox = ([minX, minY, maxX, maxY]: Box): string =>
  `x ${inSentence(minX)} to ${inSentence(maxX)}, y ${inSentence(minY)} to ${inSentence(maxY, 'mm')}`
