import 'server-only'
import { listActionsOn } from '@/lib/review'
import type { TrailRecord as TrailRow } from '../generated/sqlite/client'
import {
  type Actor,
  maySeeProposal,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
  requireRevisionInView,
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
const THREAD_ACTIONS = listActionsOn('thread')
const ACTIONS = [...THREAD_ACTIONS, ...FILE_ACTIONS, ...PROPOSAL_ACTIONS]
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
  return read(actor, async ({ tx, rights }) => {
    await requireRevisionInView(tx, rights, revisionId)
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
 * The writers' lock lets records become visible in the order of their numbers, so the person who goes on from the last number
 * misses none and gets none twice.
 */
export function listLiveEvents(actor: Actor, revisionId: string, after: number): Promise<LiveEvents> {
  return read(actor, async ({ tx, rights }) => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    const rows = await tx.trailRecord.findMany({
      where: { revisionId, sequence: { gt: after }, action: { in: ACTIONS } },
      orderBy: { sequence: 'asc' },
      take: MOST_AT_ONCE,
    })
    const findVisibleThread = await loadVisibleThreads(tx, rights, scope, rows)
    const events = rows.flatMap((row): LiveEvent[] => {
      const threadId = findVisibleThread(row)
      if (threadId === null) return []
      const sentence = `${row.actorName} ${describeRecord(row, NO_LABELS)}`
      const proposalId = PROPOSAL_ACTIONS.includes(row.action) ? row.subjectId : null
      return [{ sequence: row.sequence, threadId, proposalId, byUserId: row.actorId, sentence }]
    })
    return { events, lookedUpTo: rows.at(-1)?.sequence ?? after }
  })
}

/** Everything that the records are about, read at once; then which thread each belongs to, as far as the person may see it. */
async function loadVisibleThreads(
  tx: TransactionClient,
  rights: PersonRights,
  { subject }: RevisionScope,
  rows: readonly TrailRow[],
): Promise<(row: TrailRow) => string | null> {
  const listIds = (actions: readonly string[]) =>
    rows.flatMap(({ action, subjectId }) => (actions.includes(action) ? [subjectId] : []))
  const proposals = await findMany(listIds(PROPOSAL_ACTIONS), (ids) =>
    tx.proposal.findMany({ where: { id: { in: ids } } }),
  )
  const files = await findMany(listIds(FILE_ACTIONS), (ids) =>
    tx.attachment.findMany({ where: { id: { in: ids } }, include: { comment: { include: { thread: true } } } }),
  )
  const threads = await findMany(listIds(THREAD_ACTIONS), (ids) => tx.thread.findMany({ where: { id: { in: ids } } }))
  return ({ action, subjectId }) => {
    if (PROPOSAL_ACTIONS.includes(action)) {
      const proposal = proposals.get(subjectId)
      return proposal !== undefined && maySeeProposal(rights, subject, proposal) ? proposal.threadId : null
    }
    const thread = FILE_ACTIONS.includes(action) ? files.get(subjectId)?.comment?.thread : threads.get(subjectId)
    if (thread == null || !maySeeThread(rights, subject, thread)) return null
    // The proposal that opened it is an act of its own, and said once.
    return action === 'thread-opened' && thread.anchorKind === 'proposal' ? null : thread.id
  }
}

async function findMany<R extends { readonly id: string }>(
  ids: string[],
  find: (ids: string[]) => Promise<R[]>,
): Promise<ReadonlyMap<string, R>> {
  if (ids.length === 0) return new Map()
  return new Map((await find([...new Set(ids)])).map((row) => [row.id, row]))
}
