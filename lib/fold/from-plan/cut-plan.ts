import {
  areBoxesNear,
  boundsOf,
  edgesOfPath,
  isInBox,
  type LineOrArc,
  locateInRegion,
  looseBox,
  type Path,
  type Region,
  splitByLines,
} from '@/lib/geometry'
import { areasOf, type Plan, pathInNm } from '@/lib/plan'
import { type BandLine, findBandPieces, listBandBorders, middleOf } from './band-borders'

/** A piece of the part that moves as one, or bends as one. */
export interface CutPiece {
  readonly region: Region
  /** Place of its area in the plan's areas. */
  readonly area: number
  /** Place of the bend whose band it is; -1 for a piece that stays plane. */
  readonly bend: number
  readonly neighbours: readonly { readonly piece: number; readonly edges: readonly LineOrArc[] }[]
}

/** Farther apart than this nothing of one lies on the other: ten times the reach within which a border is a dividing line. */
const APART_NM = 10_000

export interface CutPlan {
  readonly pieces: readonly CutPiece[]
  /** Bends whose axis runs through no area, and those whose band overlaps that of another. */
  readonly lost: readonly number[]
  readonly overlapping: readonly number[]
}

/** Cuts a part along its dividing lines and the borders of its bends' bands. */
export function cutPlan(plan: Plan, part: Region, lines: readonly BandLine[]): CutPlan {
  const { areas } = areasOf(plan)
  const dividing = plan.dividingLines.map(({ nodes }) => pathInNm(nodes))
  const known = [...dividing.flatMap(edgesOfPath), ...part.outer, ...part.holes.flat()]
  const boxes = areas.map(({ region }) => boundsOf(region.outer))
  const knownBoxes = known.map(looseBox)
  const borders: Path[] = []
  const bands = lines.map((line): readonly Region[] => {
    // An axis lies in the area that has its middle; one whose middle is cut away bends each area that it runs through.
    const own = areas.filter(
      ({ region }, at) => isInBox(boxes[at], middleOf(line)) && locateInRegion(region, middleOf(line)) !== 'outside',
    )
    const found = (own.length > 0 ? own.slice(0, 1) : areas).flatMap(({ region }) => findBandPieces(region, line))
    for (const piece of found) {
      const own = boundsOf(piece.outer)
      const near = known.filter((_, at) => areBoxesNear(own, knownBoxes[at], APART_NM))
      borders.push(...listBandBorders(piece, line, near))
    }
    return found
  })
  const overlapping = new Set<number>()
  const cuts = splitByLines(part, [...dividing, ...borders])
  const bandBoxes = bands.map((found) => found.map(({ outer }) => boundsOf(outer)))
  const pieces = cuts.pieces.map(({ region, inner, neighbours }): CutPiece => {
    const here = bands.flatMap((found, bend) =>
      found.some((band, at) => isInBox(bandBoxes[bend]?.[at], inner) && locateInRegion(band, inner) === 'inside')
        ? [bend]
        : [],
    )
    for (const bend of here.slice(1)) overlapping.add(bend)
    return {
      region,
      area: areas.findIndex((each, at) => isInBox(boxes[at], inner) && locateInRegion(each.region, inner) === 'inside'),
      bend: here[0] ?? -1,
      neighbours,
    }
  })
  return {
    pieces,
    lost: bands.flatMap((found, bend) => (found.length === 0 ? [bend] : [])),
    overlapping: [...overlapping],
  }
}
