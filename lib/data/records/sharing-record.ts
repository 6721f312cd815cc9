import 'server-only'
import { isAllowed, NOTHING_SHARED, type Sharing } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { Standing } from './authorization'
import { readSharing } from './sharing-columns'

/** What each of the companies lets a project's team have; nothing where it did not agree to take part. */
export async function loadSharings(
  tx: TransactionClient,
  projectId: string,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, Sharing>> {
  const rows = await tx.participation.findMany({
    where: { projectId, companyId: { in: [...companyIds] }, state: 'takes-part' },
  })
  const found = new Map(rows.map((row) => [row.companyId, readSharing(row)]))
  return new Map(companyIds.map((companyId) => [companyId, found.get(companyId) ?? NOTHING_SHARED]))
}

/**
 * What each of the companies lets this person have of a project: by the same rights as the company's own pages. A matrix that
 * may not be seen is still checked against, where the company lets the project's team have that.
 */
export async function loadViewerSharings(
  tx: TransactionClient,
  standing: Standing,
  projectId: string,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, Sharing>> {
  const sharings = await loadSharings(tx, projectId, companyIds)
  return new Map(
    [...sharings].map(([companyId, sharing]) => {
      const subject = { kind: 'company' as const, companyId, takesPartIn: [{ projectId, sharing }] }
      const may = (action: 'company:view-matrix' | 'company:view-shelf' | 'company:view-rates') =>
        isAllowed(standing, action, subject)
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
