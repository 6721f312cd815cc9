import type { CopperStack, StackedCopper } from '../copper/copper-stack'
import { NM_PER_MM } from '../limits'
import type { JoiningHole } from '../nets/connect'
import type { ArtworkSet } from '../set/read-set'
import { type Drawn, listDrawn } from './drawn'
import type { GroundBand, Rings } from './ground'
import { type DrilledPlace, groupLands } from './held-lands'
import type { OnPlanFacts } from './on-plan-facts'
import { areaOfRings, distanceToRings, isInside } from './rings'
import { nearestHoleToStiffener, nearestOverlap } from './stiffener-overlap'

type ToMm = (x: number, y: number) => [number, number]
type CoverFacts = OnPlanFacts['covers'][number]
type StiffenerFacts = OnPlanFacts['stiffeners'][number]

/** A file of a coverlay that covers more of the part than this draws the film itself, and no openings. Our choice. */
const MOST_OPEN_FRACTION = 0.5
/** What lies farther from a bend is far by any rule. */
const FAR_NM = 10_000_000

export interface CoverGround {
  /** In the file's coordinates. */
  readonly part: Rings
  readonly bands: readonly GroundBand[]
  /** Zones by their areas; rigid ones and connector ends left out where lands are held in another way. */
  readonly films: readonly { readonly zoneId: string; readonly rings: Rings }[]
  readonly toMm: ToMm
}

/** Coverlay files that draw openings: how near they come to bends, and how they hold the lands in them. A file that draws the film itself says nothing here. */
export function measureCovers(
  set: ArtworkSet,
  stack: CopperStack,
  drilled: readonly DrilledPlace[],
  ground: CoverGround,
): { covers: CoverFacts[]; openings: Drawn[] } {
  const partNm2 = areaOfRings(ground.part)
  const openings = listDrawn(set, 'coverlay').filter((drawn) => drawn.areaNm2 <= MOST_OPEN_FRACTION * partNm2)
  const covers = openings.map((drawn): CoverFacts => {
    const copper = copperUnder(stack, drawn.side)
    return {
      fileName: drawn.fileName,
      side: drawn.side,
      bands: distancesToBands(drawn, ground),
      zones: copper === null ? [] : groupLands(copper, drawn, drilled, ground.films, ground.toMm),
    }
  })
  return { covers, openings }
}

/** Stiffeners: how near their edges come to bends, and how far they reach over the ends of the coverlay. */
export function measureStiffeners(
  set: ArtworkSet,
  openings: readonly Drawn[],
  holes: readonly JoiningHole[],
  ground: CoverGround,
): StiffenerFacts[] {
  return listDrawn(set, 'stiffener').map((drawn) => {
    const overlap = nearestOverlap(drawn, openings, ground.part)
    const hole = nearestHoleToStiffener(drawn, holes, ground.part)
    return {
      fileName: drawn.fileName,
      side: drawn.side,
      bands: distancesToBands(drawn, ground),
      overlap: overlap === null ? null : { mm: overlap.nm / NM_PER_MM, atMm: ground.toMm(...overlap.at) },
      nearestHole:
        hole === null
          ? null
          : {
              mm: hole.nm / NM_PER_MM,
              atMm: ground.toMm(hole.hole.xNm, hole.hole.yNm),
              diameterMm: hole.hole.diameterNm / NM_PER_MM,
            },
    }
  })
}

/** The outermost copper of a side; null where no side is said, or the order of the layers is not known. */
function copperUnder({ layers, unorderedReason }: CopperStack, side: Drawn['side']): StackedCopper | null {
  if (unorderedReason !== null) return null
  return (side === 'top' ? layers[0] : side === 'bottom' ? layers.at(-1) : undefined) ?? null
}

/** The nearest border to each bend, 0 where one runs through it or all of it is covered. */
function distancesToBands({ islands, edges }: Drawn, { bands, toMm }: CoverGround): CoverFacts['bands'] {
  return bands.flatMap((band) => {
    const [x0 = 0, y0 = 0] = band.rings[0] ?? []
    let least = FAR_NM
    let at: readonly [number, number] | null = null
    if (
      islands.at(Math.round((band.fromNm[0] + band.toNm[0]) / 2), Math.round((band.fromNm[1] + band.toNm[1]) / 2)) !==
      null
    ) {
      least = 0
      at = [(band.fromNm[0] + band.toNm[0]) / 2, (band.fromNm[1] + band.toNm[1]) / 2]
    } else if (islands.at(Math.round(x0), Math.round(y0)) !== null) {
      least = 0
      at = [x0, y0]
    }
    for (let edge = 0; edge < edges.count && least > 0; edge += 1) {
      const [ax = 0, ay = 0, bx = 0, by = 0] = edges.ends.subarray(4 * edge, 4 * edge + 4)
      for (const [x, y] of [
        [ax, ay],
        [(ax + bx) / 2, (ay + by) / 2],
      ] as const) {
        const distance = isInside(band.rings, x, y) ? 0 : distanceToRings(band.rings, x, y)
        if (distance >= least) continue
        least = distance
        at = [x, y]
      }
    }
    // A corner of the bend may face the middle of a long border.
    for (const ring of band.rings)
      for (let corner = 0; corner + 1 < ring.length && least > 0; corner += 2) {
        const [x, y] = [ring[corner] ?? 0, ring[corner + 1] ?? 0]
        for (let edge = 0; edge < edges.count; edge += 1) {
          const distance = edges.distanceTo(edge, x, y)
          if (distance >= least) continue
          least = distance
          at = [x, y]
        }
      }
    return at === null
      ? []
      : [{ lineId: band.lineId, basis: band.basis, mm: least / NM_PER_MM, atMm: toMm(at[0], at[1]) }]
  })
}
