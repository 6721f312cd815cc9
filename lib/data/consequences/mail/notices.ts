import 'server-only'
import { readStoredSentences } from '@/lib/engine'
import { STAGE_LABELS, type Stage } from '@/lib/review'
import { maySeeThread, readStage } from '../../records/authorization'
import { queueRequestNotices } from './company-requests'
import { isEventAction, queueEventNotices } from './events'
import { isProposalAction, queueProposalNotices } from './proposals'
import {
  findMentioned,
  loadForeignNames,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueTo,
  type Reader,
  type TrailEvent,
  withoutForeignNames,
} from './readers'

const THREAD_ACTIONS: readonly string[] = [
  'thread-opened',
  'thread-replied',
  'thread-answered',
  'thread-reopened',
  'comment-edited',
]

/** Queues the messages that an act causes. Nobody is written to about an act of their own. */
export async function queueNotices(trailEvent: TrailEvent): Promise<void> {
  const { action } = trailEvent.note
  if (THREAD_ACTIONS.includes(action)) await queueThreadNotices(trailEvent)
  else if (action === 'stage-moved') await queueStageNotices(trailEvent)
  else if (action === 'signature-voided') await queueVoidedNotices(trailEvent)
  else if (isEventAction(action)) await queueEventNotices(trailEvent, action)
  else if (isProposalAction(action)) await queueProposalNotices(trailEvent, action)
  else if (action === 'company-asked') await queueRequestNotices(trailEvent)
}

async function queueThreadNotices(trailEvent: TrailEvent): Promise<void> {
  const { tx, note, by } = trailEvent
  const commentId = note.details?.commentId
  const thread = await tx.thread.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { comments: { orderBy: { ordinal: 'asc' } } },
  })
  const comment = thread.comments.find(({ id }) => id === commentId) ?? thread.comments.at(-1)
  // A proposal opens its thread; the message about the proposal says so.
  if (comment === undefined || (note.action === 'thread-opened' && thread.anchorKind === 'proposal')) return
  const { row, subject } = await loadSubject(tx, thread.revisionId)
  const readers = (await loadReaders(trailEvent, subject)).filter(({ standing }) =>
    maySeeThread(standing, subject, thread),
  )
  const before = note.action === 'comment-edited' ? String(note.details?.before ?? '') : ''
  const already = findMentioned(before, readers)
  const mentioned = findMentioned(comment.text, readers)

  for (const reader of readers) {
    const kinds: ('mention' | 'query' | 'answer')[] = []
    if (mentioned.has(reader.userId) && !already.has(reader.userId)) kinds.push('mention')
    if (note.action === 'thread-opened' && isAsked(reader, thread)) kinds.push('query')
    if (note.action === 'thread-answered' && isConcerned(reader, thread)) kinds.push('answer')
    // One message about one act: the first kind that the person has not switched off.
    const kind = kinds.find((candidate) => !reader.off.has(candidate))
    if (kind === undefined) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    await queueTo(
      trailEvent,
      reader,
      {
        kind,
        place: makePlace(row, foreignNames, `/threads#thread-${thread.id}`),
        threadKind: thread.kind,
        title: withoutForeignNames(thread.title, foreignNames),
        anchor: withoutForeignNames(thread.anchorLabel, foreignNames),
        by: by.name,
        text: withoutForeignNames(comment.text, foreignNames),
        wanted: makeWanted(THREAD_ACTS[kind], row),
      },
      `thread:${thread.id}`,
    )
  }
}

const THREAD_ACTS = {
  query: 'answer it',
  answer: 'read the answer, and close the thread if it settles the matter',
  mention: 'read it and reply',
} as const

interface ThreadPart {
  readonly kind: string
  readonly companyId: string | null
  readonly openedById: string
  readonly openedByCompanyId: string
  readonly comments: readonly { readonly authorId: string }[]
}

/** The other side is asked: the team by a fabricator, a fabricator by the team. A note asks nobody. */
function isAsked(reader: Reader, { kind, companyId, openedByCompanyId }: ThreadPart): boolean {
  if (kind === 'note' || companyId === null) return false
  return openedByCompanyId === companyId
    ? reader.role === 'lead' || reader.role === 'member'
    : reader.fabricatorCompanyId === companyId
}

/** Who opened it, who wrote in it, and the opener's colleagues at a fabricator. */
function isConcerned(reader: Reader, { openedById, openedByCompanyId, comments }: ThreadPart): boolean {
  return (
    reader.userId === openedById ||
    comments.some(({ authorId }) => authorId === reader.userId) ||
    reader.fabricatorCompanyId === openedByCompanyId
  )
}

async function queueStageNotices(trailEvent: TrailEvent): Promise<void> {
  const { tx, note, by } = trailEvent
  const { row, subject } = await loadSubject(tx, note.revisionId ?? note.subject.id)
  const { from, to, reason } = note.details ?? {}
  const [fromStage, toStage] = [readStage(String(from)), readStage(String(to))]
  // A release has a message of its own, with the package.
  if (toStage === 'released') return
  for (const reader of await loadReaders(trailEvent, subject)) {
    if (reader.off.has('stage')) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    const act = findStageAct(toStage, reader)
    await queueTo(
      trailEvent,
      reader,
      {
        kind: 'stage',
        place: makePlace(row, foreignNames, ''),
        from: fromStage,
        to: toStage,
        by: by.name,
        reason: typeof reason === 'string' && reason !== '' ? withoutForeignNames(reason, foreignNames) : null,
        wanted: act === null ? null : makeWanted(act, row),
      },
      `revision:${row.id}`,
    )
  }
}

/** What a stage asks of a person. */
function findStageAct(stage: Stage, { role, fabricatorCompanyId }: Reader): string | null {
  const isOfTeam = role === 'lead' || role === 'member'
  switch (stage) {
    case 'preparing':
      return isOfTeam ? 'complete the brief and the construction' : null
    case 'early-review':
      return isOfTeam ? 'answer the items that can be decided early' : null
    case 'fabricator-review':
      if (fabricatorCompanyId !== null) return 'ask what is unclear, and declare whether it can be built'
      return isOfTeam ? 'answer what the fabricators ask' : null
    case 'awaiting-signature':
      return role === 'lead' ? 'review and sign it' : null
    default:
      return null
  }
}

/** Leads and the signer: to anybody else the signature was never a promise of theirs. */
async function queueVoidedNotices(trailEvent: TrailEvent): Promise<void> {
  const { tx, note, by } = trailEvent
  const signature = await tx.signature.findUniqueOrThrow({ where: { id: note.subject.id } })
  const { row, subject } = await loadSubject(tx, signature.revisionId)
  const changes = readStoredSentences('what voided a signature', signature.changesJson)
  for (const reader of await loadReaders(trailEvent, subject)) {
    const isTold = reader.role === 'lead' || reader.userId === signature.signerId
    if (!isTold || reader.fabricatorCompanyId !== null || reader.off.has('signature-voided')) continue
    await queueTo(
      trailEvent,
      reader,
      {
        kind: 'signature-voided',
        place: makePlace(row, [], '/sign-off'),
        signer: signature.signerName,
        by: by.name,
        reason: signature.voidReason ?? `the revision is ${STAGE_LABELS[subject.stage]}`,
        changes,
        wanted: subject.stage === 'awaiting-signature' ? makeWanted('check what changed and sign again', row) : null,
      },
      `revision:${row.id}`,
    )
  }
}
