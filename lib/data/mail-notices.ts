import 'server-only'
import { getSettings } from '@/lib/config'
import { composeMail, findMentions, type MailNotice, type OptionalMailKind } from '@/lib/mail'
import { type RevisionSubject, STAGE_LABELS } from '@/lib/review'
import { loadStanding, mayOnRevision, maySeeThread, readStage, type Standing } from './authorization'
import type { TransactionClient } from './client'
import { readMailOff } from './mail-off'
import { foldName } from './names'
import { queueMail } from './outbox'
import type { TrailNote } from './trail'

/** What is written to whom about one entry of the trail, in the entry's own transaction. */
interface Happening {
  readonly tx: TransactionClient
  readonly at: Date
  readonly by: { readonly userId: string | null; readonly name: string }
  readonly note: TrailNote
  /** The entry's place in the trail: tells two acts on the same thing apart. */
  readonly sequence: number
}

const THREAD_ACTIONS = ['thread-opened', 'thread-replied', 'thread-answered', 'thread-reopened', 'comment-edited']

/** Queues the messages that an act causes. Nobody is written to about an act of their own. */
export async function queueNotices(happening: Happening): Promise<void> {
  const { action } = happening.note
  if (THREAD_ACTIONS.includes(action)) await queueThreadNotices(happening)
  else if (action === 'stage-moved') await queueStageNotices(happening)
  else if (action === 'signature-voided') await queueVoidedNotices(happening)
}

interface Reader {
  readonly userId: string
  readonly name: string
  readonly address: string
  readonly standing: Standing
  readonly off: ReadonlySet<OptionalMailKind>
  /** Null for the team and its observers. */
  readonly fabricatorCompanyId: string | null
  readonly role: string
  readonly companyId: string
}

