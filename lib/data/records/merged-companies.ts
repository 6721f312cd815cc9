import 'server-only'
import type { TransactionClient } from '../store/client'

/**
 * The ids under which a company acted: its own, and those of typed names that turned out to be it. Records of the trail are
 * never rewritten, so what was done under such a name still carries the old id.
 */
export async function listCompanyIds(tx: TransactionClient, companyId: string): Promise<readonly string[]> {
  return (await loadCompanyIds(tx, [companyId])).get(companyId) ?? []
}

/** The same for several companies. */
export async function loadCompanyIds(
  tx: TransactionClient,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, readonly string[]>> {
  const merged = await tx.company.findMany({
    where: { mergedIntoId: { in: [...companyIds] } },
    select: { id: true, mergedIntoId: true },
    orderBy: { id: 'asc' },
  })
  return new Map(
    companyIds.map((companyId) => [
      companyId,
      [companyId, ...merged.flatMap(({ id, mergedIntoId }) => (mergedIntoId === companyId ? [id] : []))],
    ]),
  )
}
