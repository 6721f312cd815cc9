import 'server-only'
import type { TransactionClient } from '../store/client'
import type { ProbingView } from '../views'

/** How often teams moved verdicts that rest on limits which the company does not show, by day and revision. */
export async function listProbing(tx: TransactionClient, companyId: string): Promise<readonly ProbingView[]> {
  const rows = await tx.verdictFlip.findMany({ where: { companyId }, orderBy: [{ at: 'desc' }, { id: 'asc' }] })
  const revisions = await tx.revision.findMany({
    where: { id: { in: [...new Set(rows.map(({ revisionId }) => revisionId))] } },
    select: { id: true, label: true, project: { select: { name: true } } },
  })
  const known = new Map(revisions.map((revision) => [revision.id, revision]))
  const days = new Map<string, ProbingView>()
  for (const { at, revisionId, flips } of rows) {
    const revision = known.get(revisionId)
    if (revision === undefined) continue
    const day = at.toISOString().slice(0, 10)
    const key = `${day} ${revisionId}`
    const before = days.get(key) ?? {
      day,
      projectName: revision.project.name,
      revisionLabel: revision.label,
      saves: 0,
      flips: 0,
    }
    days.set(key, { ...before, saves: before.saves + 1, flips: before.flips + flips })
  }
  return [...days.values()]
}
