import 'server-only'
import { NOTHING_SHARED } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { CompanyView } from '../views'
import type { PersonRights } from './authorization'
import { isVisibleTo } from './loaded-revision'
import { loadViewerSharings } from './sharing-record'
import type { CompanySheets } from './sheet-records'

/**
 * Of the fabricators with whom a revision is shared those whom a view may show, each with what it lets this person have: to the team all, to
 * a fabricator its own company alone. Which sheets follow from that is for `pickSheets` or `pickShownSheets`.
 *
 * @param fabricatorCompanyId  of the view; null is the team
 */
export async function findFabricatorsInView(
  tx: TransactionClient,
  rights: PersonRights,
  place: { readonly projectId: string; readonly fabricatorCompanyId: string | null },
  companies: readonly CompanySheets[],
): Promise<readonly CompanySheets[]> {
  const visible = companies.filter(({ companyId }) => isVisibleTo(place.fabricatorCompanyId, companyId))
  const sharings = await loadViewerSharings(
    tx,
    rights,
    place.projectId,
    visible.map(({ companyId }) => companyId),
  )
  return visible.map((company) => ({ ...company, sharing: sharings.get(company.companyId) ?? NOTHING_SHARED }))
}

export function toFabricatorView({ companyId, companyName }: CompanySheets): CompanyView {
  return { id: companyId, kind: 'fabricator', name: companyName }
}
