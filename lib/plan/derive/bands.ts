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

/**
 * A bend line with all that follows from where it lies. A line that runs over a window, or over several arms, makes a band on each strip of the part
 * that it crosses, each with an entry of its own under the line's id.
 */
export interface BandMeasure {
  /** Of the line, with a number from the second strip on. */
  readonly id: string
  readonly lineId: string
  readonly bendId: string
  /** Place in the list of areas; null where its middle lies in none. */
  readonly area: number | null
  readonly isInOwnZone: boolean
  /** Of the area that the axis crosses, through the band's middle. */
  readonly axisLengthMm: number | null
  /** The line as drawn begins and ends on an edge of the part, cut-outs included, within JOINED_MM. */
  readonly reachesEdges: boolean
  /** The strip of the part that the axis crosses here is longer than its area: the axis runs on over a border into another area. */
  readonly isOverBorder: boolean
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
const JOINED_NM = JOINED_MM * NM_PER_MM
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
  const bands = plan.bendLines.flatMap((line): BandMeasure[] => {
    const axis = { from: toNm(line.fromMm), to: toNm(line.toMm) }
    const lengthNm = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
    const along = [(axis.to[0] - axis.from[0]) / lengthNm, (axis.to[1] - axis.from[1]) / lengthNm] as const
    const middle = between(axis.from, axis.to)
    const strips = part === null ? [] : stripsOf(part, axis, along)
    const reachesEdges = [axis.from, axis.to].every((end) => strips.some((strip) => gapTo(strip, end) <= JOINED_NM))
    const isInArea = areas.some(({ region }) => locateInRegion(region, middle) === 'inside')
    // One strip: the middle of what is drawn, where that lies on the part.
    const middles =
      strips.length > 1
        ? strips.map(({ from, to }) => between(from, to))
        : [isInArea || strips[0] === undefined ? middle : between(strips[0].from, strips[0].to)]
    return middles.map((own, at) => ({
      ...measure(line, axis, along, own, reachesEdges),
      id: at === 0 ? line.id : `${line.id} ${at + 1}`,
    }))
  })
  function measure(
    line: Plan['bendLines'][number],
    axis: { readonly from: PointNm; readonly to: PointNm },
    along: readonly [number, number],
    middle: PointNm,
    reachesEdges: boolean,
  ): Omit<BandMeasure, 'id'> {
    const at = areas.findIndex(({ region }) => locateInRegion(region, middle) === 'inside')
    const area = areas[at]
    const axisDeg = toHalfTurn((Math.atan2(along[1], along[0]) * 180) / Math.PI)
    const widthMm = facts.bandWidthsMm.get(line.bendId) ?? null
    const found =
      part === null || area === undefined || widthMm === null
        ? null
        : findBand(part, area, axis, middle, (widthMm * NM_PER_MM) / 2)
    const chord = area === undefined ? null : chordThrough(area.region, axis.from, along, middle)
    const strip = part === null ? null : chordThrough(part, axis.from, along, middle)
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
      axisLengthMm: chord === null ? null : lengthOf(chord) / NM_PER_MM,
      reachesEdges,
      isOverBorder: chord !== null && strip !== null && lengthOf(strip) - lengthOf(chord) > JOINED_NM,
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
  }
  return bands.map((band, at) => ({
    ...band,
    meets: bands
      .slice(0, at)
      .filter(
        ({ lineId, region }) =>
          lineId !== band.lineId &&
          region !== null &&
          band.region !== null &&
          distanceBetweenRegions(region, band.region).distanceNm === 0,
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

/** A straight way through a region, from edge to edge. */
interface Chord {
  readonly from: PointNm
  readonly to: PointNm
}

const between = (a: PointNm, b: PointNm): PointNm => [Math.round((a[0] + b[0]) / 2), Math.round((a[1] + b[1]) / 2)]

const distance = (a: PointNm, b: PointNm) => Math.hypot(a[0] - b[0], a[1] - b[1])

const lengthOf = ({ from, to }: Chord) => distance(from, to)

const gapTo = ({ from, to }: Chord, point: PointNm) => Math.min(distance(from, point), distance(to, point))

const knownChords = new WeakMap<Region, Map<string, readonly Chord[]>>()

/** A chord does not hang on the bend's radius: remedies try many on one plan. */
function chordsOnce(region: Region, through: PointNm, along: readonly [number, number]): readonly Chord[] {
  const known = knownChords.get(region) ?? new Map<string, readonly Chord[]>()
  knownChords.set(region, known)
  const key = `${through}|${along}`
  const found = known.get(key)
  if (found !== undefined) return found
  const chords = chordsAlong(region, through, along)
  known.set(key, chords)
  return chords
}

/** The chord that a point lies on. */
function chordThrough(region: Region, start: PointNm, along: readonly [number, number], middle: PointNm): Chord | null {
  return chordsOnce(region, start, along).find(({ from, to }) => isBetween(from, to, middle)) ?? null
}

/** Strips of the part that an axis crosses between its ends; what it only touches within JOINED_MM is none. */
function stripsOf(part: Region, axis: Chord, along: readonly [number, number]): Chord[] {
  const at = ([x, y]: PointNm) => (x - axis.from[0]) * along[0] + (y - axis.from[1]) * along[1]
  const endNm = at(axis.to)
  return chordsOnce(part, axis.from, along)
    .map(({ from, to }) => (at(from) <= at(to) ? { from, to } : { from: to, to: from }))
    .filter(({ from, to }) => Math.min(endNm, at(to)) - Math.max(0, at(from)) > JOINED_NM)
    .toSorted((one, other) => at(one.from) - at(other.from))
}

/** All chords of a region on a line through a point. */
function chordsAlong(region: Region, through: PointNm, along: readonly [number, number]): Chord[] {
  const { low, high } = extentAlong(edgesOfRegion(region), along)
  const level = through[0] * along[0] + through[1] * along[1]
  const at = (s: number): PointNm => [
    Math.round(through[0] + (s - level) * along[0]),
    Math.round(through[1] + (s - level) * along[1]),
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
  const chords = cut.pieces.flatMap(({ neighbours }) =>
    neighbours.flatMap(({ edges }) => edges.map(({ from, to }): Chord => ({ from, to }))),
  )
  // Each is the border of the pieces on both its sides.
  const key = ({ from, to }: Chord) => [String(from), String(to)].toSorted().join(' ')
  return [...new Map(chords.map((chord) => [key(chord), chord])).values()]
}

function isBetween(from: PointNm, to: PointNm, [x, y]: PointNm): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const share = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)
  return share >= 0 && share <= 1
}
