import {
  clipToBand,
  distanceBetweenRegions,
  edgesOfRegion,
  extentAlong,
  locateInRegion,
  type PointNm,
  type Region,
  splitByLines,
} from '@/lib/geometry'
import type { Plan } from '../document/plan-schema'
import { NM_PER_MM } from '../document/primitives'
import { toNm } from '../document/to-geometry'
import { areasOf, type PlanArea } from '../topology/areas'
import type { PlanFacts } from './facts'

/** A bend line with all that follows from where it lies. */
export interface BandMeasure {
  readonly lineId: string
  readonly bendId: string
  /** Place in the list of areas; null where its middle lies in none. */
  readonly area: number | null
  readonly isInOwnZone: boolean
  /** Of the part that the axis crosses, through its middle. */
  readonly axisLengthMm: number | null
  /** The line as drawn ends on the outline at both ends, within JOINED_MM. */
  readonly reachesEdges: boolean
  /** Angle between the axis and x, 0 to 180, and to the foil's rolling direction, 0 to 90. */
  readonly axisDeg: number
  readonly toRollingDeg: number | null
  /** What the bend covers; null where its width or place is not known. */
  readonly region: Region | null
  readonly widthMm: number | null
  /** By how much the band would go on where its area ends: past a border, and past the outline. */
  readonly pastBorderMm: number
  readonly pastOutlineMm: number
  /** From the band to the nearest area that lies flat, or stiffener; null where there is none. */
  readonly toFlatMm: number | null
  /** Other bend lines whose bands it meets, each named once, by the later of both. */
  readonly meets: readonly string[]
}

/** A line that ends this near to the outline ends on it. Our choice: what a hand draws. */
const JOINED_MM = 0.05
/** Less than this past a border is rounding. */
const ROUNDING_MM = 1e-5

export function measureBands(plan: Plan, facts: PlanFacts, stiffeners: readonly Region[]): BandMeasure[] {
  const { part, areas } = areasOf(plan)
  const flat = [
    ...areas.filter(({ zoneId }) => zoneId !== null && facts.flatZoneIds.has(zoneId)).map(({ region }) => region),
    ...stiffeners,
  ]
  // An area without a zone may be a rigid one: then no area is called the nearest.
  const areZonesKnown = areas.every(({ zoneId }) => zoneId !== null)
  const bands = plan.bendLines.map((line): BandMeasure => {
    const axis = { from: toNm(line.fromMm), to: toNm(line.toMm) }
    const lengthNm = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
    const along = [(axis.to[0] - axis.from[0]) / lengthNm, (axis.to[1] - axis.from[1]) / lengthNm] as const
    const middle: PointNm = [Math.round((axis.from[0] + axis.to[0]) / 2), Math.round((axis.from[1] + axis.to[1]) / 2)]
    const at = areas.findIndex(({ region }) => locateInRegion(region, middle) === 'inside')
    const area = areas[at]
    const axisDeg = toHalfTurn((Math.atan2(along[1], along[0]) * 180) / Math.PI)
    const widthMm = facts.bandWidthsMm.get(line.bendId) ?? null
    const found =
      part === null || area === undefined || widthMm === null
        ? null
        : findBand(part, area, axis, middle, (widthMm * NM_PER_MM) / 2)
    const chord = area === undefined ? null : chordOnce(area.region, axis.from, along, middle)
    const isFlat = area?.zoneId !== null && facts.flatZoneIds.has(area?.zoneId ?? '')
    const distances =
      found === null || !areZonesKnown
        ? []
        : flat.map((region) => distanceBetweenRegions(found.region, region).distanceNm)
    return {
      lineId: line.id,
      bendId: line.bendId,
      area: area === undefined ? null : at,
      isInOwnZone: area !== undefined && area.zoneId === facts.zoneOfBend.get(line.bendId),
      axisLengthMm: chord === null ? null : chord.lengthNm / NM_PER_MM,
      reachesEdges:
        chord !== null &&
        chord.startGapNm <= JOINED_MM * NM_PER_MM &&
        Math.abs(chord.lengthNm - lengthNm) <= 2 * JOINED_MM * NM_PER_MM,
      axisDeg,
      toRollingDeg: plan.rollingDirectionDeg === null ? null : acute(axisDeg - plan.rollingDirectionDeg),
      region: found?.region ?? null,
      widthMm,
      pastBorderMm: found === null || found.pastBorderNm / NM_PER_MM < ROUNDING_MM ? 0 : found.pastBorderNm / NM_PER_MM,
      pastOutlineMm:
        found === null || found.pastOutlineNm / NM_PER_MM < ROUNDING_MM ? 0 : found.pastOutlineNm / NM_PER_MM,
      toFlatMm: isFlat ? 0 : distances.length === 0 ? null : Math.min(...distances) / NM_PER_MM,
      meets: [],
    }
  })
  return bands.map((band, at) => ({
    ...band,
    meets: bands
      .slice(0, at)
      .filter(
        ({ region }) =>
          region !== null && band.region !== null && distanceBetweenRegions(region, band.region).distanceNm === 0,
      )
      .map(({ lineId }) => lineId),
  }))
}

