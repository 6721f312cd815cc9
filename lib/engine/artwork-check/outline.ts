import type { ArtworkFileFacts } from '@/lib/artwork'
import { DESIGN_PLACE } from '../results'
import { asEntered, inSentence } from '../units'
import {
  type ArtworkPair,
  type ArtworkSubject,
  type Comparison,
  filesFor,
  NOTHING_COMPARED,
  type OpenFact,
} from './compared'

/** Two drawings of one outline differ by as much: what holds between plan and stated values too. Our choice. */
const AGREE_MM = 0.05
/** Of an area: above what rounding to a micrometre moves, below an inside corner of 2 mm on a part of 100 mm by 40 mm. Our choice. */
const AREA_FRACTION = 0.0001
const LEAST_AREA_MM2 = 0.05

type Size = readonly [longMm: number, shortMm: number]
interface Sized {
  readonly where: string
  /** A quarter turn of the whole set is no contradiction. */
  readonly size: Size
}

const inOrder = (xMm: number, yMm: number): Size => [Math.max(xMm, yMm), Math.min(xMm, yMm)]
const ofBox = ([minX, minY, maxX, maxY]: readonly [number, number, number, number]): Size =>
  inOrder(maxX - minX, maxY - minY)
const agree = (one: Size, other: Size): boolean => one.every((mm, at) => Math.abs(mm - (other[at] ?? 0)) <= AGREE_MM)
const write = ([longMm, shortMm]: Size): string => `${asEntered(round(longMm))} × ${asEntered(round(shortMm), 'mm')}`
/** To the micrometre: more is rounding of the file's format. */
const round = (mm: number): number => Math.round(mm * 1000) / 1000

/** Size, area and cut-outs of the profile against the plan, or against the outline that was typed. */
export function compareOutlines(subject: ArtworkSubject): Comparison {
  const { artwork } = subject
  const profiles = filesFor(artwork, 'profile')
  const stated = findStated(subject)
  if (profiles.length === 0) {
    return {
      pairs: compareJobs(subject, null, stated),
      open: [
        {
          fact: 'the outline',
          because: 'no file of the artwork is known to be the profile',
          decidedBy: 'add the profile, or say which file it is',
          places: [DESIGN_PLACE],
        },
      ],
    }
  }
  const found = profiles.map((file) => compareProfile(file, subject, stated))
  return {
    pairs: [...found.flatMap(({ pairs }) => pairs), ...compareJobs(subject, profiles[0] ?? null, stated)],
    open: [...found.flatMap(({ open }) => open), ...(stated === null ? [NO_OUTLINE] : [])],
  }
}

const NO_OUTLINE: OpenFact = {
  fact: 'the outline',
  because: 'the design has none to hold the profile against',
  decidedBy: 'draw the outline in the plan, or take it over from the profile',
  places: [DESIGN_PLACE],
}

