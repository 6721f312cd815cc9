import isSame from 'fast-deep-equal'
import { paths } from '@/app/_components/shell/paths'
import type { RemedyBasisView } from '@/lib/data'
import type { Design } from '@/lib/engine'
import type { RemedyOptions } from '@/lib/engine/remedies'
import { estimateByBasis } from '@/lib/fabrication/cost'
import { readNestedPart } from '@/lib/fabrication/panel'
import { assessShelf } from '@/lib/fabrication/shelf'

/** Bases of the fabricators; null where the server does not give them: remedies then come without, and say so. */
export async function fetchRemedyBases(revisionId: string): Promise<readonly RemedyBasisView[] | null> {
  try {
    const response = await fetch(paths.remedyBases(revisionId))
    return response.ok ? ((await response.json()) as readonly RemedyBasisView[]) : null
  } catch {
    return null
  }
}

/** Why this design cannot be priced by a fabricator's panels and rates; empty where it can. */
export function explainUnpriced(view: RemedyBasisView, design: Design): string {
  if (view.basis === null) return view.noBasisReason
  const reading = readNestedPart(design)
  if (!reading.ok) return reading.reason
  // By value: what came from the server and what was read from the draft need not list their keys in one order.
  if (!isSame(reading.part, view.part)) {
    return 'The outline of the part differs from the stored one, by which the panels were filled: save the design first.'
  }
  return estimateByBasis(design, view.basis) === null ? 'No panel format holds the part.' : ''
}

/**
 * What a fabricator's panels, rates and shelf add to the search for this design.
 *
 * @param today  calendar day, ISO 8601
 */
export function toRemedyOptions(view: RemedyBasisView | null, design: Design, today: string): RemedyOptions {
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
