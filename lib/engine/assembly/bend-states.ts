import { type FlatterEnd, flatterRadiusMm } from '../bending'
import { BEND_FIELDS, type Bend, getChoiceWord, type Zone } from '../design'
import type { ModelLimit } from '../results'
import { inSentence } from '../units'

const RAD_PER_DEG = Math.PI / 180

/** What a bend states beside one radius that it takes from flat. */
export interface StatedStates {
  /** Null where it flexes from flat, or is formed. */
  readonly from: FlatterEnd | null
  readonly foldedToRadiusMm: number | null
  /** 0 where there is none. */
  readonly pullN: number
  readonly twistRatePerMm: number
  /** What contradicts, or is not complete. */
  readonly limits: readonly ModelLimit[]
}

/** Whether anything but one radius from flat is stated. */
export function isMoreThanOneState({ from, foldedToRadiusMm, pullN, twistRatePerMm, limits }: StatedStates): boolean {
  return from !== null || foldedToRadiusMm !== null || pullN > 0 || twistRatePerMm > 0 || limits.length > 0
}

/** Whether something loads the bend beside bending. */
export const isLoaded = ({ pullN, twistRatePerMm }: StatedStates): boolean => pullN > 0 || twistRatePerMm > 0

/** States and loads of a bend. Where they contradict each other, none of them is computed with, and the limit says why. */
export function readStates(bend: Bend): StatedStates {
  const limits = [...listContradictions(bend), ...listIncomplete(bend)]
  const { foldedToRadiusMm, pullN, twistDeg, twistLengthMm } = bend
  return {
    from: limits.length > 0 ? null : readFlatterEnd(bend),
    foldedToRadiusMm,
    pullN: pullN ?? 0,
    twistRatePerMm:
      twistDeg === null || twistDeg === 0 || twistLengthMm === null ? 0 : (twistDeg * RAD_PER_DEG) / twistLengthMm,
    limits,
  }
}

function readFlatterEnd({ flexesFromRadiusMm, flexesFromAngleDeg, angleDeg }: Bend): FlatterEnd | null {
  if (flexesFromRadiusMm !== null) return { insideRadiusMm: flexesFromRadiusMm }
  return flexesFromAngleDeg === null || flexesFromAngleDeg === 0 ? null : { angleShare: flexesFromAngleDeg / angleDeg }
}

const contradiction = (because: string, decidedBy: string): ModelLimit => ({ kind: 'states', because, decidedBy })

function listContradictions({
  use,
  motion,
  insideRadiusMm,
  angleDeg,
  flexesFromRadiusMm: fromMm,
  flexesFromAngleDeg: fromDeg,
}: Bend): ModelLimit[] {
  if (fromMm === null && fromDeg === null) return []
  const found: ModelLimit[] = []
  if (fromMm !== null && fromDeg !== null) {
    found.push(
      contradiction(
        'the flatter end of the motion is stated by a radius and by an angle',
        `leave one of "${BEND_FIELDS.flexesFromRadiusMm.label}" and "${BEND_FIELDS.flexesFromAngleDeg.label}" blank`,
      ),
    )
  }
  if (use !== null && use !== 'dynamic') {
    found.push(
      contradiction(
        `it is stated as ${getChoiceWord(BEND_FIELDS.use, use)}, and a motion between two ends is stated`,
        'state it as dynamic, or leave the flatter end blank',
      ),
    )
  }
  if (motion === 'reversed') {
    found.push(
      contradiction(
        'a motion to both sides of flat has no flatter end',
        'state it as flexed to one side, or leave the flatter end blank',
      ),
    )
  }
  if (fromMm !== null && fromMm <= insideRadiusMm) {
    found.push(
      contradiction(
        `it is stated to flex from an inside radius of ${inSentence(fromMm, 'mm')}, which is not flatter than its ${inSentence(insideRadiusMm, 'mm')}`,
        'enter the tighter end as the inside radius and the flatter end as the radius it flexes from',
      ),
    )
  }
  if (fromDeg !== null && fromDeg >= angleDeg) {
    found.push(
      contradiction(
        `it is stated to flex from ${inSentence(fromDeg, 'deg')}, which is not flatter than its ${inSentence(angleDeg, 'deg')}`,
        'enter the tighter end as the angle and the flatter end as the angle it flexes from',
      ),
    )
  }
  return found
}

function listIncomplete({ twistDeg, twistLengthMm, radiusHeldBy, faceGapMm, angleDeg }: Bend): ModelLimit[] {
  const found: ModelLimit[] = []
  if (twistDeg !== null && twistDeg > 0 && twistLengthMm === null) {
    found.push({
      kind: 'loads',
      because: `a twist of ${inSentence(twistDeg, 'deg')} is stated without the length that twists`,
      decidedBy: `state "${BEND_FIELDS.twistLengthMm.label}"`,
    })
  }
  if (twistDeg === null && twistLengthMm !== null) {
    found.push({
      kind: 'loads',
      because: 'a length that twists is stated without a twist',
      decidedBy: `state "${BEND_FIELDS.twistDeg.label}", 0 where there is none`,
    })
  }
  if (radiusHeldBy !== 'between-faces') {
    if (faceGapMm !== null) {
      found.push(
        contradiction(
          radiusHeldBy === null
            ? `a gap of ${inSentence(faceGapMm, 'mm')} between faces is stated, and nobody has stated that faces hold the radius`
            : `a gap of ${inSentence(faceGapMm, 'mm')} between faces is stated, and the radius is stated to be held by ${getChoiceWord(BEND_FIELDS.radiusHeldBy, radiusHeldBy)}`,
          `state in "${BEND_FIELDS.radiusHeldBy.label}" that two faces hold it, or leave "${BEND_FIELDS.faceGapMm.label}" blank`,
        ),
      )
    }
    return found
  }
  if (faceGapMm === null) {
    found.push(
      contradiction(
        'two faces hold the fold and the gap between them is not stated, so that nobody knows how tight its tip is',
        `state "${BEND_FIELDS.faceGapMm.label}"`,
      ),
    )
  }
  if (angleDeg !== 180) {
    found.push(
      contradiction(
        `a fold between two parallel faces turns by 180°, and ${inSentence(angleDeg, 'deg')} are stated`,
        'state 180°, or what else holds the radius',
      ),
    )
  }
  return found
}

/** A part twists within its zone: a longer length says too little strain, so that what fails with it fails. */
export function listTwistReachLimits({ twistDeg, twistLengthMm }: Bend, { name, lengthMm }: Zone): ModelLimit[] {
  if (twistDeg === null || twistDeg === 0 || twistLengthMm === null || lengthMm === null) return []
  if (twistLengthMm <= lengthMm) return []
  return [
    {
      kind: 'loads',
      because: `it is stated to twist over ${inSentence(twistLengthMm, 'mm')}, and ${name} is ${inSentence(lengthMm, 'mm')} long`,
      decidedBy: `check "${BEND_FIELDS.twistLengthMm.label}", or the length of the zone`,
    },
  ]
}

/** Of the flatter end, for a table; null where it is flat. */
export function findFromRadiusMm({ from }: StatedStates, insideRadiusMm: number, axisUm: number): number | null {
  return from === null ? null : flatterRadiusMm(insideRadiusMm, axisUm, from)
}
