import 'server-only'
import { isAllowed, NOTHING_SHARED, type Sharing } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { PersonRights } from './authorization'
import { readSharing } from './sharing-columns'

/** Companies of a project's team or review. */
export interface SharingPlace {
  readonly projectId: string
  readonly companyIds: readonly string[]
}

/** What each of the companies lets a project's team have; nothing where it did not agree to take part. */
export async function loadSharings(
  tx: TransactionClient,
  projectId: string,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, Sharing>> {
  const [sharings] = await loadSharingsOf(tx, [{ projectId, companyIds }])
  return sharings ?? new Map()
}

/** The same for several places, in their order. */
export async function loadSharingsOf(
  tx: TransactionClient,
  places: readonly SharingPlace[],
): Promise<readonly ReadonlyMap<string, Sharing>[]> {
  const rows = await tx.participation.findMany({
    where: {
      projectId: { in: [...new Set(places.map(({ projectId }) => projectId))] },
      companyId: { in: [...new Set(places.flatMap(({ companyIds }) => companyIds))] },
      state: 'takes-part',
    },
  })
  return places.map(({ projectId, companyIds }) => {
    const found = new Map(
      rows.flatMap((row) => (row.projectId === projectId ? [[row.companyId, readSharing(row)] as const] : [])),
    )
    return new Map(companyIds.map((companyId) => [companyId, found.get(companyId) ?? NOTHING_SHARED]))
  })
}

/**
 * What each of the companies lets this person have of a project: by the same rights as the company's own pages. A matrix that
 * may not be seen is still checked against, where the company lets the project's team have that.
 */
export async function loadViewerSharings(
  tx: TransactionClient,
  rights: PersonRights,
  projectId: string,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, Sharing>> {
  const sharings = await loadSharings(tx, projectId, companyIds)
  return new Map(
    [...sharings].map(([companyId, sharing]) => {
      const subject = { kind: 'company' as const, companyId, takesPartIn: [{ projectId, sharing }] }
      const may = (action: 'company:view-matrix' | 'company:view-shelf' | 'company:view-rates') =>
        isAllowed(rights, action, subject)
      return [
        companyId,
        {
          matrix: may('company:view-matrix') ? 'shown' : sharing.matrix === 'not-shared' ? 'not-shared' : 'checked',
          shelf: may('company:view-shelf') ? 'shown' : 'not-shared',
          rates: may('company:view-rates') ? 'shown' : 'not-shared',
        },
      ]
    }),
  )
}
