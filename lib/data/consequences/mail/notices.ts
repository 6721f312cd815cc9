import 'server-only'
import {
  type ActionsTold,
  type Audience,
  readVoidingChanges,
  STAGE_LABELS,
  type Stage,
  TRAIL_WORDS,
  type TrailAction,
} from '@/lib/review'
import { maySeeThread, readStage } from '../../records/authorization'
import { queueRequestNotices } from './company-requests'
import { queueConditionNotices } from './conditions'
import { queueDeclarationNotices, queueReleaseNotices, queueSharedNotices } from './events'
import { queueProposalNotices } from './proposals'
import {
  findMentioned,
  type Letter,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueLetters,
  type Reader,
  type RecordedAct,
  withoutForeignNames,
} from './readers'
import { queueReviewActionNotices } from './review-actions'

/** Who is told of which acts stands with the words of the trail; here is what each audience is sent. */
const NOTICES: {
  readonly [A in Exclude<Audience, 'nobody' | 'account-owner'>]: (act: RecordedAct<ActionsTold<A>>) => Promise<void>
} = {
  'thread-readers': queueThreadNotices,
  'stage-readers': queueStageNotices,
  'signer-and-leads': queueVoidedNotices,
  'sharing-company': queueSharedNotices,
  'declaration-readers': queueDeclarationNotices,
  'condition-readers': queueConditionNotices,
  'release-readers': queueReleaseNotices,
  'proposal-readers': queueProposalNotices,
  'action-readers': queueReviewActionNotices,
  'asked-company': queueRequestNotices,
}

/** Queues the messages that an act causes. Nobody is written to about an act of their own. */
export async function queueNotices(act: RecordedAct<TrailAction>): Promise<void> {
  const { audience } = TRAIL_WORDS[act.note.action]
  // The owner of an account is written to by the act itself, at the address that the account had before it.
  if (audience === 'nobody' || audience === 'account-owner') return
  // The table pairs each audience with its words; the compiler cannot see that this act is one of them.
  await NOTICES[audience](act as never)
}

async function queueThreadNotices(act: RecordedAct<ActionsTold<'thread-readers'>>): Promise<void> {
  const { tx, note, by } = act
  const edited = note.action === 'comment-edited' ? note.details : null
  const thread = await tx.thread.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { comments: { orderBy: { ordinal: 'asc' } } },
  })
  const comment = thread.comments.find(({ id }) => id === edited?.commentId) ?? thread.comments.at(-1)
  // A proposal opens its thread; the message about the proposal says so.
  if (comment === undefined || (note.action === 'thread-opened' && thread.anchorKind === 'proposal')) return
  const { row, subject } = await loadSubject(tx, thread.revisionId)
  const readers = (await loadReaders(act, subject)).filter(({ rights }) => maySeeThread(rights, subject, thread))
  const already = findMentioned(edited?.before ?? '', readers)
  // Naming an owner repeats nobody's words.
  const mentioned = findMentioned(note.action === 'thread-assigned' ? '' : comment.text, readers)

  const letters: Letter[] = []
  for (const reader of readers) {
    const kinds: ('mention' | 'query' | 'answer')[] = []
    if (mentioned.has(reader.userId) && !already.has(reader.userId)) kinds.push('mention')
    if (note.action === 'thread-opened' && isAsked(reader, thread)) kinds.push('query')
    const isOwner = reader.userId === thread.ownerId
    const isNamed = note.action === 'thread-opened' || (note.action === 'thread-assigned' && thread.state === 'open')
    if (isNamed && isOwner) kinds.push('query')
    if (note.action === 'thread-answered' && isConcerned(reader, thread)) kinds.push('answer')
    // One message about one act: the first kind that the person has not switched off.
    const kind = kinds.find((candidate) => !reader.off.has(candidate))
    if (kind === undefined) continue
    const { foreignNames } = reader
    letters.push({
      reader,
      notice: {
        kind,
        place: makePlace(row, foreignNames, 'threads', thread.id),
        threadKind: thread.kind,
        title: withoutForeignNames(thread.title, foreignNames),
        anchor: withoutForeignNames(thread.anchorLabel, foreignNames),
        by: by.name,
        text: withoutForeignNames(comment.text, foreignNames),
        isAssigned: kind === 'query' && reader.userId === thread.ownerId,
        wanted:
          kind === 'query' && thread.dueOn !== null
            ? { act: THREAD_ACTS[kind], until: { date: thread.dueOn, event: null } }
            : makeWanted(THREAD_ACTS[kind], row),
      },
      subjectKey: `thread:${thread.id}`,
    })
  }
  await queueLetters(act, letters)
}

