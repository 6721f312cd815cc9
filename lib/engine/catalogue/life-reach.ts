import type { CannotTellOutcome, LifeReach } from '../results'

/** Why nobody can tell whether a conductor reaches its cycles, for `cannotTell`. */
export const BEYOND_REACH: Readonly<
  Record<Exclude<LifeReach, 'within'>, Pick<CannotTellOutcome, 'because' | 'decidedBy'>>
> = {
  'strength-governed': {
    because:
      'the fatigue relation gives foil that is not rolled-annealed this life by its tensile strength alone, where it must not be used to rank foils',
    decidedBy: 'qualify by test',
  },
  beyond: {
    because:
      'the required cycles, at the survival asked for, lie past the end of the fatigue relation (a median life of 1e12)',
    decidedBy: 'qualify by test',
  },
}
