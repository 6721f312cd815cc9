import 'server-only'
import { DELIVERED_TEMPLATE } from '@/lib/engine/catalogue'
import { OPEN_STAGES } from '@/lib/review'
import { type Actor, mayInWorkspace, requireInWorkspace } from '../records/authorization'
import { loadWorkspace } from '../records/settings-record'
import { loadLatestTemplate } from '../records/template-record'
import type { TemplateView, WorkspaceFlexTestsView } from '../views'
import { read } from './read'

/** The workspace's catalogue as it is now. For its team and admins, as the limits of the workspace are. */
export function getTemplate(actor: Actor): Promise<TemplateView> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'project:create')
    const latest = await loadLatestTemplate(tx)
    const rows = await tx.catalogueTemplate.findMany({ orderBy: { version: 'desc' } })
    const users = await tx.user.findMany({
      where: { id: { in: [...new Set(rows.map(({ changedById }) => changedById))] } },
      select: { id: true, name: true },
    })
    const names = new Map(users.map(({ id, name }) => [id, name]))
    const reviews = await tx.revision.groupBy({
      by: ['templateVersion'],
      where: { stage: { in: [...OPEN_STAGES] } },
      _count: { id: true },
    })
    const counts = new Map(reviews.map(({ templateVersion, _count }) => [templateVersion, _count.id]))
    return {
      version: latest.version,
      content: latest.content,
      mayEdit: mayInWorkspace(rights, 'catalogue:edit'),
      versions: rows.map((row) => ({
        version: row.version,
        summary: row.summary,
        reason: row.reason,
        changedBy: { id: row.changedById, name: names.get(row.changedById) ?? 'somebody' },
        changedAt: row.changedAt.toISOString(),
        openReviewCount: counts.get(row.version) ?? 0,
      })),
    }
  })
}

/** The workspace's flex tests as they are now, every specimen: for its team and admins. */
export function getWorkspaceFlexTests(actor: Actor): Promise<WorkspaceFlexTestsView> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'project:create')
    const { version, content } = await loadLatestTemplate(tx)
    const { name } = await loadWorkspace(tx)
    return {
      version,
      workspaceName: name,
      rows: content.flexTests ?? [],
      mayEdit: mayInWorkspace(rights, 'catalogue:edit'),
    }
  })
}

/** The catalogue that a new review would go by; as delivered for those who do not belong to the workspace. */
export function getCatalogueInForce(actor: Actor): Promise<Pick<TemplateView, 'version' | 'content'>> {
  return read(actor, async ({ tx, rights }) => {
    if (!mayInWorkspace(rights, 'project:create')) return { version: 0, content: DELIVERED_TEMPLATE }
    const { version, content } = await loadLatestTemplate(tx)
    return { version, content }
  })
}