const toHalfTurn = (deg: number): number => ((deg % 180) + 180) % 180

/** Between two lines, 0 to 90. */
export function acute(deg: number): number {
  const turned = toHalfTurn(deg)
  return Math.min(turned, 180 - turned)
}

interface FoundBand {
  readonly region: Region
  readonly pastBorderNm: number
  readonly pastOutlineNm: number
}

function findBand(
  part: Region,
  area: PlanArea,
  axis: { from: PointNm; to: PointNm },
  middle: PointNm,
  halfWidthNm: number,
): FoundBand | null {
  const band = { ...axis, halfWidthNm }
  const holding = (region: Region) =>
    clipToBand(region, band).find((piece) => locateInRegion(piece, middle) === 'inside') ?? null
  const [inArea, inPart] = [holding(area.region), holding(part)]
  if (inArea === null || inPart === null) return null
  const length = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
  const across = [-(axis.to[1] - axis.from[1]) / length, (axis.to[0] - axis.from[0]) / length] as const
  const level = middle[0] * across[0] + middle[1] * across[1]
  const reach = (region: Region) => {
    const { low, high } = extentAlong(edgesOfRegion(region), across)
    return Math.min(level - low, high - level)
  }
  const leftOut = inPart.areaNm2 - inArea.areaNm2
  // Area that the band has in the part and not in its own area, as a length along the part.
  const pastBorderNm = leftOut > inPart.areaNm2 * 1e-9 ? leftOut / Math.max(1, inPart.areaNm2 / (2 * halfWidthNm)) : 0
  return { region: inArea, pastBorderNm, pastOutlineNm: Math.max(0, halfWidthNm - reach(inPart)) }
}

type Chord = ReturnType<typeof chordThrough>

const knownChords = new WeakMap<Region, Map<string, Chord>>()

/** A chord does not hang on the bend's radius: remedies try many on one plan. */
function chordOnce(region: Region, start: PointNm, along: readonly [number, number], middle: PointNm): Chord {
  const known = knownChords.get(region) ?? new Map<string, Chord>()
  knownChords.set(region, known)
  const key = `${start}|${middle}`
  const found = known.get(key)
  if (found !== undefined) return found
  const chord = chordThrough(region, start, along, middle)
  known.set(key, chord)
  return chord
}

/** How long the area is along a line through a point, and how far the drawn start lies from its edge. */
function chordThrough(
  region: Region,
  start: PointNm,
  along: readonly [number, number],
  middle: PointNm,
): { readonly lengthNm: number; readonly startGapNm: number } | null {
  const edges = edgesOfRegion(region)
  const { low, high } = extentAlong(edges, along)
  const level = middle[0] * along[0] + middle[1] * along[1]
  const at = (s: number): PointNm => [
    Math.round(middle[0] + (s - level) * along[0]),
    Math.round(middle[1] + (s - level) * along[1]),
  ]
  const cut = splitByLines(
    region,
    [
      [
        { at: at(low - NM_PER_MM), via: null },
        { at: at(high + NM_PER_MM), via: null },
      ],
    ],
    0,
  )
  const sums = cut.pieces.flatMap(({ neighbours }) =>
    neighbours.flatMap(({ edges: shared }) =>
      shared.filter(({ from, to }) => isBetween(from, to, middle)).map(({ from, to }) => ({ from, to })),
    ),
  )
  const [chord] = sums
  if (chord === undefined) return null
  const lengthNm = Math.hypot(chord.to[0] - chord.from[0], chord.to[1] - chord.from[1])
  const gap = ([x, y]: PointNm) => Math.hypot(x - start[0], y - start[1])
  return { lengthNm, startGapNm: Math.min(gap(chord.from), gap(chord.to)) }
}

function isBetween(from: PointNm, to: PointNm, [x, y]: PointNm): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const share = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)
  return share >= 0 && share <= 1
}
