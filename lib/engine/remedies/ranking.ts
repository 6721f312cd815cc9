import { rankVerdict } from './needs'
import type { ForbiddenNeed, RemedyState } from './remedy'

/** What dominance and rank look at. */
export interface Ranked {
  readonly id: string
  readonly after: RemedyState
  readonly changeCount: number
  readonly forbiddenBy: readonly ForbiddenNeed[]
  readonly worsens: readonly unknown[]
  /** How many blocking and major items it makes fail: worked out when first asked for, since most sets are dropped without. */
  readonly countBreaks: () => number
}

/** Differences below this share are rounding: such counts tie. */
const TIE_FRACTION = 1e-9

/**
 * Every count by which remedies are compared, smaller is better: verdict, strain for its allowance (nominal and worst), radius
 * needed, life, foil that is not rolled-annealed, moment, loads taken away, radius taken, thickness of the bend's zone, how far other zones move, size in plan, cost, number of changes,
 * whether a need forbids it, bends that get worse. Blocking and major items that come to fail are one more, counted apart.
 */
export function listCounts({ after, changeCount, forbiddenBy, worsens }: Ranked, before: RemedyState): number[] {
  const { allowablePct, peakStrainPct, marginFraction } = after
  return [
    rankVerdict(after.verdict),
    allowablePct === null || peakStrainPct === null ? 0 : peakStrainPct / allowablePct,
    -(marginFraction ?? 0),
    after.minRadiusMm ?? 0,
    -(after.survivalLifeCycles ?? 0),
    after.unprovenFoilLayers,
    after.momentNmm ?? 0,
    -after.pullN,
    -after.twistDeg,
    after.twistLengthMm,
    after.insideRadiusMm,
    after.bendZoneThicknessUm,
    sumOtherZoneChangesUm(after, before),
    after.planSizeMm,
    after.costIndex ?? 0,
    changeCount,
    forbiddenBy.length === 0 ? 0 : 1,
    worsens.length,
  ]
}

/** The zone of the bend counts by itself; what a connector or a board sees of the others should stay as it is. */
function sumOtherZoneChangesUm(after: RemedyState, before: RemedyState): number {
  let sumUm = Math.abs(after.bendZoneThicknessUm - before.bendZoneThicknessUm) * -1
  after.zones.forEach(({ thicknessUm }, at) => {
    sumUm += Math.abs(thicknessUm - (before.zones[at]?.thicknessUm ?? thicknessUm))
  })
  return Math.max(0, sumUm)
}

/** At least as good on every count and better on one. */
export const doesDominate = (a: readonly number[], b: readonly number[]): boolean => isNoWorse(a, b) && !isNoWorse(b, a)

function isNoWorse(a: readonly number[], b: readonly number[]): boolean {
  return a.every((left, at) => {
    const right = b[at] ?? 0
    return left <= right + TIE_FRACTION * Math.max(Math.abs(left), Math.abs(right))
  })
}

/** With what they make fail as one more count, which is asked last: beside what makes nothing fail, the other need not be looked at. */
function doesBeat(a: Ranked, b: Ranked, ofA: readonly number[], ofB: readonly number[]): boolean {
  if (doesDominate(ofA, ofB)) return a.countBreaks() === 0 || a.countBreaks() <= b.countBreaks()
  return isNoWorse(ofA, ofB) && a.countBreaks() < b.countBreaks()
}

/** Leaves out what another remedy, or leaving the design as it is, beats on every count; ties stay. */
export function dropDominated<T extends Ranked>(remedies: readonly T[], before: RemedyState): T[] {
  const asItIs = listCounts(
    { id: '', after: before, changeCount: 0, forbiddenBy: [], worsens: [], countBreaks: () => 0 },
    before,
  )
  const counts = remedies.map((remedy) => listCounts(remedy, before))
  return remedies.filter((remedy, at) => {
    const own = counts[at] ?? []
    if (doesDominate(asItIs, own)) return false
    return !remedies.some((other, otherAt) => otherAt !== at && doesBeat(other, remedy, counts[otherAt] ?? [], own))
  })
}

/** Allowed before forbidden, rolled-annealed foil before other in dynamic use, verdict met first, bends and items left in peace, fewest changes, smallest in plan, largest margin, then by id. */
export function compareRemedies(a: Ranked, b: Ranked): number {
  return compareBeforeBreaks(a, b) || a.countBreaks() - b.countBreaks() || compareAfterBreaks(a, b)
}

function compareBeforeBreaks(a: Ranked, b: Ranked): number {
  return (
    Number(a.forbiddenBy.length > 0) - Number(b.forbiddenBy.length > 0) ||
    a.after.unprovenFoilLayers - b.after.unprovenFoilLayers ||
    rankVerdict(a.after.verdict) - rankVerdict(b.after.verdict) ||
    a.worsens.length - b.worsens.length
  )
}

function compareAfterBreaks(a: Ranked, b: Ranked): number {
  return (
    a.changeCount - b.changeCount ||
    a.after.planSizeMm - b.after.planSizeMm ||
    (b.after.marginFraction ?? 0) - (a.after.marginFraction ?? 0) ||
    (a.id < b.id ? -1 : 1)
  )
}

/**
 * The first of them by `compareRemedies`. What a set makes fail is asked only as far as it decides: once enough are found that make nothing fail, what would follow
 * them comes later whatever it makes fail.
 */
export function takeBest<T extends Ranked>(remedies: readonly T[], most: number): T[] {
  const ranked = remedies.toSorted((a, b) => compareBeforeBreaks(a, b) || compareAfterBreaks(a, b))
  const best: T[] = []
  const breaking: T[] = []
  for (const [at, remedy] of ranked.entries()) {
    const before = ranked[at - 1]
    // A rank of its own begins: of the one before, those that make something fail come first.
    if (before !== undefined && compareBeforeBreaks(before, remedy) !== 0) {
      best.push(...breaking.splice(0).sort(compareRemedies))
    }
    if (best.length >= most) break
    if (remedy.countBreaks() === 0) best.push(remedy)
    else breaking.push(remedy)
  }
  return [...best, ...breaking.sort(compareRemedies)].slice(0, most)
}
