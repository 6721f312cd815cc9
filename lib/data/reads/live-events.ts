import 'server-only'
import { listActionsOn } from '@/lib/review'
import type { TrailRecord as TrailRow } from '../generated/sqlite/client'
import {
  type Actor,
  maySeeProposal,
  maySeeThread,
  type RevisionScope,
  requireRevisionInView,
  type Standing,
} from '../records/authorization'
import type { TransactionClient } from '../store/client'
import { read } from './read'
import { describeRecord } from './trail-words'

/** Something that happened to a thread of an open page, or to the proposal that the thread discusses. */
export interface LiveEvent {
  /** The trail's own number: grows with every act, is given once, and comes in the order in which acts became visible. */
  readonly sequence: number
  readonly threadId: string
  /** Where the act was one on a proposal. */
  readonly proposalId: string | null
  readonly byUserId: string | null
  /** `Imke Dahl replied to "Foil of L2"` */
  readonly sentence: string
}

const FILE_ACTIONS = listActionsOn('attachment')
const PROPOSAL_ACTIONS = listActionsOn('proposal')
const ACTIONS = [...listActionsOn('thread'), ...FILE_ACTIONS, ...PROPOSAL_ACTIONS]
const MOST_AT_ONCE = 200

/** The page is the revision's own: its label would say nothing. */
const NO_LABELS: ReadonlyMap<string, string> = new Map()

export interface LiveEvents {
  readonly events: readonly LiveEvent[]
  /** Where to go on: everything up to here was looked at, seen or not. */
  readonly lookedUpTo: number
}

/** Where a page that is read now begins to listen. Asked before the page is read, so that nothing falls between. */
export function getLiveStart(actor: Actor, revisionId: string): Promise<number> {
  return read(actor, async ({ tx, standing }) => {
    await requireRevisionInView(tx, standing, revisionId)
    const last = await tx.trailRecord.findFirst({
      where: { revisionId },
      orderBy: { sequence: 'desc' },
      select: { sequence: true },
    })
    return last?.sequence ?? 0
  })
}

/**
 * What happened to threads of the revision after a record of the trail, as far as the person may see it; oldest first.
 * The writers' lock lets records become visible in the order of their numbers, so whoever goes on from the last number
 * misses none and gets none twice.
 */
export function listLiveEvents(actor: Actor, revisionId: string, after: number): Promise<LiveEvents> {
  return read(actor, async ({ tx, standing }) => {
    const scope = await requireRevisionInView(tx, standing, revisionId)
    const rows = await tx.trailRecord.findMany({
      where: { revisionId, sequence: { gt: after }, action: { in: ACTIONS } },
      orderBy: { sequence: 'asc' },
      take: MOST_AT_ONCE,
    })
    const events: LiveEvent[] = []
    for (const row of rows) {
      const threadId = await findVisibleThread(tx, standing, scope, row)
      if (threadId === null) continue
      const sentence = `${row.actorName} ${describeRecord(row, NO_LABELS)}`
      const proposalId = PROPOSAL_ACTIONS.includes(row.action) ? row.subjectId : null
      events.push({ sequence: row.sequence, threadId, proposalId, byUserId: row.actorId, sentence })
    }
    return { events, lookedUpTo: rows.at(-1)?.sequence ?? after }
  })
}

async function findVisibleThread(
  tx: TransactionClient,
  standing: Standing,
  { subject }: RevisionScope,
  row: TrailRow,
): Promise<string | null> {
  if (PROPOSAL_ACTIONS.includes(row.action)) {
    const proposal = await tx.proposal.findUnique({ where: { id: row.subjectId } })
    return proposal !== null && maySeeProposal(standing, subject, proposal) ? proposal.threadId : null
  }
  const thread = FILE_ACTIONS.includes(row.action)
    ? await findThreadOfFile(tx, row.subjectId)
    : await tx.thread.findUnique({ where: { id: row.subjectId } })
  if (thread === null || !maySeeThread(standing, subject, thread)) return null
  // The proposal that opened it is an act of its own, and said once.
  return row.action === 'thread-opened' && thread.anchorKind === 'proposal' ? null : thread.id
}

async function findThreadOfFile(tx: TransactionClient, attachmentId: string) {
  const file = await tx.attachment.findUnique({
    where: { id: attachmentId },
    include: { comment: { include: { thread: true } } },
  })
  return file?.comment?.thread ?? null
}
