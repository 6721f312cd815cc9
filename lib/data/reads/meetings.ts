import 'server-only'
import { now } from '@/lib/config'
import { getNeedState, isAllowed } from '@/lib/review'
import { type Actor, requireRevision } from '../records/authorization'
import { loadRevision } from '../records/loaded-revision'
import { loadMeetings, loadNeeds } from '../records/meeting-record'
import type { TransactionClient } from '../store/client'
import type { MeetingsView, NeedsView } from '../views'
import { read } from './read'

/** Minutes of a revision's meetings, and who may have been there. */
export function getMeetings(actor: Actor, revisionId: string): Promise<MeetingsView> {
  return read(actor, async ({ tx, rights }) => {
    const { revision, subject } = await requireRevision(tx, rights, revisionId, 'minutes:view')
    const places = await tx.membership.findMany({
      where: { projectId: revision.projectId, user: { disabledAt: null } },
      include: { user: { select: { name: true } }, company: { select: { name: true } } },
      orderBy: { createdAt: 'asc' },
    })
    return {
      meetings: await loadMeetings(tx, revisionId),
      people: places.map(({ userId, user, company, role }) => ({
        userId,
        name: user.name,
        companyName: company.name,
        isTeam: role !== 'fabricator',
      })),
      items: await loadMeetingQuestions(tx, revisionId),
      today: now().toISOString().slice(0, 10),
      mayRecord: isAllowed(rights, 'meeting:record', subject),
    }
  })
}

/** What the part must do, and what was shown of it. */
export function getNeeds(actor: Actor, revisionId: string): Promise<NeedsView> {
  return read(actor, async ({ tx, rights }) => {
    const { subject } = await requireRevision(tx, rights, revisionId, 'minutes:view')
    const today = now().toISOString().slice(0, 10)
    const mayAccept = isAllowed(rights, 'need:accept', subject)
    const mayState = isAllowed(rights, 'need:state', subject)
    const mayReport = isAllowed(rights, 'need:report', subject)
    return {
      needs: (await loadNeeds(tx, revisionId)).map((need) => {
        const state = getNeedState(need, today)
        const isSettled = state === 'accepted' || state === 'dropped'
        return {
          ...need,
          state,
          mayReport: mayReport && !isSettled,
          mayAccept: mayAccept && state === 'reported' && need.reportedById !== rights.userId,
          mayDrop: mayState && !isSettled,
        }
      }),
      items: await loadMeetingQuestions(tx, revisionId),
      mayState,
    }
  })
}

/** Items of the review, by which needs and decisions cite them. */
async function loadMeetingQuestions(tx: TransactionClient, revisionId: string) {
  const { template } = await loadRevision(tx, revisionId)
  return template.items.map(({ id, question }) => ({ itemId: id, question }))
}
