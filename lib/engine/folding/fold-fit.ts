import {
  boundOffset,
  type Envelope,
  findFlatEnd,
  foldPart,
  type Loop,
  measureEnvelope,
  measureLoop,
  type PlacedEnd,
  placeEnd,
  type Vector,
} from '@/lib/fold'
import type { Design, Plan } from '../design'
import { rememberAnswers } from '../numerics'
import type { QuantityRange } from '../results'
import { inSentence } from '../units'
import type { FoldableDesign } from './fold-design'

/** Answers that are kept: a few designs side by side. */
const MOST_KEPT = 12

const envelopeOnce = rememberAnswers(
  MOST_KEPT,
  ({
    part,
    carried,
    fixedPlateId,
  }: Pick<FoldableDesign, 'carried' | 'fixedPlateId'> & Pick<FoldableDesign['flat'], 'part'>): Envelope =>
    measureEnvelope(part, carried, foldPart(part, fixedPlateId)),
)

/** The box of the folded part, components included, along the axes of the area that stays. */
export const measureFoldedBox = ({ flat, carried, fixedPlateId }: FoldableDesign): Envelope =>
  envelopeOnce({ part: flat.part, carried, fixedPlateId })

type DrawnEnd = Plan['connectorEnds'][number]
type Target = NonNullable<DrawnEnd['target']>

/** A connector end in the folded part, its place from the top face of the area that stays. */
export type FoldedEnd =
  | {
      readonly kind: 'placed'
      readonly placed: PlacedEnd
      readonly shifts: readonly Vector[]
      /** From the top face of the area that stays, as the place; null where the end stands on that area. */
      readonly loop: Loop | null
    }
  /** Its edge borders nothing that stays plane. */
  | { readonly kind: 'in-bend' }

/**
 * Where a connector end comes to lie with every bend made, and by how much each tolerance of the design may move it: radii, places of axes, and the
 * profile at the end itself.
 */
export function placeConnectorEnd(design: Design, folding: FoldableDesign, { fromMm, toMm }: DrawnEnd): FoldedEnd {
  const { flat, fixedPlateId } = folding
  const end = findFlatEnd(flat, fromMm, toMm)
  const found = end === null ? null : placeEnd(flat.part, fixedPlateId, end)
  if (end === null || found === null) return { kind: 'in-bend' }
  const { bendPositionMm, outlineMm } = design.brief.tolerances
  const scaled = ([x, y, z]: Vector, by: number): Vector => [x * by, y * by, z * by]
  const topMm = findTopOfHeld(folding)
  const { at } = found.placed
  const loop = measureLoop(flat.part, fixedPlateId, end)
  return {
    kind: 'placed',
    loop: loop === null ? null : { ...loop, from: [loop.from[0], loop.from[1], loop.from[2] - topMm] },
    placed: { ...found.placed, at: [at[0], at[1], at[2] - topMm] },
    shifts: [
      ...found.shifts.flatMap(({ bandId, perRadiusMm, perPlaceMm }) => {
        const bend = design.bends.find(({ id }) => id === flat.bendOfBand.get(bandId))
        return [scaled(perRadiusMm, bend?.radiusToleranceMm ?? 0), scaled(perPlaceMm, bendPositionMm ?? 0)]
      }),
      scaled(found.placed.pointsTo, outlineMm ?? 0),
    ],
  }
}

/** Top face of the area that stays; of several on one plate, of the largest. */
function findTopOfHeld({ flat, fixedPlateId }: FoldableDesign): number {
  const largest = flat.pieces
    .filter(({ plateId }) => plateId === fixedPlateId)
    .reduce<FoldableDesign['flat']['pieces'][number] | null>(
      (best, piece) => (best === null || piece.region.areaNm2 > best.region.areaNm2 ? piece : best),
      null,
    )
  const solids = flat.part.plates.flatMap((plate) => plate.solids)
  return solids.find(({ id }) => id === largest?.id)?.topMm ?? 0
}

/** How far a placed end is from its target. */
export interface TargetMiss {
  readonly offsetMm: number
  readonly offsetRangeMm: QuantityRange
  /** Along the target's own direction: positive where the end reaches too far, so that film is left over; negative where it comes short. */
  readonly slackMm: number
  readonly turnDeg: number
}

/** The film between the area that stays and a target, against the way that it has to bridge. */
export interface LoopSlack {
  readonly lengthMm: number
  readonly bridgedMm: number
  /** Length less way: what sags between the two, negative where nothing could reach. */
  readonly slackMm: number
  /** Over the profile tolerance of the end. */
  readonly slackRangeMm: QuantityRange
}

/**
 * What the film has over the straight line to its target, whatever its bends: its length along the neutral surface cannot change, so below 0 it reaches at no angle.
 * Null where the end stands on the area that stays.
 *
 * Source   exact geometry: no curve is shorter than the straight line between its ends
 */
export function measureLoopSlack(
  { brief }: Design,
  { loop }: Extract<FoldedEnd, { kind: 'placed' }>,
  { atMm }: Target,
): LoopSlack | null {
  if (loop === null) return null
  const { from, lengthMm } = loop
  const bridgedMm = Math.hypot(atMm[0] - from[0], atMm[1] - from[1], atMm[2] - from[2])
  const slackMm = lengthMm - bridgedMm
  const profileMm = brief.tolerances.outlineMm ?? 0
  return { lengthMm, bridgedMm, slackMm, slackRangeMm: { low: slackMm - profileMm, high: slackMm + profileMm } }
}

/** `From the first bend on the film is 64 mm long and bridges 58 mm: 6 mm of slack, 5.9 to 6.1 mm over the profile tolerance.` */
export function describeLoopSlack({ lengthMm, bridgedMm, slackMm, slackRangeMm: { low, high } }: LoopSlack): string {
  const spread = low === high ? '' : `, ${inSentence(low)} to ${inSentence(high, 'mm')} over the profile tolerance`
  const left =
    slackMm < 0
      ? `${inSentence(-slackMm, 'mm')} is lacking, however it is bent.`
      : `${inSentence(slackMm, 'mm')} of slack${spread}.`
  return `From the first bend on the film is ${inSentence(lengthMm, 'mm')} long and bridges ${inSentence(bridgedMm, 'mm')}: ${left}`
}

export function missTarget(end: Extract<FoldedEnd, { kind: 'placed' }>, target: Target): TargetMiss {
  const { placed, shifts } = end
  const offset: Vector = [placed.at[0] - target.atMm[0], placed.at[1] - target.atMm[1], placed.at[2] - target.atMm[2]]
  const { lowMm, highMm } = boundOffset(offset, shifts)
  const along = target.pointsTo.reduce((sum, part, axis) => sum + part * (offset[axis as 0] ?? 0), 0)
  return {
    offsetMm: Math.hypot(...offset),
    offsetRangeMm: { low: lowMm, high: highMm },
    slackMm: along / Math.hypot(...target.pointsTo),
    turnDeg: Math.max(
      angleDeg(placed.pointsTo, target.pointsTo),
      target.topFaces === null ? 0 : angleDeg(placed.topFaces, target.topFaces),
    ),
  }
}

/** What sums of doubles leave of no angle at all. */
const ROUNDING_DEG = 1e-9

/** Between two directions of any size, 0 to 180: by sine and cosine, so that small angles keep their digits. */
function angleDeg(a: Vector, b: Vector): number {
  const crossed = Math.hypot(a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
  const angle = (Math.atan2(crossed, a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) * 180) / Math.PI
  return angle < ROUNDING_DEG ? 0 : angle
}
