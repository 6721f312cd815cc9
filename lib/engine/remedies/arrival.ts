import { isBreak } from './moves'
import { compareRemedies } from './ranking'
import type { ForbiddenNeed, HeldBack, RemedyArrival, RemedyState } from './remedy'
import { doesGrow, isArrival, isClean } from './search'
import type { Trial } from './trial'

/**
 * Whether the sets that were tried arrive, and what stops them where they do not.
 *
 * @param kept   the sets that are listed: the one that is named is among them
 * @param tried  all that help
 */
export function describeArrival(before: RemedyState, kept: readonly Trial[], tried: readonly Trial[]): RemedyArrival {
  if (before.verdict === 'meets') return { kind: 'meets-as-it-is' }
  const [smallest, sameSize] = findArrivals(before, kept)
  if (smallest !== undefined) {
    return {
      kind: 'meets',
      remedyId: smallest.id,
      changeCount: smallest.changeCount,
      makesPartLarger: doesGrow(smallest.after, before),
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

/** The sets that the arrival names. */
export function findLeads(before: RemedyState, kept: readonly Trial[]): readonly Trial[] {
  if (before.verdict === 'meets') return []
  const arrivals = findArrivals(before, kept)
  if (arrivals.length > 0) return arrivals
  const nearest = findNearest(before, kept)
  return nearest === null ? [] : [nearest]
}

/** The smallest set that arrives, and the smallest of those that leave the part its size, where the first does not. */
function findArrivals(before: RemedyState, kept: readonly Trial[]): readonly Trial[] {
  const arrivals = kept.filter(isArrival).sort((a, b) => a.changeCount - b.changeCount || compareRemedies(a, b))
  const [smallest] = arrivals
  if (smallest === undefined) return []
  const sameSize = doesGrow(smallest.after, before) ? arrivals.find(({ after }) => !doesGrow(after, before)) : undefined
  return sameSize === undefined ? [smallest] : [smallest, sameSize]
}

function findNearest(before: RemedyState, trials: readonly Trial[]): Trial | null {
  let nearest: Trial | null = null
  for (const trial of trials) {
    if (marginOf(trial.after) <= marginOf(nearest?.after ?? before) || !isClean(trial)) continue
    nearest = trial
  }
  return nearest
}

function marginOf({ marginFraction }: RemedyState): number {
  return marginFraction ?? Number.NEGATIVE_INFINITY
}

/** Needs of sets that would meet, and items of weight that they would make fail. One set counts once for each of them. */
function countHeldBack(trials: readonly Trial[]): readonly HeldBack[] {
  const counted = new Map<string, { need: ForbiddenNeed; setCount: number }>()
  for (const { after, forbiddenBy, findMoved } of trials) {
    if (after.verdict !== 'meets') continue
    const broken = findMoved()
      .filter(isBreak)
      .map(({ question, because }): ForbiddenNeed => ({ kind: 'other-item', name: question, because }))
    const needs = new Map([...forbiddenBy, ...broken].map((need) => [`${need.kind} ${need.name}`, need]))
    for (const [key, need] of needs) {
      const known = counted.get(key)
      counted.set(key, { need: known?.need ?? need, setCount: (known?.setCount ?? 0) + 1 })
    }
  }
  return [...counted.values()].sort((a, b) => b.setCount - a.setCount)
}
