import { tidy } from '../../numerics'
import { editBend } from '../edits'
import type { ForbiddenNeed } from '../remedy'
import type { Candidate, Family, Subject } from '../subject'

/** What is kept of a load that is made smaller: half, or nothing. Our choice. */
const KEPT_FRACTIONS = [0.5, 0] as const

/** Less force along the part, or none: slack beside the bend, a clamp that takes it, or an end that is free to move. */
export const lessPull: Family = ({ design, bend }) => {
  const { pullN } = bend
  if (pullN === null || pullN === 0) return []
  return KEPT_FRACTIONS.map((fraction): Candidate => {
    const kept = tidy(pullN * fraction)
    return {
      id: `less-pull:${fraction}`,
      family: 'less-pull',
      title: fraction === 0 ? 'No pull on the bend' : 'Less pull on the bend',
      detail: `${bend.name}: pull of ${pullN} N to ${kept} N`,
      cautions: ['Something else has to take the force: slack beside the bend, a clamp, or an end that can move.'],
      forbiddenBy: findPullNeed(design, kept),
      edited: editBend(design, bend.id, (each) => ({ ...each, pullN: kept })),
      touches: ['pull'],
    }
  })
}

/** The brief states a pull that the film itself bears: a bend cannot be spared it. */
function findPullNeed({ brief: { exposure } }: Subject['design'], keptN: number): readonly ForbiddenNeed[] {
  const { pullForceNewton, pullFeature } = exposure
  if (pullForceNewton === null || pullForceNewton <= keptN || pullFeature !== 'nothing') return []
  return [
    {
      kind: 'pull',
      name: 'brief',
      because: `The brief states that the part is pulled with ${pullForceNewton} N, and nothing made for it takes the force.`,
    },
  ]
}

/** A smaller turn, or none. */
export const lessTwist: Family = ({ design, bend }) => {
  const { twistDeg } = bend
  if (twistDeg === null || twistDeg === 0) return []
  return KEPT_FRACTIONS.map((fraction): Candidate => {
    const kept = tidy(twistDeg * fraction)
    return {
      id: `less-twist:${fraction}`,
      family: 'less-twist',
      title: fraction === 0 ? 'No twist of the bend' : 'Less twist of the bend',
      detail: `${bend.name}: twist of ${twistDeg}° to ${kept}°`,
      cautions: ['Check that the assembly can be turned so that the motion asks for less twist.'],
      forbiddenBy:
        bend.inProduct.furtherMotion === 'twist'
          ? [
              {
                kind: 'twist',
                name: bend.name,
                because: `${bend.name} is stated to be twisted in the product besides its motion.`,
              },
            ]
          : [],
      edited: editBend(design, bend.id, (each) => ({ ...each, twistDeg: kept })),
      touches: ['twist'],
    }
  })
}

/** The same turn over all of the zone, or over twice the length where the zone's is not known. */
export const longerTwist: Family = ({ design, bend, zone }) => {
  const { twistDeg, twistLengthMm } = bend
  if (twistDeg === null || twistDeg === 0 || twistLengthMm === null) return []
  const longerMm = zone.lengthMm ?? tidy(2 * twistLengthMm)
  if (longerMm <= twistLengthMm) return []
  return [
    {
      id: `longer-twist:${longerMm}`,
      family: 'longer-twist',
      title: 'Twist over more length',
      detail: `${bend.name}: twist of ${twistDeg}° over ${twistLengthMm} mm to ${longerMm} mm${
        zone.lengthMm === null ? '' : `, the whole of ${zone.name}`
      }`,
      cautions: ['The whole length has to be free to turn: nothing may hold or touch it between its ends.'],
      forbiddenBy: [],
      edited: editBend(design, bend.id, (each) => ({ ...each, twistLengthMm: longerMm })),
      touches: ['twist-length'],
    },
  ]
}
