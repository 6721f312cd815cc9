import {
  crossEdges,
  distanceBetweenEdgeSets,
  edgesOfPath,
  edgesOfRegion,
  type LineOrArc,
  locateInRegion,
  pointAt,
  type Region,
  roundPoint,
} from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { pathInNm } from '../document/to-geometry'
import { areasOf } from '../topology/areas'
import { acute, type BandMeasure } from './bands'
import type { PlanFacts } from './facts'

/** How the drawn routes of a conductor cross a band. */
export interface CrossingMeasure {
  readonly conductorId: string
  readonly bendId: string
  /** The least of all its stretches in the band; 90 is square to the axis. */
  readonly angleToAxisDeg: number
  readonly widthChangesInside: boolean | null
  readonly directionChangesInside: boolean
}

/** Less than this is a common edge, not a common strip. */
const LEAST_SHARED_MM = 1e-6

/** Two conductors on neighbouring layers that lie over each other in a band. */
export interface StackedMeasure {
  readonly bendId: string
  readonly conductorIds: readonly [string, string]
  /** Of the narrower one's width, where most of it does. */
  readonly shareFraction: number
  /** Across the band: how far they run over each other. */
  readonly lengthMm: number
}

/** How much of a bend's band the drawn routes of one layer cover. */
export interface RouteShareMeasure {
  readonly bendId: string
  readonly layerId: string
  /** Of the fullest of the bend's bands, 0 to 1. Routes whose width nobody knows add nothing. */
  readonly shareFraction: number
  readonly conductorIds: readonly string[]
}

export interface RouteMeasures {
  readonly shares: readonly RouteShareMeasure[]
  readonly crossings: readonly CrossingMeasure[]
  readonly stacked: readonly StackedMeasure[]
  /** Least distance from a route's edge to the outline, cut-outs and slits; null where no route with a width is drawn. */
  readonly copperToOutlineMm: number | null
  /** Conductors with a route that leaves the part. */
  readonly leavingIds: readonly string[]
}

interface Route {
  readonly conductorId: string
  readonly layerId: string | null
  readonly widthMm: number | null
  readonly edges: readonly LineOrArc[]
}

/** Turns of a route below this are drawn straight. Our choice. */
const STRAIGHT_DEG = 0.5

export function measureRoutes(plan: Plan, facts: PlanFacts, bands: readonly BandMeasure[]): RouteMeasures {
  const routes = plan.routes.map(({ conductorId, layerId, widthMm, nodes }): Route => {
    const own = facts.conductors.get(conductorId)
    return {
      conductorId,
      layerId: layerId ?? own?.layerId ?? null,
      widthMm: widthMm ?? own?.widthMm ?? null,
      edges: edgesOfPath(pathInNm(nodes)),
    }
  })
  const passes = bands.flatMap((band) =>
    band.region === null ? [] : routes.flatMap((route) => passOf(route, band, band.region as Region)),
  )
  const { part } = areasOf(plan)
  const wide = routes.filter(({ widthMm }) => widthMm !== null)
  const gaps =
    part === null
      ? []
      : wide.map(
          ({ edges, widthMm }) =>
            (distanceBetweenEdgeSets(edges, edgesOfRegion(part))?.distanceNm ?? 0) / NM_PER_MM - (widthMm ?? 0) / 2,
        )
  return {
    crossings: mergeCrossings(passes),
    shares: findShares(passes),
    stacked: findStacked(passes, facts.conductorLayerIds),
    copperToOutlineMm: gaps.length === 0 ? null : Math.max(0, Math.min(...gaps)),
    leavingIds: [
      ...new Set(
        routes.flatMap(({ conductorId, edges }) =>
          part !== null &&
          edges.some(({ from, to }) => [from, to].some((end) => locateInRegion(part, end) === 'outside'))
            ? [conductorId]
            : [],
        ),
      ),
    ],
  }
}

/** A route's way through one band. */
interface Pass {
  readonly route: Route
  readonly band: BandMeasure
  readonly angleDeg: number
  readonly turns: boolean
  /** Along the route, within the band. */
  readonly lengthMm: number
  /** Where it lies along the axis, in mm: middle, and how much of the axis its width takes. */
  readonly fromMm: number
  readonly toMm: number
  /** Where it lies across the axis, in mm, within the band. */
  readonly acrossFromMm: number
  readonly acrossToMm: number
}

function passOf(route: Route, band: BandMeasure, region: Region): Pass[] {
  const inside = route.edges.flatMap((edge) => partsInside(edge, region))
  if (inside.length === 0) return []
  const angles = inside.map(({ deg }) => acute(deg - band.axisDeg))
  const [first] = inside
  const turns = inside.some(({ isArc, deg }) => isArc || acute(deg - (first?.deg ?? 0)) > STRAIGHT_DEG)
  const rad = (band.axisDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)]
  const along = inside.flatMap(({ ends }) => ends.map(([x, y]) => (x * cos + y * sin) / NM_PER_MM))
  const across = inside.flatMap(({ ends }) => ends.map(([x, y]) => (y * cos - x * sin) / NM_PER_MM))
  const angleDeg = Math.min(...angles)
  const half = (route.widthMm ?? 0) / 2 / Math.max(Math.sin((angleDeg * Math.PI) / 180), 1e-6)
  const lengthMm = inside.reduce((sum, { ends: [a, b] }) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0) / NM_PER_MM
  return [
    {
      route,
      band,
      angleDeg,
      turns,
      lengthMm,
      fromMm: Math.min(...along) - half,
      toMm: Math.max(...along) + half,
      acrossFromMm: Math.min(...across),
      acrossToMm: Math.max(...across),
    },
  ]
}

