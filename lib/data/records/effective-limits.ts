import 'server-only'
import type { LimitOverride } from '@/lib/engine'
import { isLimitKey, LIMITS, layProfileLimits, type Profile, passLimitsOn } from '@/lib/engine/catalogue'
import { type CheckedLimit, hashJson, type MatrixSharing, type Sharing } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { readTogether } from '../store/read-together'
import { type CompanySheets, listSheetVersionsOf } from './sheet-records'

/** Limits of the review's version of the catalogue, and of the fabricators with whom the revision is shared. */
export interface LimitsByOwner {
  readonly workspaceName: string
  readonly workspace: readonly SetLimit[]
  /** Profiles that the review follows: their limits are laid over whatever else holds. */
  readonly profiles: readonly Profile[]
  readonly fabricators: readonly {
    readonly companyId: string
    readonly name: string
    /** What the project's team gets of them; the company's own people see them whatever this says. */
    readonly sharing: MatrixSharing
    readonly limits: readonly StoredLimit[]
  }[]
}

interface SetLimit {
  readonly key: string
  readonly value: number
}

interface StoredLimit extends SetLimit {
  readonly id: string
  readonly version: number
}

/** Limits of companies, which reviews are held against by what each company shares there. */
export type CompanyLimits = Awaited<ReturnType<typeof loadCompanyLimits>>

export async function loadCompanyLimits(tx: TransactionClient, companyIds: readonly string[]) {
  const { rows, companies } = await readTogether(tx, {
    rows: { model: 'Limit', among: { companyId: companyIds } },
    companies: { model: 'Company', among: { id: companyIds } },
  } as const)
  rows.sort((one, other) => (one.key < other.key ? -1 : 1))
  const limits = companyIds.flatMap((id) => passLimitsOn(rows.filter(({ companyId }) => companyId === id)))
  const sortKey = ({ nameKey, id }: (typeof companies)[number]) => `${nameKey}\u0000${id}`
  return { limits, companies: companies.sort((one, other) => (sortKey(one) < sortKey(other) ? -1 : 1)) }
}

export function makeLimitsByOwner(
  { limits, companies }: CompanyLimits,
  sharings: ReadonlyMap<string, Sharing>,
  workspace: { readonly name: string; readonly limits: readonly SetLimit[]; readonly profiles: readonly Profile[] },
): LimitsByOwner {
  return {
    workspaceName: workspace.name,
    workspace: workspace.limits,
    profiles: workspace.profiles,
    fabricators: companies
      .filter(({ id }) => sharings.has(id))
      .map(({ id, name }) => ({
        companyId: id,
        name,
        sharing: sharings.get(id)?.matrix ?? 'not-shared',
        limits: limits.filter((limit) => limit.companyId === id),
      })),
  }
}

/**
 * The limits that a view may show: a fabricator's in place of the workspace's. Where several fabricators set the same
 * one, the strictest holds, since the part must suit every fabricator that may build it. What a profile asks for holds beside either.
 *
 * @param fabricatorCompanyId  whose view it is: then no other fabricator's limit plays a part, and all of its own do; null is
 * the team's view, which holds those that fabricators show
 */
export function combineLimits(sheets: LimitsByOwner, fabricatorCompanyId: string | null): LimitOverride[] {
  return combine(sheets, ({ companyId, sharing }) =>
    fabricatorCompanyId === null ? sharing === 'shown' : companyId === fabricatorCompanyId,
  )
}

/**
 * Every limit that counts for the team, those included that are checked against and not shown. For a calculation whose
 * results go through `withholdLimits`, and for nothing else.
 */
export function combineLimitsWithChecked(sheets: LimitsByOwner): LimitOverride[] {
  return combine(sheets, ({ sharing }) => sharing !== 'not-shared')
}

/** Limits that the team's results are checked against and that are not shown, without their values. */
export function listCheckedLimits(sheets: LimitsByOwner): CheckedLimit[] {
  return sheets.fabricators.flatMap(({ name, sharing, limits }) =>
    sharing === 'checked' ? limits.map(({ key }) => ({ key, ownerName: name })) : [],
  )
}

function combine(
  sheets: LimitsByOwner,
  isWanted: (fabricator: LimitsByOwner['fabricators'][number]) => boolean,
): LimitOverride[] {
  const overrides: LimitOverride[] = sheets.workspace.map(({ key, value }) => ({
    key,
    value,
    owner: { kind: 'workspace', name: sheets.workspaceName },
  }))
  const strictest = new Map<string, LimitOverride>()
  for (const fabricator of sheets.fabricators.filter(isWanted)) {
    for (const { key, value } of fabricator.limits) {
      const other = strictest.get(key)
      if (other !== undefined && !isStricter(key, value, other.value)) continue
      strictest.set(key, { key, value, owner: { kind: 'fabricator', name: fabricator.name } })
    }
  }
  return layProfileLimits([...overrides, ...strictest.values()], sheets.profiles)
}

function isStricter(key: string, value: number, other: number): boolean {
  if (!isLimitKey(key)) return false
  return LIMITS[key].sense === 'at-most' ? value < other : value > other
}

/**
 * Of what others than the design say: the limits, and the sheets of the fabricators. Empty where nobody said anything. A
 * limit that is not shown goes in by its record and version: from the hash of a value, the value can be found by trying.
 *
 * @param companies  those whose sheets the view rests on
 */
export function hashLimits(
  sheets: LimitsByOwner,
  companies: readonly CompanySheets[],
  fabricatorCompanyId: string | null,
): string {
  const limits = combineLimits(sheets, fabricatorCompanyId)
  const versions = listSheetVersionsOf(companies)
  const checked = fabricatorCompanyId === null ? listCheckedVersions(sheets) : []
  if (checked.length > 0) return hashJson({ limits, sheets: versions, checked })
  if (versions.length > 0) return hashJson({ limits, sheets: versions })
  return limits.length === 0 ? '' : hashJson(limits)
}

/** By which the team's results are known to be made with these limits, and not with others. */
export function listCheckedVersions(sheets: LimitsByOwner): string[] {
  return sheets.fabricators.flatMap(({ sharing, limits }) =>
    sharing === 'checked' ? limits.map(({ id, version }) => `${id}/${version}`) : [],
  )
}
