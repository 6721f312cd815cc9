import {
  edgesOfPath,
  findInnerPoint,
  type LineOrArc,
  locateInRegion,
  type Path,
  type Region,
  splitByLines,
} from '@/lib/geometry'
import { areasOf, type Plan, pathInNm } from '@/lib/plan'
import { type BandLine, findBandPiece, listBandBorders } from './band-borders'

/** A piece of the part that moves as one, or bends as one. */
export interface CutPiece {
  readonly region: Region
  /** Place of its area in the plan's areas. */
  readonly area: number
  /** Place of the bend whose band it is; -1 for a piece that stays plane. */
  readonly bend: number
  readonly neighbours: readonly { readonly piece: number; readonly edges: readonly LineOrArc[] }[]
}

export interface CutPlan {
  readonly pieces: readonly CutPiece[]
  /** Bends whose axis lies in no area, and those whose band overlaps that of another. */
  readonly lost: readonly number[]
  readonly overlapping: readonly number[]
}

/** Cuts a part along its dividing lines and the borders of its bends' bands. */
export function cutPlan(plan: Plan, part: Region, lines: readonly BandLine[]): CutPlan {
  const { areas } = areasOf(plan)
  const dividing = plan.dividingLines.map(({ nodes }) => pathInNm(nodes))
  const known = [...dividing.flatMap(edgesOfPath), ...part.outer, ...part.holes.flat()]
  const borders: Path[] = []
  const bands = lines.map((line): Region | null => {
    for (const { region } of areas) {
      const piece = findBandPiece(region, line)
      if (piece === null) continue
      borders.push(...listBandBorders(piece, line, known))
      return piece
    }
    return null
  })
  const overlapping = new Set<number>()
  const cuts = splitByLines(part, [...dividing, ...borders])
  const pieces = cuts.pieces.map(({ region, neighbours }): CutPiece => {
    const inner = findInnerPoint(region) ?? [0, 0]
    const here = bands.flatMap((band, bend) =>
      band !== null && locateInRegion(band, inner) === 'inside' ? [bend] : [],
    )
    for (const bend of here.slice(1)) overlapping.add(bend)
    return {
      region,
      area: areas.findIndex((area) => locateInRegion(area.region, inner) === 'inside'),
      bend: here[0] ?? -1,
      neighbours,
    }
  })
  return { pieces, lost: bands.flatMap((band, bend) => (band === null ? [bend] : [])), overlapping: [...overlapping] }
}
