import { paths } from '@/app/_components/shell/paths'
import type { RemedyBasisView } from '@/lib/data'
import type { Design } from '@/lib/engine'
import type { RemedyOptions } from '@/lib/engine/remedies'
import { estimateByBasis } from '@/lib/fabrication/cost'
import { assessShelf } from '@/lib/fabrication/shelf'

/** Bases of the fabricators; empty where there is none, or the server does not answer: remedies then come without. */
export async function fetchRemedyBases(revisionId: string): Promise<readonly RemedyBasisView[]> {
  try {
    const response = await fetch(paths.remedyBases(revisionId))
    return response.ok ? ((await response.json()) as readonly RemedyBasisView[]) : []
  } catch {
    return []
  }
}

/** What a fabricator's panels, rates and shelf add to the search. @param today  calendar day, ISO 8601 */
export function toRemedyOptions(view: RemedyBasisView | null, today: string): RemedyOptions {
  if (view === null) return {}
  const { basis, shelf, unavailableMaterialIds } = view
  return {
    unavailableMaterialIds,
    ...(basis === null
      ? {}
      : {
          costOf: (design: Design) => estimateByBasis(design, basis)?.indexPerGoodPart ?? null,
          partsPerPanelOf: (design: Design) => estimateByBasis(design, basis)?.partsPerPanel ?? null,
        }),
    ...(shelf === null
      ? {}
      : {
          materialsOf: (design: Design) =>
            assessShelf(design, shelf, today).purchases.map(({ name, state, row }) => ({
              name,
              state,
              leadTimeDays: state === 'to-order' ? (row?.leadTimeDays ?? null) : null,
            })),
        }),
  }
}
