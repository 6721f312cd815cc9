import 'server-only'
import { type ActionDue, type ActionOriginKind, isOpenStage } from '@/lib/review'
import type { RevisionScope } from '../records/authorization'
import { getMembership, isProjectRole } from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { refuseField } from '../store/errors'
import type { WriteContext } from './write'

/** An action before it has its number. */
export interface NewAction {
  readonly origin: { readonly kind: ActionOriginKind; readonly id: string; readonly label: string }
  readonly audienceCompanyId: string | null
  readonly text: string
  readonly ownerId: string
  readonly due: ActionDue
  /** YYYY-MM-DD */
  readonly dueOn: string | null
}

/**
 * Takes an action on and records it. Runs inside `changeContent`: what remains to be done is part of what a signature
 * covers.
 */
export async function storeNewAction(
  { tx, rights, at, record }: WriteContext,
  { revision }: RevisionScope,
  action: NewAction,
): Promise<{ readonly id: string; readonly number: number }> {
  const { origin, audienceCompanyId, text, ownerId, due, dueOn } = action
  const owner = await requireOwner(tx, revision.projectId, audienceCompanyId, ownerId)
  const last = await tx.reviewAction.findFirst({ where: { revisionId: revision.id }, orderBy: { number: 'desc' } })
  const row = await tx.reviewAction.create({
    data: {
      revisionId: revision.id,
      number: (last?.number ?? 0) + 1,
      originKind: origin.kind,
      originId: origin.id,
      originLabel: origin.label,
      audienceCompanyId,
      text,
      ownerId,
      ownerCompanyId: owner.companyId,
      due,
      dueOn,
      isAfterRelease: !isOpenStage(revision.stage),
      state: 'open',
      takenOnById: rights.userId,
      takenOnAt: at,
    },
  })
  await record({
    action: 'action-taken-on',
    subject: { kind: 'action', id: row.id },
    projectId: revision.projectId,
    revisionId: revision.id,
    // What the team keeps to itself is no fabricator's to read in an extract of the trail.
    companyId: audienceCompanyId ?? getMembership(rights, revision.projectId)?.companyId ?? null,
    details: { number: row.number, text, owner: owner.name, due, dueOn, origin: origin.label },
  })
  return { id: row.id, number: row.number }
}

/** Somebody of the team, or of the fabricator that sees the action. */
export async function requireOwner(
  tx: TransactionClient,
  projectId: string,
  audienceCompanyId: string | null,
  ownerId: string,
): Promise<{ readonly companyId: string; readonly name: string }> {
  const place = await tx.membership.findUnique({
    where: { userId_projectId: { userId: ownerId, projectId } },
    include: { user: { select: { name: true, disabledAt: true } } },
  })
  if (place === null || !isProjectRole(place.role) || place.role === 'observer' || place.user.disabledAt !== null) {
    refuseField('ownerId', 'unknown', 'must be somebody who works in this project')
  }
  if (place.role === 'fabricator' && place.companyId !== audienceCompanyId) {
    refuseField('ownerId', 'not-shared', 'is of a fabricator that does not see this')
  }
  return { companyId: place.companyId, name: place.user.name }
}
