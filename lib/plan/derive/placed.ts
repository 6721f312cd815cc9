import {
  distanceBetweenEdgeSets,
  distanceBetweenRegions,
  edgesOfLoop,
  edgesOfRegion,
  locateInRegion,
  makeCheckedRegion,
  nearestOnEdge,
  type PointNm,
  type Region,
} from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { pathInNm, toNm } from '../document/to-geometry'
import { areasOf } from '../topology/areas'
import type { BandMeasure } from './bands'
import type { PlanFacts } from './facts'

/** What lies on the part, by what stands near it. Distances are 0 where it lies in, or across, the other. */
export interface PlacedMeasure {
  readonly id: string
  readonly nearestBend: { readonly bendId: string; readonly distanceMm: number } | null
  /** To the nearest border between an area that lies flat and a flexible one; null where there is none. */
  readonly transitionMm: number | null
  /** To the nearest edge of a stiffener; null where none is drawn. */
  readonly stiffenerEdgeMm: number | null
  /** Zones that it lies in, wholly or partly. */
  readonly zoneIds: readonly string[]
  readonly isOnStiffener: boolean
  /** Wholly within the outline and off the cut-outs. */
  readonly isOnPart: boolean
}

export interface PlacedMeasures {
  readonly holes: readonly PlacedMeasure[]
  readonly components: readonly PlacedMeasure[]
  readonly coverlayOpenings: readonly PlacedMeasure[]
  readonly stiffeners: readonly PlacedMeasure[]
}

export const regionOf = (nodes: Plan['stiffeners'][number]['nodes']): Region =>
  makeCheckedRegion(edgesOfLoop(pathInNm(nodes)), [])

export function measurePlaced(plan: Plan, facts: PlanFacts, bands: readonly BandMeasure[]): PlacedMeasures {
  const stiffeners = plan.stiffeners.map(({ nodes }) => regionOf(nodes))
  const measure = (id: string, shapes: readonly Shape[], withStiffeners = true): PlacedMeasure =>
    measureShapes(id, shapes, { plan, facts, bands, stiffeners: withStiffeners ? stiffeners : [] })
  const group = <E>(
    list: readonly E[],
    idOf: (entry: E) => string,
    shapesOf: (entry: E) => readonly Shape[],
    withStiffeners = true,
  ) =>
    [...new Set(list.map(idOf))].map((id) =>
      measure(id, list.filter((entry) => idOf(entry) === id).flatMap(shapesOf), withStiffeners),
    )
  const asRegions = ({ nodes }: { readonly nodes: Plan['stiffeners'][number]['nodes'] }): Shape[] => [regionOf(nodes)]
  // A hole of unknown diameter can be told to be too near, but not to be far enough: it is left to what was stated.
  const holes = plan.holes.filter(({ holeId }) => typeof facts.drillsMm.get(holeId) === 'number')
  return {
    holes: group(
      holes,
      ({ holeId }) => holeId,
      (hole) => discsOf(hole, facts.drillsMm.get(hole.holeId) ?? 0),
    ),
    components: group(plan.components, ({ componentId }) => componentId, asRegions),
    coverlayOpenings: group(plan.coverlayOpenings, ({ openingId }) => openingId, asRegions),
    stiffeners: group(plan.stiffeners, ({ stiffenerId }) => stiffenerId, asRegions, false),
  }
}

interface Disc {
  readonly centre: PointNm
  readonly radiusNm: number
}
type Shape = Region | Disc

/** Every hole of a pattern. */
export function discsOf(
  { atMm, columns, rows, columnStepMm, rowStepMm }: Plan['holes'][number],
  drillMm: number,
): Disc[] {
  const [at, column, row] = [toNm(atMm), toNm(columnStepMm ?? [0, 0]), toNm(rowStepMm ?? [0, 0])]
  return Array.from({ length: columns * rows }, (_, index) => {
    const [i, j] = [index % columns, Math.floor(index / columns)]
    return {
      centre: [at[0] + i * column[0] + j * row[0], at[1] + i * column[1] + j * row[1]],
      radiusNm: (drillMm * NM_PER_MM) / 2,
    }
  })
}