/** Everybody of the project who may see the revision and has an account that works, the person who acts left out. */
async function loadReaders({ tx, by }: Happening, subject: RevisionSubject): Promise<Reader[]> {
  const members = await tx.membership.findMany({
    where: { projectId: subject.projectId, user: { disabledAt: null }, NOT: { userId: by.userId ?? '' } },
    include: { user: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const readers: Reader[] = []
  for (const { user, role, companyId } of members) {
    const standing = await loadStanding(tx, user.id)
    if (!mayOnRevision(standing, 'revision:view', subject)) continue
    readers.push({
      userId: user.id,
      name: user.name,
      address: user.email,
      standing,
      off: readMailOff(user.mailOffJson),
      fabricatorCompanyId: role === 'fabricator' ? companyId : null,
      role,
      companyId,
    })
  }
  return readers
}

async function loadSubject(tx: TransactionClient, revisionId: string) {
  const row = await tx.revision.findUniqueOrThrow({
    where: { id: revisionId },
    select: {
      id: true,
      label: true,
      stage: true,
      projectId: true,
      project: { select: { name: true } },
      shares: { select: { companyId: true } },
    },
  })
  const subject: RevisionSubject = {
    kind: 'revision',
    projectId: row.projectId,
    stage: readStage(row.stage),
    sharedWithCompanyIds: row.shares.map(({ companyId }) => companyId),
    hasLiveSignature: false,
  }
  return { row, subject }
}

/** Names of other fabricators and of their people, folded: a fabricator's mail holds none of them. */
export async function loadForeignNames(tx: TransactionClient, companyId: string | null): Promise<readonly string[]> {
  if (companyId === null) return []
  const others = await tx.company.findMany({
    where: { kind: 'fabricator', NOT: { id: companyId } },
    include: { memberships: { where: { role: 'fabricator' }, include: { user: { select: { name: true } } } } },
  })
  return others.flatMap(({ name, memberships }) => [name, ...memberships.map(({ user }) => user.name)]).map(foldName)
}

/** Text that somebody typed, or null where it names another fabricator. */
export function withoutForeignNames(text: string, foreignNames: readonly string[]): string | null {
  const folded = foldName(text)
  return foreignNames.some((name) => folded.includes(name)) ? null : text
}

type Revision = Awaited<ReturnType<typeof loadSubject>>['row']

function makePlace(revision: Revision, foreignNames: readonly string[], tail: string) {
  const page = `${getSettings().publicUrl}/projects/${revision.projectId}/revisions/${revision.id}`
  return {
    projectName: withoutForeignNames(revision.project.name, foreignNames),
    revisionLabel: withoutForeignNames(revision.label, foreignNames),
    href: `${page}${tail}`,
  }
}

async function queueTo({ tx, at, note, sequence }: Happening, reader: Reader, notice: MailNotice): Promise<void> {
  await queueMail(tx, at, {
    kind: notice.kind,
    dedupeKey: `${note.action}:${sequence}:${reader.userId}`,
    recipient: { userId: reader.userId, name: reader.name, address: reader.address },
    text: composeMail(notice),
  })
}

async function queueThreadNotices(happening: Happening): Promise<void> {
  const { tx, note, by } = happening
  const commentId = note.details?.commentId
  const thread = await tx.thread.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { comments: { orderBy: { ordinal: 'asc' } } },
  })
  const comment = thread.comments.find(({ id }) => id === commentId) ?? thread.comments.at(-1)
  if (comment === undefined) return
  const { row, subject } = await loadSubject(tx, thread.revisionId)
  const readers = (await loadReaders(happening, subject)).filter(({ standing }) =>
    maySeeThread(standing, subject, thread),
  )
  const before = note.action === 'comment-edited' ? String(note.details?.before ?? '') : ''
  const already = new Set(findMentions(before, readers.map(toMentionable)).map(({ id }) => id))
  const mentioned = new Set(findMentions(comment.text, readers.map(toMentionable)).map(({ id }) => id))

  for (const reader of readers) {
    const kinds: ('mention' | 'query' | 'answer')[] = []
    if (mentioned.has(reader.userId) && !already.has(reader.userId)) kinds.push('mention')
    if (note.action === 'thread-opened' && isAsked(reader, thread)) kinds.push('query')
    if (note.action === 'thread-answered' && isConcerned(reader, thread)) kinds.push('answer')
    // One message about one act: the first kind that the person has not switched off.
    const kind = kinds.find((candidate) => !reader.off.has(candidate))
    if (kind === undefined) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    await queueTo(happening, reader, {
      kind,
      place: makePlace(row, foreignNames, `/threads#thread-${thread.id}`),
      threadKind: thread.kind,
      title: withoutForeignNames(thread.title, foreignNames),
      anchor: withoutForeignNames(thread.anchorLabel, foreignNames),
      by: by.name,
      text: withoutForeignNames(comment.text, foreignNames),
    })
  }
}

function toMentionable({ userId, name }: Reader) {
  return { id: userId, name }
}

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

async function queueStageNotices(happening: Happening): Promise<void> {
  const { tx, note, by } = happening
  const { row, subject } = await loadSubject(tx, note.revisionId ?? note.subject.id)
  const { from, to, reason } = note.details ?? {}
  const [fromStage, toStage] = [readStage(String(from)), readStage(String(to))]
  for (const reader of await loadReaders(happening, subject)) {
    if (reader.off.has('stage')) continue
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    await queueTo(happening, reader, {
      kind: 'stage',
      place: makePlace(row, foreignNames, ''),
      from: fromStage,
      to: toStage,
      by: by.name,
      reason: typeof reason === 'string' && reason !== '' ? withoutForeignNames(reason, foreignNames) : null,
    })
  }
}

/** Leads and the signer: to anybody else the signature was never a promise of theirs. */
async function queueVoidedNotices(happening: Happening): Promise<void> {
  const { tx, note, by } = happening
  const signature = await tx.signature.findUniqueOrThrow({ where: { id: note.subject.id } })
  const { row, subject } = await loadSubject(tx, signature.revisionId)
  const changes = JSON.parse(signature.changesJson ?? '[]') as string[]
  for (const reader of await loadReaders(happening, subject)) {
    const isTold = reader.role === 'lead' || reader.userId === signature.signerId
    if (!isTold || reader.fabricatorCompanyId !== null || reader.off.has('signature-voided')) continue
    await queueTo(happening, reader, {
      kind: 'signature-voided',
      place: makePlace(row, [], '/sign-off'),
      signer: signature.signerName,
      by: by.name,
      reason: signature.voidReason ?? `the revision is ${STAGE_LABELS[subject.stage]}`,
      changes,
    })
  }
}
