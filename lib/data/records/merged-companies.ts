import 'server-only'
import type { TransactionClient } from '../store/client'

/**
 * The ids under which a company acted: its own, and those of typed names that turned out to be it. Records of the trail are
 * never rewritten, so what was done under such a name still carries the old id.
 */
export async function listCompanyIds(tx: TransactionClient, companyId: string): Promise<readonly string[]> {
  const merged = await tx.company.findMany({
    where: { mergedIntoId: companyId },
    select: { id: true },
    orderBy: { id: 'asc' },
  })
  return [companyId, ...merged.map(({ id }) => id)]
}
