import type { CarriedBody } from '../bodies/flat-bodies'
import { type ClashOnTheWay, type FoldOrder, sweepFold } from '../clash/sweep-fold'
import type { FlatPart } from '../kinematics/flat-part'

export type FoundOrder =
  | { readonly kind: 'found'; readonly order: FoldOrder }
  /** No order works: each certainly clashes somewhere; the clashes of the one as entered. */
  | { readonly kind: 'none'; readonly clashes: readonly ClashOnTheWay[] }
  /** No order is known to work, and this one does not certainly clash; what is open on its way. */
  | { readonly kind: 'cannot-tell'; readonly order: FoldOrder; readonly clashes: readonly ClashOnTheWay[] }
  /** More bends than can be tried in every order; the clashes of the order as entered. */
  | { readonly kind: 'not-searched'; readonly clashes: readonly ClashOnTheWay[] }

/** 10 bends are at most 10 x 512 steps to try. */
const MOST_BENDS = 10

const isCertain = ({ clash }: ClashOnTheWay): boolean => clash.kind !== 'cannot-tell'

/**
 * An order of bends in which nothing clashes on the way; the one as entered where it works. A state of the fold is the set of bends made, so each
 * step from a state is tried once, however it was reached.
 *
 * @param bends  bands that bend together, in the order as entered
 */
export function findFoldOrder(
  part: FlatPart,
  carried: readonly CarriedBody[],
  fixedPlateId: string,
  bends: FoldOrder,
  clearanceMm: number,
): FoundOrder {
  const sweep = (order: FoldOrder, firstStep = 0) =>
    sweepFold(part, carried, fixedPlateId, order, clearanceMm, firstStep)
  const asEntered = sweep(bends)
  if (asEntered.length === 0) return { kind: 'found', order: bends }
  if (bends.length > MOST_BENDS) return { kind: 'not-searched', clashes: asEntered }
  const orderOf = (steps: readonly number[]): FoldOrder => steps.map((index) => bends[index] ?? [])
  const tried = new Map<string, 'clear' | 'open' | 'clash'>()
  const tryStep = (made: readonly number[], mask: number, next: number): 'clear' | 'open' | 'clash' => {
    const key = `${mask} ${next}`
    const known = tried.get(key)
    if (known !== undefined) return known
    const met = sweep(orderOf([...made, next]), made.length)
    const outcome = met.some(isCertain) ? 'clash' : met.length > 0 ? 'open' : 'clear'
    tried.set(key, outcome)
    return outcome
  }
  const search = (mayBeOpen: boolean): readonly number[] | null => {
    const deadEnds = new Set<number>()
    const goOn = (made: readonly number[], mask: number): readonly number[] | null => {
      if (made.length === bends.length) return made
      if (deadEnds.has(mask)) return null
      for (let next = 0; next < bends.length; next += 1) {
        if (mask & (1 << next)) continue
        const outcome = tryStep(made, mask, next)
        if (outcome === 'clash' || (outcome === 'open' && !mayBeOpen)) continue
        const found = goOn([...made, next], mask | (1 << next))
        if (found !== null) return found
      }
      deadEnds.add(mask)
      return null
    }
    return goOn([], 0)
  }
  const clear = search(false)
  if (clear !== null) return { kind: 'found', order: orderOf(clear) }
  if (!asEntered.some(isCertain)) return { kind: 'cannot-tell', order: bends, clashes: asEntered }
  const open = search(true)
  if (open === null) return { kind: 'none', clashes: asEntered }
  const order = orderOf(open)
  return { kind: 'cannot-tell', order, clashes: sweep(order) }
}
