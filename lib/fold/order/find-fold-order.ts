import type { CarriedBody } from '../bodies/flat-bodies'
import { type ClashOnTheWay, type FoldOrder, sweepFold } from '../clash/sweep-fold'
import type { FlatPart } from '../kinematics/flat-part'

export type FoundOrder =
  | { readonly kind: 'found'; readonly order: FoldOrder }
  /** No order works; the clashes of the one as entered. */
  | { readonly kind: 'none'; readonly clashes: readonly ClashOnTheWay[] }
  /** More bends than can be tried in every order; the clashes of the order as entered. */
  | { readonly kind: 'not-searched'; readonly clashes: readonly ClashOnTheWay[] }

/** 10 bends are at most 10 x 512 steps to try. */
const MOST_BENDS = 10

/**
 * An order of bends in which nothing clashes on the way; the one as entered where it works. A state of the fold is the set of bends made, so each
 * is tried once, however it was reached.
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
  const asEntered = sweepFold(part, carried, fixedPlateId, bends, clearanceMm)
  if (asEntered.length === 0) return { kind: 'found', order: bends }
  if (bends.length > MOST_BENDS) return { kind: 'not-searched', clashes: asEntered }
  const deadEnds = new Set<number>()
  const canStep = (made: readonly number[], next: number): boolean => {
    const order = [...made, next].map((index) => bends[index] ?? [])
    return sweepFold(part, carried, fixedPlateId, order, clearanceMm, made.length).length === 0
  }
  const search = (made: readonly number[], mask: number): readonly number[] | null => {
    if (made.length === bends.length) return made
    if (deadEnds.has(mask)) return null
    for (let next = 0; next < bends.length; next += 1) {
      if (mask & (1 << next) || !canStep(made, next)) continue
      const found = search([...made, next], mask | (1 << next))
      if (found !== null) return found
    }
    deadEnds.add(mask)
    return null
  }
  const found = search([], 0)
  if (found === null) return { kind: 'none', clashes: asEntered }
  return { kind: 'found', order: found.map((index) => bends[index] ?? []) }
}
