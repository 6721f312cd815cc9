import isSame from 'fast-deep-equal'
import type { Design, RemedyOptions } from '@/lib/engine'
import { type CostBasis, estimateByBasis } from '../cost'
import { type NestedPart, readNestedPart } from '../panel'
import { assessShelf, type ShelfContent } from '../shelf'

/** What one fabricator adds to the search for remedies: plain data. */
export interface RemedyBasis {
  /** Null where nothing can be priced, with the reason. */
  readonly basis: CostBasis | null
  readonly noBasisReason: string
  /** The part that the basis' panels were filled with: what they say of another one would be wrong. */
  readonly part: NestedPart | null
  /** Null where the fabricator keeps no shelf. */
  readonly shelf: ShelfContent | null
  /** Materials that the shelf lists and that are neither held nor to be ordered. */
  readonly unavailableMaterialIds: readonly string[]
}

/** Why this design cannot be priced by a fabricator's panels and rates; empty where it can. */
export function explainUnpriced(view: RemedyBasis, design: Design): string {
  if (view.basis === null) return view.noBasisReason
  const reading = readNestedPart(design)
  if (!reading.ok) return reading.reason
  // By value: what came from the server and what was read from the draft need not list their keys in one order.
  if (!isSame(reading.part, view.part)) {
    return 'The part’s outline differs from the stored one that the panels were filled with. Save the design first.'
  }
  return estimateByBasis(design, view.basis) === null ? 'The part does not fit on any panel format.' : ''
}

/**
 * What a fabricator's panels, rates and shelf add to the search for this design.
 *
 * @param today  calendar day, ISO 8601
 */
export function toRemedyOptions(view: RemedyBasis | null, design: Design, today: string): RemedyOptions {
  if (view === null) return {}
  const { basis, shelf, unavailableMaterialIds } = view
  return {
    unavailableMaterialIds,
    ...(basis === null || explainUnpriced(view, design) !== ''
      ? {}
      : {
          costOf: (trial: Design) => estimateByBasis(trial, basis)?.indexPerGoodPart ?? null,
          partsPerPanelOf: (trial: Design) => estimateByBasis(trial, basis)?.partsPerPanel ?? null,
        }),
    ...(shelf === null
      ? {}
      : {
          materialsOf: (trial: Design) =>
            assessShelf(trial, shelf, today).purchases.map(({ name, state, row }) => ({
              name,
              state,
              leadTimeDays: state === 'to-order' ? (row?.leadTimeDays ?? null) : null,
            })),
        }),
  }
}