/** Stretches of an edge within a region. */
interface Stretch {
  readonly deg: number
  readonly isArc: boolean
  readonly ends: readonly [readonly [number, number], readonly [number, number]]
}

function partsInside(edge: LineOrArc, region: Region): Stretch[] {
  const shares = [
    0,
    1,
    ...edgesOfRegion(region).flatMap((border) => crossEdges(edge, border).map(({ onFirst }) => onFirst)),
  ].sort((a, b) => a - b)
  const parts: Stretch[] = []
  for (let at = 0; at + 1 < shares.length; at += 1) {
    const [low, high] = [shares[at] ?? 0, shares[at + 1] ?? 0]
    if (high - low < 1e-9 || locateInRegion(region, roundPoint(pointAt(edge, (low + high) / 2))) !== 'inside') continue
    const [from, to] = [pointAt(edge, low), pointAt(edge, high)]
    parts.push({
      deg: (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI,
      isArc: edge.kind === 'arc',
      ends: [from, to],
    })
  }
  return parts
}

function mergeCrossings(passes: readonly Pass[]): CrossingMeasure[] {
  const byPair = new Map<string, Pass[]>()
  for (const pass of passes) {
    const key = `${pass.route.conductorId}|${pass.band.bendId}`
    byPair.set(key, [...(byPair.get(key) ?? []), pass])
  }
  return [...byPair.values()].flatMap((own): CrossingMeasure[] => {
    const [first] = own
    if (first === undefined) return []
    const widths = new Set(own.map(({ route }) => route.widthMm))
    return [
      {
        conductorId: first.route.conductorId,
        bendId: first.band.bendId,
        angleToAxisDeg: Math.min(...own.map(({ angleDeg }) => angleDeg)),
        widthChangesInside: widths.has(null) && widths.size > 1 ? null : widths.size > 1,
        directionChangesInside: own.some(({ turns }) => turns),
      },
    ]
  })
}

/**
 * Area of the routes over that of the band. Where routes lie over each other, what they take of the axis together is less, and counts: a share is
 * never more than the routes show.
 */
function findShares(passes: readonly Pass[]): RouteShareMeasure[] {
  const byBand = new Map<string, Pass[]>()
  for (const pass of passes) {
    const { layerId, widthMm } = pass.route
    if (layerId === null || widthMm === null) continue
    const key = `${pass.band.id}|${layerId}`
    byBand.set(key, [...(byBand.get(key) ?? []), pass])
  }
  const fullest = new Map<string, RouteShareMeasure>()
  for (const own of byBand.values()) {
    const [first] = own
    const { region = null, bendId = '', axisLengthMm = null } = first?.band ?? {}
    const layerId = first?.route.layerId ?? null
    if (region === null || layerId === null || axisLengthMm === null || axisLengthMm === 0) continue
    const copperMm2 = own.reduce((sum, { route, lengthMm }) => sum + lengthMm * (route.widthMm ?? 0), 0)
    const byArea = copperMm2 / (region.areaNm2 / NM_PER_MM ** 2)
    const shareFraction = Math.min(1, byArea, lengthTogether(own) / axisLengthMm)
    const key = `${bendId}|${layerId}`
    if (shareFraction <= (fullest.get(key)?.shareFraction ?? -1)) continue
    const conductorIds = [...new Set(own.map(({ route }) => route.conductorId))]
    fullest.set(key, { bendId, layerId, shareFraction, conductorIds })
  }
  return [...fullest.values()]
}

/** What the routes take of the axis, places that several take counted once, in mm. */
function lengthTogether(passes: readonly Pass[]): number {
  let [sumMm, endMm] = [0, Number.NEGATIVE_INFINITY]
  for (const { fromMm, toMm } of passes.toSorted((one, other) => one.fromMm - other.fromMm)) {
    sumMm += Math.max(0, toMm - Math.max(fromMm, endMm))
    endMm = Math.max(endMm, toMm)
  }
  return sumMm
}

function findStacked(passes: readonly Pass[], layerIds: readonly string[]): StackedMeasure[] {
  const levelOf = ({ route }: Pass) => (route.layerId === null ? -1 : layerIds.indexOf(route.layerId))
  // A conductor may be drawn in pieces, as where its width changes: what two of them share in a bend is one finding.
  const found = new Map<string, StackedMeasure>()
  for (const [at, one] of passes.entries()) {
    for (const other of passes.slice(at + 1)) {
      if (one.band.lineId !== other.band.lineId || Math.abs(levelOf(one) - levelOf(other)) !== 1) continue
      if (levelOf(one) < 0 || levelOf(other) < 0) continue
      const sharedMm = Math.min(one.toMm, other.toMm) - Math.max(one.fromMm, other.fromMm)
      const narrowMm = Math.min(one.toMm - one.fromMm, other.toMm - other.fromMm)
      const lengthMm = Math.min(one.acrossToMm, other.acrossToMm) - Math.max(one.acrossFromMm, other.acrossFromMm)
      if (sharedMm <= LEAST_SHARED_MM || narrowMm <= 0 || lengthMm <= LEAST_SHARED_MM) continue
      const { bendId } = one.band
      const conductorIds = [one.route.conductorId, other.route.conductorId] as const
      const key = [bendId, ...conductorIds.toSorted()].join(' ')
      const known = found.get(key)
      found.set(key, {
        bendId,
        conductorIds: known?.conductorIds ?? conductorIds,
        shareFraction: Math.max(known?.shareFraction ?? 0, Math.min(1, sharedMm / narrowMm)),
        lengthMm: (known?.lengthMm ?? 0) + lengthMm,
      })
    }
  }
  return [...found.values()]
}
