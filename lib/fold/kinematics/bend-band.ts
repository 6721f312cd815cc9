import type { FlatBand } from './flat-part'
import { composePoses, FLAT_POSE, invertPose, movePoint, type Pose } from './pose'
import type { Vector } from './vector'

/** Below this angle the quotients are taken from their series: the error is under 1e-17. */
const SMALL_RAD = 1e-4

/** sin a / a, without a division by 0. */
const sineQuotient = (a: number) => (Math.abs(a) < SMALL_RAD ? 1 - (a * a) / 6 : Math.sin(a) / a)

/** (1 - cos a) / a, without a division by 0 and without cancellation. */
function versineQuotient(a: number): number {
  if (Math.abs(a) < SMALL_RAD) return a / 2 - (a * a * a) / 24
  const half = Math.sin(a / 2)
  return (2 * half * half) / a
}

/** Of a band that is bent by a share of its angle: how its own frame (across, along, up) lies in the flat plane. */
export interface BentBand {
  readonly band: FlatBand
  readonly angleRad: number
  /** From the frame of the band's starting border to the plane of the flat part. */
  readonly frame: Pose
  readonly intoFrame: Pose
}

/**
 * @param share  0 flat, 1 folded
 */
export function bendBand(band: FlatBand, share: number): BentBand {
  const [ax, ay] = band.across
  const frame: Pose = {
    axes: [
      [ax, ay, 0],
      [-ay, ax, 0],
      [0, 0, 1],
    ],
    origin: [band.start[0], band.start[1], 0],
  }
  return { band, angleRad: (band.angleDeg * share * Math.PI) / 180, frame, intoFrame: invertPose(frame) }
}

/**
 * Where a point of the flat band comes to lie while the plate before it stays. Cross-sections stay plane and square to the neutral
 * surface, whose length is kept (Euler-Bernoulli).
 */
export function bendPoint({ band, angleRad, frame, intoFrame }: BentBand, point: Vector): Vector {
  if (angleRad === 0) return point
  const flat = movePoint(intoFrame, point)
  const turn = (angleRad * flat[0]) / band.lengthMm
  const above = flat[2] - band.neutralMm
  return movePoint(frame, [
    flat[0] * sineQuotient(turn) - above * Math.sin(turn),
    flat[1],
    band.neutralMm + flat[0] * versineQuotient(turn) + above * Math.cos(turn),
  ])
}

/** How the plate behind the band moves while the one before it stays. Exactly nothing where the band is flat. */
export function poseBehind({ band, angleRad, frame, intoFrame }: BentBand): Pose {
  if (angleRad === 0) return FLAT_POSE
  const { lengthMm, neutralMm } = band
  const cosine = Math.cos(angleRad)
  const sine = Math.sin(angleRad)
  const end: Pose = {
    axes: [
      [cosine, 0, sine],
      [0, 1, 0],
      [-sine, 0, cosine],
    ],
    // The image of the frame's origin: the end of the neutral surface, less what lies before and below it.
    origin: [
      lengthMm * sineQuotient(angleRad) - lengthMm * cosine + neutralMm * sine,
      0,
      neutralMm + lengthMm * versineQuotient(angleRad) - lengthMm * sine - neutralMm * cosine,
    ],
  }
  return composePoses(composePoses(frame, end), intoFrame)
}