const isDisc = (shape: Shape): shape is Disc => 'centre' in shape

/** Nearest point of a region's border to a place; in nm. */
function toBorder(region: Region, point: PointNm): number {
  return Math.min(...edgesOfRegion(region).map((edge) => nearestOnEdge(edge, point).distanceNm))
}

export function distanceOf(shape: Shape, region: Region): number {
  if (!isDisc(shape)) return distanceBetweenRegions(shape, region).distanceNm
  if (locateInRegion(region, shape.centre) !== 'outside') return 0
  return Math.max(0, toBorder(region, shape.centre) - shape.radiusNm)
}

interface Surroundings {
  readonly plan: Plan
  readonly facts: PlanFacts
  readonly bands: readonly BandMeasure[]
  readonly stiffeners: readonly Region[]
}

function measureShapes(
  id: string,
  shapes: readonly Shape[],
  { plan, facts, bands, stiffeners }: Surroundings,
): PlacedMeasure {
  const { areas, part } = areasOf(plan)
  const isFlat = (zoneId: string | null) => zoneId !== null && facts.flatZoneIds.has(zoneId)
  const least = (distances: readonly number[]) => (distances.length === 0 ? null : Math.min(...distances) / NM_PER_MM)
  // A band whose place or width is not known may be the nearest: then none is called the nearest.
  const areBandsKnown = bands.length > 0 && bands.every(({ region }) => region !== null)
  const nearest = areBandsKnown
    ? bands
        .flatMap(({ bendId, region }) =>
          region === null
            ? []
            : [{ bendId, distanceMm: Math.min(...shapes.map((shape) => distanceOf(shape, region))) / NM_PER_MM }],
        )
        .reduce<PlacedMeasure['nearestBend']>(
          (best, found) => (best === null || found.distanceMm < best.distanceMm ? found : best),
          null,
        )
    : null
  const transitions = areas.flatMap(({ zoneId, borders }) =>
    isFlat(zoneId)
      ? borders.filter(({ area }) => !isFlat(areas[area]?.zoneId ?? null)).flatMap(({ edges }) => edges)
      : [],
  )
  const toEdges =
    (edges: typeof transitions) =>
    (shape: Shape): number =>
      isDisc(shape)
        ? Math.max(0, Math.min(...edges.map((edge) => nearestOnEdge(edge, shape.centre).distanceNm)) - shape.radiusNm)
        : (distanceBetweenEdgeSets(edgesOfRegion(shape), edges)?.distanceNm ?? Number.POSITIVE_INFINITY)
  return {
    id,
    nearestBend: nearest,
    transitionMm:
      transitions.length === 0 || areas.some(({ zoneId }) => zoneId === null)
        ? null
        : least(shapes.map(toEdges(transitions))),
    stiffenerEdgeMm:
      stiffeners.length === 0
        ? null
        : least(shapes.flatMap((shape) => stiffeners.map((region) => toEdges(edgesOfRegion(region))(shape)))),
    zoneIds: [
      ...new Set(
        areas.flatMap(({ zoneId, region }) =>
          zoneId !== null && shapes.some((shape) => overlaps(shape, region)) ? [zoneId] : [],
        ),
      ),
    ],
    isOnPart: part === null || shapes.every((shape) => isWithin(shape, part)),
    isOnStiffener: shapes.every((shape) => stiffeners.some((region) => isWithin(shape, region))),
  }
}

function overlaps(shape: Shape, region: Region): boolean {
  if (isDisc(shape)) return locateInRegion(region, shape.centre) === 'inside'
  return (
    distanceBetweenRegions(shape, region).distanceNm === 0 &&
    shape.outer.some(({ from }) => locateInRegion(region, from) === 'inside')
  )
}

function isWithin(shape: Shape, region: Region): boolean {
  if (isDisc(shape))
    return locateInRegion(region, shape.centre) === 'inside' && toBorder(region, shape.centre) >= shape.radiusNm
  return shape.outer.every(({ from }) => locateInRegion(region, from) !== 'outside')
}
