import type { PointMm } from '@/lib/artwork-picture'
import type { OnPlanFacts } from '../on-plan/on-plan-facts'
import { toArtwork, toPlan } from '../on-plan/placement'

/** A place in mm, with the coordinates that it is in. */
interface Spot {
  readonly frame: 'plan' | 'files'
  readonly xMm: number
  readonly yMm: number
}

/** How the coordinates of the files lie in those of the picture: the plan's where artwork was laid over one, else the files' own. */
export interface PictureFrame {
  readonly frame: Spot['frame']
  readonly toPicture: (atMm: PointMm) => PointMm
  readonly toFiles: (atMm: PointMm) => PointMm
  /** x' = a x + b y, y' = c x + d y, from the files' to the picture's, without the shift. */
  readonly turn: readonly [a: number, b: number, c: number, d: number]
}

type Registration = NonNullable<OnPlanFacts['registration']>

const NM_PER_MM = 1e6

export function makeFrame(registration: Registration | null): PictureFrame {
  if (registration === null) {
    const same = (atMm: PointMm) => atMm
    return { frame: 'files', toPicture: same, toFiles: same, turn: [1, 0, 0, 1] }
  }
  const { isMirrored, turnDeg, shiftMm } = registration
  const placement = {
    isMirrored,
    turnDeg: turnDeg as 0 | 90 | 180 | 270,
    shiftNm: [shiftMm[0] * NM_PER_MM, shiftMm[1] * NM_PER_MM] as const,
  }
  const inMm = ([x, y]: readonly [number, number]): PointMm => [x / NM_PER_MM, y / NM_PER_MM]
  const unshifted = { ...placement, shiftNm: [0, 0] as const }
  const [a, c] = toPlan(unshifted, 1, 0)
  const [b, d] = toPlan(unshifted, 0, 1)
  return {
    frame: 'plan',
    toPicture: ([x, y]) => inMm(toPlan(placement, x * NM_PER_MM, y * NM_PER_MM)),
    toFiles: ([x, y]) => inMm(toArtwork(placement, x * NM_PER_MM, y * NM_PER_MM)),
    turn: [a, b, c, d],
  }
}

/** A place as an outcome names it, in the picture; null where it is of a plan that this picture does not show. */
export function spotInPicture(frame: PictureFrame, { frame: of, xMm, yMm }: Spot): PointMm | null {
  if (of === frame.frame) return [xMm, yMm]
  return of === 'files' ? frame.toPicture([xMm, yMm]) : null
}