function findStated({ drawnPart, design }: ArtworkSubject): (Sized & { readonly isDrawn: boolean }) | null {
  if (drawnPart !== null)
    return { where: 'the plan', size: inOrder(drawnPart.lengthMm, drawnPart.widthMm), isDrawn: true }
  const corners = design.features.outline?.verticesMm ?? []
  if (corners.length < 3) return null
  const xs = corners.map(([x]) => x)
  const ys = corners.map(([, y]) => y)
  const size = inOrder(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
  return { where: 'the outline of the features', size, isDrawn: false }
}

function compareProfile(
  file: ArtworkFileFacts,
  { drawnPart, design }: ArtworkSubject,
  stated: ReturnType<typeof findStated>,
): Comparison {
  const { outline } = file
  if (stated === null) return NOTHING_COMPARED
  if (outline === null) {
    return open(file, 'nothing in it can be followed as a line')
  }
  const outer = outline.loops.filter(({ depth }) => depth === 0)
  if (outline.isClosed && outer.length > 1) {
    return open(file, `it draws ${outer.length} parts beside each other, such as an array`)
  }
  const pairs: ArtworkPair[] = [
    {
      fact: 'Size of the outline',
      one: { where: file.name, says: write(ofBox(outline.extentMm)) },
      other: { where: stated.where, says: write(stated.size), path: pathOf(stated.isDrawn) },
      agrees: agree(ofBox(outline.extentMm), stated.size),
      places: [DESIGN_PLACE],
    },
  ]
  if (!outline.isClosed) {
    const [x, y] = outline.looseEndsMm[0] ?? [0, 0]
    const { open: loose } = open(
      file,
      `its strokes do not close, first at (${asEntered(round(x))}, ${asEntered(round(y))}) mm, so that area and cut-outs are not known`,
    )
    return { pairs, open: loose }
  }
  if (drawnPart === null || design.plan === null) return { pairs, open: [] }
  const holes = outline.loops.filter(({ depth, areaMm2 }) => depth === 1 && !isHole(areaMm2, design))
  const areaMm2 = (outer[0]?.areaMm2 ?? 0) - holes.reduce((sum, loop) => sum + loop.areaMm2, 0)
  const { cutOuts, slits } = design.plan
  // A slit with a width may be drawn as a cut-out, or as a line of its own.
  if (slits.some(({ widthMm }) => widthMm !== 0)) {
    return { pairs, open: open(file, 'slits of the plan may be drawn in it, so that areas cannot be compared').open }
  }
  pairs.push(
    {
      fact: 'Cut-outs of the outline',
      one: { where: file.name, says: String(holes.length) },
      other: { where: 'the plan', says: String(cutOuts.length), path: ['plan', 'cutOuts'] },
      agrees: holes.length === cutOuts.length,
      places: [DESIGN_PLACE],
    },
    {
      fact: 'Area within the outline',
      one: { where: file.name, says: `${inSentence(areaMm2)} mm²` },
      other: { where: 'the plan', says: `${inSentence(drawnPart.areaMm2)} mm²`, path: ['plan', 'outline'] },
      agrees: Math.abs(areaMm2 - drawnPart.areaMm2) <= Math.max(LEAST_AREA_MM2, AREA_FRACTION * drawnPart.areaMm2),
      places: [DESIGN_PLACE],
    },
  )
  return { pairs, open: [] }
}

const pathOf = (isDrawn: boolean) => (isDrawn ? ['plan', 'outline'] : ['features', 'outline'])

/** Round openings of a hole's size are holes: some programs draw those in the profile. */
function isHole(areaMm2: number, { features }: ArtworkSubject['design']): boolean {
  return features.holes.some(
    ({ drillMm }) => drillMm !== null && Math.abs((Math.PI * drillMm ** 2) / 4 / areaMm2 - 1) < 0.01,
  )
}

function open(file: ArtworkFileFacts, because: string): Comparison {
  return {
    pairs: [],
    open: [
      {
        fact: 'the outline',
        because: `${file.name}: ${because}`,
        decidedBy: 'compare profile and plan by eye, or export the profile again',
        places: [DESIGN_PLACE],
      },
    ],
  }
}

/** A job file states the size over the strokes of the profile, or along their middle. */
function compareJobs(
  { artwork }: ArtworkSubject,
  profile: ArtworkFileFacts | null,
  stated: Sized | null,
): ArtworkPair[] {
  return artwork.files.flatMap(({ name, job }): ArtworkPair[] => {
    if (job?.sizeMm == null) return []
    const size = inOrder(...job.sizeMm)
    const one = { where: name, says: write(size) }
    if (profile?.outline != null && profile.extentMm !== null) {
      const middle = ofBox(profile.outline.extentMm)
      return [
        {
          fact: 'Size of the outline',
          one,
          other: { where: profile.name, says: write(middle) },
          agrees: agree(size, middle) || agree(size, ofBox(profile.extentMm)),
          places: [DESIGN_PLACE],
        },
      ]
    }
    if (stated === null) return []
    // Without the profile nobody knows how wide its strokes are, which some programs add: half a millimetre is none of them.
    const isFar = size.some((mm, at) => mm - (stated.size[at] ?? 0) < -AGREE_MM || mm - (stated.size[at] ?? 0) > 0.5)
    return isFar
      ? [
          {
            fact: 'Size of the outline',
            one,
            other: { where: stated.where, says: write(stated.size) },
            agrees: false,
            places: [DESIGN_PLACE],
          },
        ]
      : []
  })
}
