import { ELASTICA_FACTOR } from '../../bending'
import type { Bend } from '../../design'
import { roundTo } from '../../numerics'
import type { LeafResult } from '../../results'
import type { BendAssessment } from '../assess'
import type { Subject } from '../subject'
import { editArc } from './room'

/** A whole number of steps must not be lost to its last binary digit. */
const ROUNDING_STEPS = 1e-9
/** The schema's largest radius. */
const MOST_RADIUS_MM = 1000
/** The first estimate is right to a step or two; past that the verdict does not hang on the radius. */
const MOST_STEPS = 8
/** What copper past yield says of a larger radius is too much, and less so where it yields less: each estimate is made at the last one. */
const MOST_ESTIMATES = 4

/** A radius at which the bend meets, with the design that has it. */
export interface MeetingRadius {
  readonly insideRadiusMm: number
  readonly after: BendAssessment
}

interface DrawnRadius {
  readonly radiusMm: number
  readonly stepMm: number
}

/** Steps in which a radius is put on a drawing: tenths below 5 mm, halves below 20 mm, whole mm above. */
function getStepMm(radiusMm: number): number {
  return radiusMm < 5 ? 0.1 : radiusMm < 20 ? 0.5 : 1
}

function roundUpRadiusMm(radiusMm: number): DrawnRadius {
  const stepMm = getStepMm(radiusMm)
  // A radius that is a step already must not be rounded up by its last binary digit.
  return { radiusMm: roundTo(Math.ceil(radiusMm / stepMm - ROUNDING_STEPS) * stepMm, 1), stepMm }
}

export function roundDownRadiusMm(radiusMm: number): number {
  const stepMm = getStepMm(radiusMm)
  return roundTo(Math.floor(radiusMm / stepMm + ROUNDING_STEPS) * stepMm, 1)
}

/** The faces' gap is put on a drawing in these steps, mm. */
const GAP_STEP_MM = 0.1
/** Twice the elastica's factor: gap of the neutral axes over radius of the tip. */
const GAP_OVER_TIP = 2 * ELASTICA_FACTOR
/** The tip is known within 2 %; a little more, so that the radius with its tolerance is surely no larger than the tip's. */
const TIP_ROOM = 1.021

/** A bend at another radius. Two faces that hold it are set apart so far that the tip of the fold has that radius. */
export function withRadius(bend: Bend, insideRadiusMm: number, leaf: LeafResult | undefined): Bend {
  const { radiusHeldBy, faceGapMm, radiusToleranceMm } = bend
  if (radiusHeldBy !== 'between-faces' || faceGapMm === null || leaf === undefined) return { ...bend, insideRadiusMm }
  const axisMm = leaf.neutralAxisDepthUm / 1000
  const outsideMm = leaf.thicknessUm / 1000 - axisMm
  const neededMm = GAP_OVER_TIP * ((insideRadiusMm - radiusToleranceMm) * TIP_ROOM + axisMm) + 2 * outsideMm
  const gapMm = roundTo(Math.ceil(neededMm / GAP_STEP_MM - ROUNDING_STEPS) * GAP_STEP_MM, 1)
  return { ...bend, insideRadiusMm, faceGapMm: Math.max(gapMm, faceGapMm) }
}

/** `, faces 3 mm to 8.3 mm apart`; empty where the gap stays. */
export function describeGap(before: Bend, after: Bend | undefined): string {
  return after === undefined || after.faceGapMm === before.faceGapMm
    ? ''
    : `, faces ${before.faceGapMm} mm to ${after.faceGapMm} mm apart`
}

/** Families share what one of them found: a subject is looked at once. */
const FOUND = new WeakMap<Subject, MeetingRadius | null>()

/**
 * The radius at which the verdict holds at the worst corner of tolerances and constants, rounded up to one that would be drawn.
 *
 * @returns null where the bend meets as it is, or no radius makes it meet
 */
export function findRadiusThatMeets(subject: Subject): MeetingRadius | null {
  const known = FOUND.get(subject)
  if (known !== undefined) return known
  const found = search(subject)
  FOUND.set(subject, found)
  return found
}

function search({ design, bend, assessment: { state, result }, assess }: Subject): MeetingRadius | null {
  // Beside a pull or a twist no minimum radius is worked out: the search begins at the bend's own.
  const fromMm = state.minRadiusMm ?? (hasLoad(bend) ? bend.insideRadiusMm : null)
  if (state.verdict === 'meets' || fromMm === null || state.allowablePct === null) return null
  const leaf = result.leaves[0]
  const nominal = roundUpRadiusMm(Math.max(fromMm, bend.insideRadiusMm))
  const assessed = new Map<number, BendAssessment | null>()
  const assessAt = (insideRadiusMm: number): BendAssessment | null => {
    const known = assessed.get(insideRadiusMm)
    if (known !== undefined) return known
    const found = assess(editArc(design, bend, withRadius(bend, insideRadiusMm, leaf)))
    assessed.set(insideRadiusMm, found)
    return found
  }
  const from = estimateRadius(nominal, bend, assessAt)
  if (from === null) return null
  let { radiusMm } = from
  for (let step = 0; step < MOST_STEPS && radiusMm <= MOST_RADIUS_MM; step += 1) {
    const after = assessAt(radiusMm)
    if (after !== null && after.state.verdict === 'meets') return { insideRadiusMm: radiusMm, after }
    radiusMm = roundTo(radiusMm + from.stepMm, 1)
  }
  return null
}

const hasLoad = ({ pullN, twistDeg }: Bend): boolean => (pullN ?? 0) > 0 || (twistDeg ?? 0) > 0

/** Radius at which the worst corner should just hold: strain falls with the radius of the axis while nothing yields. */
function estimateRadius(
  nominal: DrawnRadius,
  { radiusToleranceMm }: Bend,
  assessAt: (insideRadiusMm: number) => BendAssessment | null,
): DrawnRadius | null {
  let found = nominal
  for (let round = 0; round < MOST_ESTIMATES; round += 1) {
    const at = assessAt(found.radiusMm)
    if (at === null || at.state.marginFraction === null) return null
    if (round === 0 && at.state.verdict === 'meets') return nominal
    const axisMm = Math.min(...at.result.leaves.map((leaf) => leaf.formedAxisDepthUm)) / 1000
    const tightestMm = found.radiusMm - radiusToleranceMm + axisMm
    const estimateMm = (1 - at.state.marginFraction) * tightestMm - axisMm + radiusToleranceMm
    const next = roundUpRadiusMm(Math.min(MOST_RADIUS_MM, Math.max(estimateMm, nominal.radiusMm)))
    if (next.radiusMm === found.radiusMm) break
    found = next
  }
  return found
}
