import type { CopperStack } from '../copper/copper-stack'
import { findSharpCorners } from '../copper/corners'
import type { CopperEdges } from '../copper/edges'
import { findNarrowPlaces, type Narrowest } from '../copper/narrow'
import { findNarrowestConductor } from '../copper/narrowest'
import { measureRing, type Ring } from '../copper/rings'
import { findLeastSpace } from '../copper/spacing'
import { NM_PER_MM } from '../limits'
import type { NetPlace } from '../nets/compare-nets'
import type { DrawnConductor } from '../nets/drawn-conductors'
import { findSetNets, listHoles } from '../nets/set-nets'
import type { ArtworkSet } from '../set/read-set'
import type { ArtworkFacts, ArtworkFileFacts } from './artwork-facts'

/** Opens and shorts that are kept; the counts say how many there are. */
const MOST_FAULTS = 20

/** Figures of each copper layer, by the file's name. */
export function measureCopper(
  set: ArtworkSet,
  { layers }: CopperStack,
): ReadonlyMap<string, NonNullable<ArtworkFileFacts['copper']>> {
  const { joining } = listHoles(set, layers.length)
  return new Map(
    layers.map((layer, at) => {
      const { fileName, areaMm2, islands, edges } = layer
      const narrowest = findNarrowestConductor(layer)
      const space = findLeastSpace(edges)
      let least: Ring | null = null
      let holeCount = 0
      for (const { xNm, yNm, diameterNm, span } of joining) {
        if (at < span[0] || at > span[1]) continue
        const ring = measureRing(islands, edges, xNm, yNm, diameterNm)
        if (ring === null) continue
        holeCount += 1
        if (least === null || ring.ringNm < least.ringNm) least = ring
      }
      return [
        fileName,
        {
          areaMm2,
          islandCount: islands.count(),
          narrowest:
            narrowest === null ? null : { mm: narrowest.widthNm / NM_PER_MM, atMm: inMm(narrowest.xNm, narrowest.yNm) },
          leastSpace: space === null ? null : { mm: space.spaceNm / NM_PER_MM, atMm: inMm(space.xNm, space.yNm) },
          leastRing:
            least === null
              ? null
              : {
                  mm: least.ringNm / NM_PER_MM,
                  atMm: inMm(least.xNm, least.yNm),
                  holeMm: least.holeNm / NM_PER_MM,
                  holeCount,
                },
          etching: etchingOf(edges),
        },
      ]
    }),
  )
}

function etchingOf(edges: CopperEdges): NonNullable<ArtworkFileFacts['copper']>['etching'] {
  const narrow = findNarrowPlaces(edges)
  if (narrow === null) return null
  const { tip, wedge } = findSharpCorners(edges)
  const corner = (found: typeof tip) => (found === null ? null : { deg: found.deg, atMm: inMm(...found.at) })
  return {
    leastCopper: widthInMm(narrow.neck),
    leastSlot: widthInMm(narrow.slot),
    sharpestTip: corner(tip),
    sharpestGap: corner(wedge),
  }
}

const inMm = (xNm: number, yNm: number): [number, number] => [xNm / NM_PER_MM, yNm / NM_PER_MM]

export const widthInMm = (found: Narrowest | null): { mm: number; atMm: [number, number] } | null =>
  found === null ? null : { mm: found.widthNm / NM_PER_MM, atMm: inMm(...found.at) }

/** Nets of the set against its copper, small enough to be kept. */
export function netsOf(set: ArtworkSet, stack: CopperStack): ArtworkFacts['nets'] {
  const nets = findSetNets(set, stack)
  if (nets === null) return null
  const place = ({ name, xNm, yNm }: NetPlace) => ({ name, atMm: inMm(xNm, yNm) })
  const count = (conductors: readonly DrawnConductor[]) => ({
    count: conductors.length,
    first: conductors.slice(0, 1).map(({ fileName, xNm, yNm }) => ({ name: fileName, atMm: inMm(xNm, yNm) })),
  })
  return {
    loose: count(nets.loose),
    platedHoleCount: nets.platedHoleCount,
    unknownHoleCount: nets.unknownHoleCount,
    unorderedReason: stack.unorderedReason,
    sources: nets.sources.map(
      ({ fileName, netCount, placeCount, onCopperCount, firstOffCopper, opens, shorts, unnamed }) => ({
        fileName,
        unnamed: count(unnamed),
        netCount,
        placeCount,
        onCopperCount,
        firstOffCopper: firstOffCopper === null ? null : { ...place(firstOffCopper), net: firstOffCopper.net },
        openCount: opens.length,
        shortCount: shorts.length,
        opens: opens.slice(0, MOST_FAULTS).map(({ net, parts, places }) => ({ net, parts, places: places.map(place) })),
        shorts: shorts
          .slice(0, MOST_FAULTS)
          .map(({ nets: names, places }) => ({ nets: names.slice(0, 6), places: places.map(place) })),
      }),
    ),
  }
}
