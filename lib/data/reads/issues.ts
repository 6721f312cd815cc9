import 'server-only'
import { now } from '@/lib/config'
import { RELEASE_PURPOSES } from '@/lib/review'
import { type Actor, findRevisionScope, requireProject } from '../records/authorization'
import { readWord } from '../records/stored-words'
import type { IssueView } from '../views'
import { ISSUED_STAGES, readIssuedStage } from './issue-status'
import { read } from './read'

/** What was issued of a project, newest first. A fabricator sees its own edition of what is shared with it, and its own receipts. */
export function listIssues(actor: Actor, projectId: string): Promise<readonly IssueView[]> {
  return read(actor, async ({ tx, rights }) => {
    await requireProject(tx, rights, projectId)
    const rows = await tx.revision.findMany({
      where: { projectId, stage: { in: [...ISSUED_STAGES] }, packages: { some: {} } },
      include: {
        shares: { select: { companyId: true } },
        supersededBy: { select: { label: true } },
        release: { include: { replaces: { select: { label: true } } } },
        packages: { include: { receipts: { orderBy: [{ at: 'asc' }, { id: 'asc' }] } }, orderBy: { audience: 'asc' } },
        stageMoves: { orderBy: [{ movedAt: 'asc' }, { id: 'asc' }] },
        actions: { where: { state: { in: ['open', 'reported'] } }, select: { audienceCompanyId: true } },
      },
      orderBy: [{ stageSince: 'desc' }, { id: 'asc' }],
    })
    const names = await loadNames(tx, rows)
    const today = now().toISOString().slice(0, 10)
    return rows
      .flatMap((row): IssueView[] => {
        const scope = findRevisionScope(rights, row, false)
        if (scope === null) return []
        const own = scope.fabricatorCompanyId
        const editions = row.packages.filter(({ audience }) => own === null || audience === own)
        const { release } = row
        const any = row.packages[0]
        const status = readIssuedStage(row.stage)
        return [
          {
            revisionId: row.id,
            partNumber: release?.partNumber ?? '',
            revision: row.label,
            status,
            isExpired: release?.validUntil != null && release.validUntil < today,
            since: row.stageSince.toISOString(),
            supersededBy: row.supersededBy?.label ?? null,
            because: status === 'released' ? '' : (row.stageMoves.at(-1)?.reason ?? ''),
            releasedAt: (release?.releasedAt ?? any?.releasedAt ?? row.stageSince).toISOString(),
            releasedByName: names.get(release?.releasedById ?? any?.releasedById ?? '') ?? 'somebody',
            terms:
              release === null
                ? null
                : {
                    isConditional: release.isConditional,
                    purpose:
                      release.purpose === null
                        ? null
                        : readWord(release.purpose, RELEASE_PURPOSES, 'purpose of a release'),
                    quantityLimit: release.quantityLimit,
                    validUntil: release.validUntil,
                    conditions: release.conditions,
                    changeNumber: release.changeNumber,
                    reason: release.reason,
                    effectivity: release.effectivity,
                  },
            replaces: release?.replaces?.label ?? null,
            contentHash: release?.contentHash ?? any?.contentHash ?? '',
            openActionCount: row.actions.filter(({ audienceCompanyId }) => own === null || audienceCompanyId === own)
              .length,
            editions: editions.map(({ audience, sha256, receipts }) => ({
              name: audience === 'team' ? 'the team' : (names.get(audience) ?? 'a fabricator'),
              sha256,
              receipts: receipts.map(({ userId, companyId, at, stage }) => ({
                name: names.get(userId) ?? 'somebody',
                companyName: names.get(companyId) ?? 'a company',
                at: at.toISOString(),
                stage,
              })),
            })),
          },
        ]
      })
      .sort((a, b) => (a.releasedAt < b.releasedAt ? 1 : a.releasedAt > b.releasedAt ? -1 : 0))
  })
}

type Named = {
  readonly release: { readonly releasedById: string } | null
  readonly packages: readonly {
    readonly audience: string
    readonly releasedById: string
    readonly receipts: readonly { readonly userId: string; readonly companyId: string }[]
  }[]
}

async function loadNames(
  tx: Parameters<Parameters<typeof read>[1]>[0]['tx'],
  rows: readonly Named[],
): Promise<ReadonlyMap<string, string>> {
  const packages = rows.flatMap((row) => row.packages)
  const receipts = packages.flatMap((row) => row.receipts)
  const userIds = [
    ...rows.flatMap(({ release }) => release?.releasedById ?? []),
    ...packages.map(({ releasedById }) => releasedById),
    ...receipts.map(({ userId }) => userId),
  ]
  const companyIds = [...packages.map(({ audience }) => audience), ...receipts.map(({ companyId }) => companyId)]
  const users = await tx.user.findMany({
    where: { id: { in: [...new Set(userIds)] } },
    select: { id: true, name: true },
  })
  const companies = await tx.company.findMany({
    where: { id: { in: [...new Set(companyIds)] } },
    select: { id: true, name: true },
  })
  return new Map([...users, ...companies].map(({ id, name }) => [id, name]))
}