const THREAD_ACTS = {
  query: 'answer it',
  answer: 'read the answer, and close the thread if it settles the matter',
  mention: 'read it and reply',
} as const

interface ThreadPart {
  readonly kind: string
  readonly audienceCompanyId: string | null
  readonly openedById: string
  readonly openedByCompanyId: string
  readonly comments: readonly { readonly authorId: string }[]
}

/** The other side is asked: the team by a fabricator, a fabricator by the team. A note asks nobody. */
function isAsked(reader: Reader, { kind, audienceCompanyId, openedByCompanyId }: ThreadPart): boolean {
  if (kind === 'note' || audienceCompanyId === null) return false
  return openedByCompanyId === audienceCompanyId
    ? reader.role === 'lead' || reader.role === 'member' || reader.role === 'quality'
    : reader.fabricatorCompanyId === audienceCompanyId
}

/** Who opened it, who wrote in it, and the opener's colleagues at a fabricator. */
function isConcerned(reader: Reader, { openedById, openedByCompanyId, comments }: ThreadPart): boolean {
  return (
    reader.userId === openedById ||
    comments.some(({ authorId }) => authorId === reader.userId) ||
    reader.fabricatorCompanyId === openedByCompanyId
  )
}

async function queueStageNotices(act: RecordedAct<'stage-moved'>): Promise<void> {
  const { tx, note, by } = act
  const { row, subject } = await loadSubject(tx, note.revisionId ?? note.subject.id)
  const { reason } = note.details
  const [fromStage, toStage] = [readStage(note.details.from), readStage(note.details.to)]
  // A release has a message of its own, with the package.
  if (toStage === 'released') return
  const letters: Letter[] = []
  for (const reader of await loadReaders(act, subject)) {
    if (reader.off.has('stage')) continue
    const { foreignNames } = reader
    const act = findStageAct(toStage, reader)
    letters.push({
      reader,
      notice: {
        kind: 'stage',
        place: makePlace(row, foreignNames),
        from: fromStage,
        to: toStage,
        by: by.name,
        reason: reason === '' ? null : withoutForeignNames(reason, foreignNames),
        wanted: act === null ? null : makeWanted(act, row),
      },
      subjectKey: `revision:${row.id}`,
    })
  }
  await queueLetters(act, letters)
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
      if (role === 'quality') return 'review it, and declare it reviewed'
      return role === 'lead' ? 'review and sign it' : null
    default:
      return null
  }
}

/** Leads and the signer: to anybody else the signature was never a promise of theirs. */
async function queueVoidedNotices(act: RecordedAct<'signature-voided'>): Promise<void> {
  const { tx, note, by } = act
  const signature = await tx.signature.findUniqueOrThrow({ where: { id: note.subject.id } })
  const { row, subject } = await loadSubject(tx, signature.revisionId)
  // Nobody of a fabricator gets this message.
  const changes = readVoidingChanges(signature.changesJson, null)
  const letters: Letter[] = []
  for (const reader of await loadReaders(act, subject)) {
    const isTold = reader.role === 'lead' || reader.userId === signature.signerId
    if (!isTold || reader.fabricatorCompanyId !== null || reader.off.has('signature-voided')) continue
    letters.push({
      reader,
      notice: {
        kind: 'signature-voided',
        place: makePlace(row, [], 'sign-off'),
        signer: signature.signerName,
        by: by.name,
        reason: signature.voidReason ?? `the revision is ${STAGE_LABELS[subject.stage]}`,
        changes,
        wanted: subject.stage === 'awaiting-signature' ? makeWanted('check what changed and sign again', row) : null,
      },
      subjectKey: `revision:${row.id}`,
    })
  }
  await queueLetters(act, letters)
}
