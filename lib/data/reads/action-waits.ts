import 'server-only'
import { now } from '@/lib/config'
import { ACTION_DUES, ACTION_STATES, type ActionDue, describeDue, isAllowed, isOverdue } from '@/lib/review'
import {
  findRevisionScope,
  makeReviewActionSubject,
  type PersonRights,
  readStage,
  SCOPE_COLUMNS,
} from '../records/authorization'
import { readWord } from '../records/stored-words'
import type { TransactionClient } from '../store/client'
import type { WaitView } from '../views'
import type { Wait } from './wait'

/**
 * Actions that wait, of revisions under review and of released ones alike: for their owner while they are open, for those
 * who may close them once they are reported done, and overdue ones for the leads as well.
 */
export async function listActionWaits(
  tx: TransactionClient,
  people: readonly PersonRights[],
): Promise<ReadonlyMap<string, readonly WaitView[]>> {
  const userIds = people.map(({ userId }) => userId)
  const rows = await tx.reviewAction.findMany({
    where: {
      state: { in: ['open', 'reported'] },
      revision: { project: { memberships: { some: { userId: { in: userIds } } } }, stage: { not: 'withdrawn' } },
    },
    include: {
      revision: { select: SCOPE_COLUMNS },
    },
    orderBy: [{ takenOnAt: 'asc' }, { id: 'asc' }],
  })
  const waits = new Map<string, WaitView[]>(people.map(({ userId }) => [userId, []]))
  for (const { revision, ...row } of rows) {
    for (const rights of people) {
      // A live signature changes nothing about an action.
      const scope = findRevisionScope(rights, revision, false)
      if (scope === null) continue
      const subject = makeReviewActionSubject(scope.subject, row)
      if (!isAllowed(rights, 'review-action:view', subject)) continue
      const wait = findWait(rights, subject, {
        ...row,
        due: readWord(row.due, ACTION_DUES, 'due date of an action'),
        state: readWord(row.state, ACTION_STATES, 'state of an action'),
      })
      if (wait === null) continue
      waits.get(rights.userId)?.push({
        revisionId: revision.id,
        projectId: revision.projectId,
        projectName: revision.project.name,
        revisionLabel: revision.label,
        stage: readStage(revision.stage),
        ...wait,
      })
    }
  }
  return waits
}

interface WaitingAction {
  readonly id: string
  readonly number: number
  readonly text: string
  readonly due: ActionDue
  readonly dueOn: string | null
  readonly state: (typeof ACTION_STATES)[number]
  readonly ownerId: string
  readonly takenOnById: string
  readonly takenOnAt: Date
  readonly reportedAt: Date | null
}

function findWait(
  rights: PersonRights,
  subject: ReturnType<typeof makeReviewActionSubject>,
  action: WaitingAction,
): Wait | null {
  const target = { tab: 'actions' as const, id: action.id }
  const named = `Action ${action.number}, "${action.text}"`
  const isLate = isOverdue(action, now().toISOString().slice(0, 10))
  const isLead = rights.memberships.some(({ projectId, role }) => projectId === subject.projectId && role === 'lead')
  const isOwn = action.ownerId === rights.userId
  if (action.state === 'reported') {
    const isAsked =
      (isLead || action.takenOnById === rights.userId) && isAllowed(rights, 'review-action:close', subject)
    if (!isAsked) return null
    return {
      since: (action.reportedAt ?? action.takenOnAt).toISOString(),
      reason: `${named}, is reported done${isLate ? `; it was due ${describeDue(action)}` : ''}`,
      nextAct: 'Check the evidence and close it, or reopen it',
      target,
    }
  }
  if (!isAllowed(rights, 'review-action:report', subject) || !(isOwn || (isLead && isLate))) return null
  return {
    since: action.takenOnAt.toISOString(),
    reason: `${named}, is ${isLate ? 'overdue' : 'open'}: due ${describeDue(action)}`,
    nextAct: isOwn ? 'Do it and report it done' : 'Ask its owner, or change owner or date',
    target,
  }
}
