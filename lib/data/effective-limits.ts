import 'server-only'
import type { LimitOverride } from '@/lib/engine'
import { isLimitKey, LIMITS } from '@/lib/engine/catalogue'
import { hashJson } from '@/lib/review'
import type { TransactionClient } from './client'
import { type CompanySheets, listSheetVersionsOf } from './sheet-records'

/** Limits of the review's version of the catalogue, and of the fabricators with whom the revision is shared. */
export interface LimitSheets {
  readonly workspaceName: string
  readonly workspace: readonly SetLimit[]
  readonly fabricators: readonly {
    readonly companyId: string
    readonly name: string
    readonly limits: readonly SetLimit[]
  }[]
}

interface SetLimit {
  readonly key: string
  readonly value: number
}

export async function loadLimitSheets(
  tx: TransactionClient,
  companyIds: readonly string[],
  workspace: { readonly name: string; readonly limits: readonly SetLimit[] },
): Promise<LimitSheets> {
  const limits = await tx.limit.findMany({ where: { companyId: { in: [...companyIds] } }, orderBy: { key: 'asc' } })
  const companies = await tx.company.findMany({
    where: { id: { in: [...companyIds] } },
    orderBy: { nameKey: 'asc' },
  })
  return {
    workspaceName: workspace.name,
    workspace: workspace.limits,
    fabricators: companies.map(({ id, name }) => ({
      companyId: id,
      name,
      limits: limits.filter((limit) => limit.companyId === id),
    })),
  }
}

/**
 * The limits that count for a revision: a fabricator's in place of the workspace's. Where several fabricators set the
 * same one, the strictest holds, since the part must suit whoever builds it.
 *
 * @param fabricatorCompanyId  whose view it is: then no other fabricator's limit plays a part; null is the team's view
 */
export function combineLimits(sheets: LimitSheets, fabricatorCompanyId: string | null): LimitOverride[] {
  const overrides: LimitOverride[] = sheets.workspace.map(({ key, value }) => ({
    key,
    value,
    owner: { kind: 'workspace', name: sheets.workspaceName },
  }))
  const strictest = new Map<string, LimitOverride>()
  for (const { companyId, name, limits } of sheets.fabricators) {
    if (fabricatorCompanyId !== null && companyId !== fabricatorCompanyId) continue
    for (const { key, value } of limits) {
      const other = strictest.get(key)
      if (other !== undefined && !isStricter(key, value, other.value)) continue
      strictest.set(key, { key, value, owner: { kind: 'fabricator', name } })
    }
  }
  return [...overrides, ...strictest.values()]
}

function isStricter(key: string, value: number, other: number): boolean {
  if (!isLimitKey(key)) return false
  return LIMITS[key].sense === 'at-most' ? value < other : value > other
}

/**
 * Of what others than the design say: the limits, and the sheets of the fabricators. Empty where nobody said anything.
 */
export function hashLimits(overrides: readonly LimitOverride[], companies: readonly CompanySheets[]): string {
  const sheets = listSheetVersionsOf(companies)
  if (sheets.length > 0) return hashJson({ limits: overrides, sheets })
  return overrides.length === 0 ? '' : hashJson(overrides)
}
