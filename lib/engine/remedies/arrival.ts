import { compareRemedies } from './ranking'
import type { ForbiddenNeed, HeldBack, RemedyArrival, RemedyState } from './remedy'
import { doesGrow, isArrival } from './search'
import type { Trial } from './trial'

/**
 * Whether the sets that were tried arrive, and what stops them where they do not.
 *
 * @param kept   the sets that are listed: the one that is named is among them
 * @param tried  all that help
 */
export function describeArrival(before: RemedyState, kept: readonly Trial[], tried: readonly Trial[]): RemedyArrival {
  if (before.verdict === 'meets') return { kind: 'meets-as-it-is' }
  const arrivals = kept.filter(isArrival).sort((a, b) => a.changeCount - b.changeCount || compareRemedies(a, b))
  const [smallest] = arrivals
  if (smallest !== undefined) {
    const makesPartLarger = doesGrow(smallest.after, before)
    const sameSize = makesPartLarger ? arrivals.find(({ after }) => !doesGrow(after, before)) : undefined
    return {
      kind: 'meets',
      remedyId: smallest.id,
      changeCount: smallest.changeCount,
      makesPartLarger,
      sameSizeRemedyId: sameSize?.id ?? null,
    }
  }
  const nearest = findNearest(before, kept)
  const { marginFraction, because } = nearest?.after ?? before
  return {
    kind: 'falls-short',
    remedyId: nearest?.id ?? null,
    marginFraction,
    because,
    heldBack: countHeldBack(tried),
  }
}

function findNearest(before: RemedyState, trials: readonly Trial[]): Trial | null {
  let nearest: Trial | null = null
  for (const trial of trials) {
    if (trial.forbiddenBy.length > 0 || trial.worsens.length > 0) continue
    if (marginOf(trial.after) <= marginOf(nearest?.after ?? before)) continue
    nearest = trial
  }
  return nearest
}

function marginOf({ marginFraction }: RemedyState): number {
  return marginFraction ?? Number.NEGATIVE_INFINITY
}

/** Needs of sets that would meet. One set counts once for each of its needs. */
function countHeldBack(trials: readonly Trial[]): readonly HeldBack[] {
  const counted = new Map<string, { need: ForbiddenNeed; setCount: number }>()
  for (const { after, forbiddenBy } of trials) {
    if (after.verdict !== 'meets') continue
    const needs = new Map(forbiddenBy.map((need) => [`${need.kind} ${need.name}`, need]))
    for (const [key, need] of needs) {
      const known = counted.get(key)
      counted.set(key, { need: known?.need ?? need, setCount: (known?.setCount ?? 0) + 1 })
    }
  }
  return [...counted.values()].sort((a, b) => b.setCount - a.setCount)
}
