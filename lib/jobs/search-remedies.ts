import type { RemedyOptions, RemedyReport } from '@/lib/engine'
import { makeCatalogue } from '@/lib/engine/catalogue'
import { RADIUS_FAMILIES, searchRemedies, searchWayOut, type WayOut } from '@/lib/engine/remedies'
import { toRemedyOptions } from '@/lib/fabrication/remedies'
import type { JobHooks } from './kind'
import type { RemedyOrder, WayOutOrder } from './orders'

/**
 * A search for remedies that ends in time by itself, or when it is asked to: with the report of what it has found so far, which says so.
 *
 * @param seconds  after which no further set is tried
 */
export const searchWithin =
  (seconds: number) =>
  (order: RemedyOrder, { onProgress, onFirst, isFinishAsked }: JobHooks): RemedyReport => {
    const { design, bendId } = order
    const search = searchRemedies(design, bendId, toOptions(order))
    const end = performance.now() + seconds * 1000
    for (;;) {
      const step = search.next(isFinishAsked() || performance.now() > end)
      if (step.done === true) return step.value
      onProgress(step.value.doneFraction)
      if (step.value.lead !== undefined) onFirst?.(step.value.lead)
    }
  }

/** The same over all items of the design. */
export const findWayOutWithin =
  (seconds: number) =>
  (order: WayOutOrder, { onProgress, isFinishAsked }: JobHooks): WayOut => {
    const search = searchWayOut(order.design, toOptions(order))
    const end = performance.now() + seconds * 1000
    for (;;) {
      const step = search.next(isFinishAsked() || performance.now() > end)
      if (step.done === true) return step.value
      onProgress(step.value.doneFraction)
    }
  }

function toOptions({
  design,
  limits,
  testedLives,
  facts,
  template,
  isRadiusFixed,
  basis,
  today,
}: WayOutOrder): RemedyOptions {
  return {
    limits,
    testedLives,
    facts,
    items: makeCatalogue(template).items,
    ...toRemedyOptions(basis, design, today),
    ...(isRadiusFixed ? { leftOutFamilies: RADIUS_FAMILIES } : {}),
  }
}
