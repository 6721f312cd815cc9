import 'server-only'
import type { WriteContext } from './write'

/** What the part must do holds for its next revision too; what was shown on the copied one does not. */
export async function carryNeedsOver({ tx, record }: WriteContext, fromId: string, toId: string): Promise<void> {
  const needs = await tx.need.findMany({
    where: { revisionId: fromId, droppedReason: null },
    orderBy: { number: 'asc' },
  })
  if (needs.length === 0) return
  const from = await tx.revision.findUniqueOrThrow({ where: { id: fromId }, select: { label: true, projectId: true } })
  for (const { number, text, itemIdsJson, method, plannedOn, statedById, statedAt } of needs) {
    await tx.need.create({
      data: { revisionId: toId, number, text, itemIdsJson, method, plannedOn, statedById, statedAt },
    })
  }
  await record({
    action: 'needs-carried-over',
    subject: { kind: 'revision', id: toId },
    projectId: from.projectId,
    revisionId: toId,
    details: { from: from.label, fromId, needCount: needs.length },
  })
}
